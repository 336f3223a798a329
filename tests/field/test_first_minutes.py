"""The first minutes on a phone: the home screen before the first entry, and the cautions once for each person."""

import sqlite3
from collections.abc import Callable
from contextlib import closing

from playwright.sync_api import Locator, expect

from tests.field import work
from tests.field.phone import Phone
from tests.field.server_process import PASSWORD, ServerProcess

# A browser's own offer, as far as the page can see it: an event that can be asked once (no standard; Chromium's form).
OFFER = """
const offer = Object.assign(new Event('beforeinstallprompt', { cancelable: true }), {
  prompt: () => { window.asked = (window.asked ?? 0) + 1; return Promise.resolve({ outcome: 'dismissed' }); },
});
window.dispatchEvent(offer);
window.wasKept = offer.defaultPrevented;
"""
NO_OFFER_OF_ITS_OWN = """
addEventListener('beforeinstallprompt', (event) => { if (event.isTrusted) event.stopImmediatePropagation(); }, true);
"""
HEADING = "On the home screen"
FIRST = "Put it on the home screen first"
CAUTIONS = "Before you rely on it"
STANDALONE = """
const real = window.matchMedia.bind(window);
window.matchMedia = (query) => query.includes('display-mode: standalone') ? { matches: true } : real(query);
"""


def top(one: Locator) -> float:
    """How far below the upper edge of the screen it begins, px."""
    box = one.bounding_box()
    assert box is not None
    return box["y"]


def test_the_home_screen_is_offered_before_the_first_entry(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = new_phone(server.url)
    phone.scripts.append(NO_OFFER_OF_ITS_OWN)
    phone.open()
    expect(phone.page.get_by_role("heading", name=HEADING)).to_be_visible()
    phone.shows("Open the browser's menu, then Add to Home screen or Install. Open the app from there.")
    expect(phone.button("Put it on the home screen")).to_have_count(0)
    phone.page.evaluate(OFFER)
    assert phone.page.evaluate("wasKept"), "the browser would ask by itself, at a moment of its own"
    phone.tap("Put it on the home screen")
    assert phone.page.evaluate("asked") == 1
    expect(phone.button("Put it on the home screen")).to_have_count(0)  # an offer can be asked once
    phone.tap("Go on in the browser")
    expect(phone.page.get_by_role("heading", name=HEADING)).to_have_count(0)
    phone.close()
    phone.open()
    phone.page.get_by_label("Login", exact=True).wait_for()
    expect(phone.page.get_by_role("heading", name=HEADING)).to_have_count(0)


def test_the_task_stands_above_every_hint(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    """On the first screenful of a phone of 360 x 740: what is to be done, and below it what is to be known, a line each on the round."""
    phone = new_phone(server.url)
    phone.scripts.append(NO_OFFER_OF_ITS_OWN)
    phone.open()
    hint, cautions = phone.page.get_by_role("heading", name=HEADING), phone.page.get_by_role("heading", name=CAUTIONS)
    hint.wait_for()
    assert top(phone.button("Sign in")) < top(hint) < top(cautions)
    assert top(phone.button("Sign in")) + 60 < 740
    sign_in_as(phone, "ada")
    first = phone.page.get_by_role("heading", name=FIRST)
    expect(first).to_be_visible()
    expect(phone.page.get_by_text("Open the browser's menu")).to_have_count(1)
    expect(phone.page.get_by_text("Open the browser's menu")).not_to_be_visible()
    assert top(phone.button("Add animal")) < top(phone.button("A cat")) < top(cautions) < top(first) < 740
    first.click()
    phone.shows("Open the browser's menu, then Add to Home screen or Install. Open the app from there.")
    phone.tap("Go on in the browser")
    expect(first).to_have_count(0)


def test_a_browser_finds_the_app_fit_for_its_home_screen(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    """Chromium judges manifest, icons and origin by itself, and says so by its own event."""
    phone = new_phone(server.url)
    phone.open()
    expect(phone.button("Put it on the home screen")).to_be_visible(timeout=15_000)


def test_the_app_from_the_home_screen_offers_nothing(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = new_phone(server.url)
    phone.scripts.append(STANDALONE)
    phone.open("/?from=home")
    phone.page.get_by_label("Login", exact=True).wait_for()
    expect(phone.page.get_by_role("heading", name=HEADING)).to_have_count(0)


def add_to_first_practice(server: ServerProcess, login: str) -> None:
    """A colleague: what a phone keeps by practice is the same for both, so only the person tells them apart."""
    server.found(login=login, practice="Second practice")
    with closing(sqlite3.connect(server.database)) as database, database:
        moved = database.execute("UPDATE people SET practice = (SELECT practice FROM people WHERE login = 'ada') WHERE login = ?", (login,))
        assert moved.rowcount == 1


def sign_in_as(phone: Phone, login: str) -> None:
    """Without touching the cautions."""
    phone.fill("Login", login)
    phone.fill("Password", PASSWORD)
    phone.tap("Sign in")
    phone.page.get_by_role("heading", name="Round", exact=True).wait_for()
    phone.page.wait_for_timeout(300)  # longer than the look-up of what was read


def sign_out(phone: Phone) -> None:
    """On *This phone*."""
    phone.page.goto(phone.url + "/#/this-phone")
    phone.tap("Sign out")
    phone.page.get_by_label("Login", exact=True).wait_for()


def test_each_person_is_shown_the_cautions_once(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    add_to_first_practice(server, "ben")
    phone = new_phone(server.url)
    phone.open()
    cautions = phone.page.get_by_role("heading", name=CAUTIONS)
    expect(cautions).to_be_visible()
    assert phone.page.get_by_role("region", name=CAUTIONS).get_by_role("listitem").count() == 7
    sign_in_as(phone, "ada")
    expect(cautions).to_be_visible()  # not read yet
    cautions.click()
    phone.tap("I have read this")
    expect(cautions).to_have_count(0)
    phone.page.reload()
    phone.page.get_by_role("heading", name="Round", exact=True).wait_for()
    phone.page.wait_for_timeout(500)
    expect(cautions).to_have_count(0)
    sign_out(phone)
    sign_in_as(phone, "ben")
    expect(cautions).to_be_visible()  # another person
    sign_out(phone)
    sign_in_as(phone, "ada")
    expect(cautions).to_have_count(0)


def test_read_before_signing_in_counts_for_the_one_who_signs_in(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)  # reads them on the way
    phone.page.wait_for_timeout(500)
    phone.page.reload()
    phone.page.get_by_role("heading", name="Round", exact=True).wait_for()
    phone.page.wait_for_timeout(500)
    expect(phone.page.get_by_role("heading", name=CAUTIONS)).to_have_count(0)
