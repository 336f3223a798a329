"""What lies in a phone's stores and caches, read in the page but past the program. It changes nothing unless its name says so."""

from playwright.sync_api import Page

COUNT = """async ([database, store]) => {
  const known = (await indexedDB.databases()).some(({ name }) => name === database);
  if (!known) return -1;
  const open = await new Promise((done, fail) => {
    const asked = indexedDB.open(database);
    asked.onsuccess = () => done(asked.result);
    asked.onerror = () => fail(asked.error);
  });
  const rows = await new Promise((done, fail) => {
    const asked = open.transaction(store).objectStore(store).count();
    asked.onsuccess = () => done(asked.result);
    asked.onerror = () => fail(asked.error);
  });
  open.close();
  return rows;
}"""
CACHED = """async () => (await Promise.all((await caches.keys()).map(async (name) =>
  (await (await caches.open(name)).keys()).map(({ url }) => url)))).flat()"""
DELETE = "async (url) => (await Promise.all((await caches.keys()).map(async (name) => (await caches.open(name)).delete(url)))).some(Boolean)"


def rows(page: Page, database: str, store: str) -> int:
    """How many rows a store holds; -1 where there is no such database."""
    return int(page.evaluate(COUNT, [database, store]))


def cached(page: Page) -> list[str]:
    """Addresses of everything in any cache."""
    return list(page.evaluate(CACHED))


def delete_from_cache(page: Page, address: str) -> None:
    """As a browser short of room might; fails when nothing was deleted, so that a plant can never silently be none."""
    assert page.evaluate(DELETE, address), f"{address} was not in a cache"
