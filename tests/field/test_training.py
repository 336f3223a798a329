"""Training in a real browser: every screen says so, a killed app comes back to it, and nothing of it reaches outbox, network or record."""

import re
from collections.abc import Callable

from playwright.sync_api import Page, Request, expect

from tests.field import on_disk, work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess

WORD = "Training: not the record"
SCREENS = ("round", "outbox", "bag", "help", "this-phone", "training")


def in_training(page: Page) -> None:
    """The word is on the screen and in the window's name."""
    expect(page.get_by_text(WORD, exact=True)).to_be_visible()
    expect(page).to_have_title(re.compile(r"^Training: .+"))


def ground(page: Page) -> str:
    """The colour the page stands on."""
    return str(page.evaluate("getComputedStyle(document.documentElement).backgroundColor"))


def cross(phone: Phone, button: str) -> None:
    """In or out by this button. The window is loaded anew: nothing begun on one side can end on the other."""
    phone.page.goto(phone.url + "/#/training")
    phone.page.evaluate("window.sameWindow = true")
    phone.tap(button)
    phone.page.get_by_role("heading", name="Round", exact=True).wait_for()
    assert not phone.page.evaluate("window.sameWindow === true")


def begin(phone: Phone) -> None:
    """From wherever one is."""
    cross(phone, "Begin training")


def measure(phone: Phone, name: str) -> None:
    """Six readings of an animal of training, up to *Finish*."""
    phone.page.get_by_role("link", name=re.compile(name)).first.click()
    in_training(phone.page)
    phone.tap("Measure")
    in_training(phone.page)
    phone.tap("Show Readings")
    work.add_readings(phone, "150", "148", "146", "147", "148", "146")


def handed_in(requests: list[Request]) -> list[str]:
    """Requests that carry anything to the server."""
    return [f"{one.method} {one.url}" for one in requests if one.method != "GET"]


def test_a_visit_in_training_reaches_nothing(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    before = ground(phone.page)
    requests: list[Request] = []
    assert phone.context is not None
    phone.context.on("request", lambda one: requests.append(one))
    begin(phone)
    in_training(phone.page)
    assert ground(phone.page) != before
    measure(phone, "Pebble")
    phone.tap("Finish")
    phone.shows("Training: not filed in the record.")
    in_training(phone.page)
    phone.tap("File")
    phone.page.get_by_role("button", name="File", exact=True).wait_for(state="detached")
    expect(phone.page.get_by_text("Training only", exact=True)).to_have_count(1)
    phone.page.goto(phone.url + "/#/outbox")
    phone.shows("Nothing of training is ever sent. What is not sent is the record's: go back to it to see that.")
    expect(phone.button("Send now")).to_have_count(0)
    expect(phone.page.get_by_text("Training only", exact=True)).to_have_count(6)  # four animals, a bag, the measurement
    expect(phone.page.get_by_text("In the record", exact=True)).to_have_count(0)
    expect(phone.page.get_by_role("link", name="Outbox, 0 not sent")).to_be_visible()
    phone.page.wait_for_timeout(1500)  # longer than any sending would wait
    assert on_disk.rows(phone.page, "quietcuff-training", "entries") == 6
    assert [on_disk.rows(phone.page, "quietcuff-outbox", store) for store in ("entries", "drafts")] == [0, 0]
    assert handed_in(requests) == []
    assert server.rows("SELECT count(*) FROM journal") == [(0,)]


def test_every_screen_of_training_says_so_in_every_look(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    grounds: dict[str, set[str]] = {}
    for is_training in (False, True):
        if is_training:
            begin(phone)
        for screen in SCREENS:
            phone.page.goto(f"{phone.url}/#/{screen}")
            phone.page.get_by_role("heading", level=1).wait_for()
            if is_training:
                in_training(phone.page)
            for _ in range(3):
                button = phone.page.get_by_role("button", name=re.compile("^Look: "))
                name = str(button.get_attribute("aria-label"))
                grounds.setdefault(name, set()).add(ground(phone.page))
                colour = phone.page.locator('meta[name="theme-color"]').get_attribute("content")
                assert phone.page.evaluate("(c) => { document.body.style.color = c; return getComputedStyle(document.body).color; }",
                                           colour) == ground(phone.page), "the browser's bar does not follow the look"
                button.click()
                expect(button).not_to_have_attribute("aria-label", name)
    assert {name: len(seen) for name, seen in grounds.items()} == {"Look: day": 2, "Look: dim": 2, "Look: sun": 2}


def test_a_killed_app_comes_back_in_training_and_leaves_it_only_when_told(
        server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    work.add_animal(phone, "Dog", "Brammel", "")
    begin(phone)
    expect(phone.page.get_by_role("link", name=re.compile("Brammel"))).to_have_count(0)
    measure(phone, "Pebble")
    phone.page.wait_for_timeout(500)
    phone.kill_tab()
    in_training(phone.page)
    phone.close()
    phone.open(offline=True)
    in_training(phone.page)
    expect(phone.page.get_by_role("button", name="Finish", exact=True)).to_be_visible()  # back at the measurement
    cross(phone, "Back to the record")
    expect(phone.page.get_by_role("link", name=re.compile("Brammel"))).to_be_visible()
    expect(phone.page.get_by_role("link", name=re.compile("Pebble"))).to_have_count(0)
    expect(phone.page.get_by_text(WORD, exact=True)).to_have_count(0)
    expect(phone.page).to_have_title("Round · quietcuff")
    phone.close()
    phone.open(offline=True)
    expect(phone.page.get_by_role("link", name=re.compile("Brammel"))).to_be_visible()


def test_training_begins_anew_at_one_act_that_names_it(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    work.add_animal(phone, "Dog", "Brammel", "")
    phone.page.goto(phone.url + "/#/training")
    phone.button("Begin training").wait_for()
    expect(phone.button("Start training anew")).to_have_count(0)  # there is nothing yet to take away
    begin(phone)
    work.add_animal(phone, "Cat", "Sorrel", "")
    phone.page.goto(phone.url + "/#/training")
    phone.tap("Start training anew")
    phone.shows("Take away every animal, measurement and draft made in training? The record is not touched.")
    phone.tap("Take them away")
    phone.shows("Training begins anew. The record was not touched.")
    phone.page.goto(phone.url + "/#/round")
    expect(phone.page.get_by_role("link", name=re.compile("Pebble"))).to_be_visible()
    expect(phone.page.get_by_role("link", name=re.compile("Sorrel"))).to_have_count(0)
    assert on_disk.rows(phone.page, "quietcuff-outbox", "entries") == 1
