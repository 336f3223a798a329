"""Two windows of one phone: they share one outbox, hand in each entry once, and tell each other."""

from collections.abc import Callable

from playwright.sync_api import Page, expect

from tests.field import work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess

# One window takes the lock before the app in it runs, and keeps it until told.
HOLD = """
window.held = new Promise((tell) => navigator.locks.request('quietcuff-sync', () => new Promise((release) => {
  window.letGo = release;
  tell(true);
})));
"""
# The other window notes how each asking for the lock ended, once all that was done under it is over.
NOTE = """
window.asked = [];
const request = navigator.locks.request.bind(navigator.locks);
navigator.locks.request = async (name, ...rest) => {
  const work = rest.pop();
  let got;
  try {
    return await request(name, ...rest, (lock) => { got = lock !== null; return work(lock); });
  } finally {
    if (name === 'quietcuff-sync') window.asked.push(got);
  }
};
"""


def test_two_windows_hand_in_each_entry_once(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    assert phone.context is not None
    phone.context.set_offline(True)
    first, second = phone.page, phone.context.new_page()
    second.goto(server.url)
    for page, name in ((first, "Brammel"), (second, "Quill"), (first, "Tansy"), (second, "Moss")):
        phone.page = page
        page.goto(server.url + "/#/patients")
        work.add_animal(phone, "Dog", name, "")
    for page in (first, second):
        expect(page.get_by_role("link", name="Outbox, 4 not sent")).to_be_visible()
    phone.context.set_offline(False)
    for page in (first, second):
        expect(page.get_by_role("link", name="Outbox, 0 not sent")).to_be_visible(timeout=45_000)
    assert server.rows("SELECT count(*), count(DISTINCT id), max(position) FROM journal") == [(4, 4, 4)]
    assert server.rows("SELECT number FROM journal ORDER BY number") == [(1,), (2,), (3,), (4,)]
    assert server.rows("SELECT count(*) FROM tray") == [(0,)]


def press_send_now(page: Page) -> bool:
    """*Send now*; answers whether this window got the lock, when all it did is over."""
    before = page.evaluate("asked.length")
    page.get_by_role("button", name="Send now", exact=True).click()
    page.wait_for_function("(before) => asked.length > before", arg=before)
    return bool(page.evaluate("asked.at(-1)"))


def test_nothing_is_handed_in_while_another_window_holds_the_lock(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    assert phone.context is not None
    holder, sender = phone.context.new_page(), phone.page
    holder.add_init_script(HOLD)
    holder.goto(server.url)
    assert holder.evaluate("held")
    sender.add_init_script(NOTE)
    sender.reload()
    work.add_animal(phone, "Dog", "Brammel", "")
    sender.goto(server.url + "/#/outbox")
    assert press_send_now(sender) is False
    expect(sender.get_by_role("link", name="Outbox, 1 not sent")).to_be_visible()
    assert server.rows("SELECT count(*) FROM journal") == [(0,)]
    holder.evaluate("letGo()")
    sender.get_by_role("button", name="Send now", exact=True).click()
    expect(sender.get_by_role("link", name="Outbox, 0 not sent")).to_be_visible(timeout=45_000)
    assert server.rows("SELECT count(*) FROM journal") == [(1,)]
