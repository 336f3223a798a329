"""The browser is killed at random moments after a digit was painted; what was painted is there after the next start.

The size is KILLS in the environment: a dozen by default, 500 for the campaign (about a quarter of an hour). The seed is printed.
A kill of the process is not a power cut: what strict durability adds is held by test_kept_before_painted.py.
"""

import os
import random
import time
from collections.abc import Callable

from playwright.sync_api import expect

from tests.field import work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess

KILLS = int(os.environ.get("KILLS", "12"))
SEED = int(os.environ.get("SEED", "20261125"))
LONGEST_WAIT_S = 0.05


def press_and_see(phone: Phone, key: str, before: str) -> str:
    """Press one key and wait until its effect is painted; returns the text then shown."""
    phone.tap(key)
    after = before[:-1] if key == "Delete digit" else before + key
    expect(phone.page.get_by_label("Systolic", exact=True)).to_have_value(after)
    return after


def next_key(chance: random.Random, text: str) -> str:
    """A digit while there is room, else room is made."""
    return "Delete digit" if len(text) == 3 else chance.choice("0123456789")


def test_what_was_painted_survives_a_kill(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    chance = random.Random(SEED)
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    phone.tap("A cat")
    phone.tap("Show Readings")
    phone.page.get_by_label("Systolic", exact=True).wait_for()
    place = phone.page.url.removeprefix(phone.url)
    server.kill()
    painted, lost = "", []
    for kill in range(KILLS):
        for _ in range(chance.randint(1, 4)):
            painted = press_and_see(phone, next_key(chance, painted), painted)
        if len(painted) == 3:
            painted = press_and_see(phone, "Delete digit", painted)
        painted = press_and_see(phone, chance.choice("0123456789"), painted)
        time.sleep(chance.uniform(0, LONGEST_WAIT_S))
        phone.kill()
        phone.open(place, offline=True)
        field = phone.page.get_by_label("Systolic", exact=True)
        field.wait_for()
        if field.input_value() != painted:
            lost.append(f"kill {kill}: {painted!r} was painted, {field.input_value()!r} came back")
            painted = field.input_value()
    print(f"{KILLS} kills, seed {SEED}, lost {len(lost)}")
    assert lost == []
