"""A digit is painted only after a strict-durability transaction that holds it is complete; and this check can fail.

A page cannot see the platter: what is checked is that the browser was asked for strict durability, and had reported the transaction as
complete, before the digit was put into the field. The last two tests plant each bug in a build of its own and demand that the check sees it.
"""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tests.field import planted, work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess

NewPhone = Callable[..., Phone]

PROBE = """
(() => {
  const seen = (window.seenByProbe = { taps: [], writes: [], paints: [] });
  addEventListener('click', (e) => {
    const key = e.target.closest('button');
    if (key && /^[0-9]$/.test(key.textContent.trim())) seen.taps.push({ digit: key.textContent.trim(), at: performance.now() });
  }, true);
  const open = IDBDatabase.prototype.transaction;
  IDBDatabase.prototype.transaction = function (stores, mode, options) {
    const transaction = open.call(this, stores, mode, options);
    if (mode === 'readwrite' && [].concat(stores).includes('drafts')) {
      const write = { durability: transaction.durability, begun: performance.now() };
      seen.writes.push(write);
      transaction.addEventListener('complete', () => { write.done = performance.now(); });
    }
    return transaction;
  };
  const value = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value');
  Object.defineProperty(HTMLInputElement.prototype, 'value', {
    ...value,
    set(text) { seen.paints.push({ text: String(text), at: performance.now() }); value.set.call(this, text); },
  });
})();
"""


def typed_under_the_probe(phone: Phone) -> dict[str, list[dict[str, Any]]]:
    """Types two readings on a measurement without an animal, and returns what the probe saw."""
    phone.scripts.append(PROBE)
    phone.open()
    work.sign_in(phone)
    phone.tap("A dog")
    phone.tap("Show Readings")
    for reading in ("152", "149"):
        for at, key in enumerate(reading, start=1):
            phone.tap(key)
            phone.page.wait_for_function("text => [...document.querySelectorAll('input')].some(i => i.value === text)", arg=reading[:at])
        phone.tap("Add")
        phone.page.get_by_text(reading, exact=True).first.wait_for()
    return phone.page.evaluate("window.seenByProbe")


def faults(seen: dict[str, list[dict[str, Any]]]) -> list[str]:
    """Each digit that was painted without a strict transaction begun after its tap and complete before its paint."""
    texts = ["1", "15", "152", "1", "14", "149"]
    assert [tap["digit"] for tap in seen["taps"]] == [text[-1] for text in texts]
    found = []
    for tap, text in zip(seen["taps"], texts, strict=True):
        paint = next(p for p in seen["paints"] if p["text"] == text and p["at"] >= tap["at"])
        held = [w for w in seen["writes"] if w["begun"] >= tap["at"] and w.get("done", float("inf")) <= paint["at"]]
        if not held:
            found.append(f"{text}: painted before a transaction was complete")
        elif not any(w["durability"] == "strict" for w in held):
            found.append(f"{text}: kept with {held[0]['durability']} durability")
    return found


def test_every_digit_is_kept_before_it_is_painted(server: ServerProcess, new_phone: NewPhone) -> None:
    seen = typed_under_the_probe(new_phone(server.url))
    assert len(seen["writes"]) >= 8
    assert faults(seen) == []


PLANTS = {
    "relaxed durability": [("client/src/offline/database.ts", '"readwrite", { durability }', '"readwrite", { durability: "relaxed" }')],
    "draft written after paint": [("client/src/screens/measure/keeper.ts", "await write(next);", "shown.value = next; await write(next);")],
}


@pytest.mark.parametrize("name", PLANTS)
def test_the_check_sees_a_planted_bug(name: str, server: ServerProcess, new_phone: NewPhone, tmp_path: Path) -> None:
    client = planted.built_with(tmp_path / "planted", PLANTS[name])
    server.kill()
    server.environment["QUIETCUFF_CLIENT"] = str(client)
    server.start()
    found = faults(typed_under_the_probe(new_phone(server.url)))
    assert found != []
    print(name, "→", found[0])
