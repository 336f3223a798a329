"""A newer build in a real browser: never under a thumb. It is offered during a measurement, waits, and is taken at a tap or at a
cold start without a draft. Source: Service Workers: a worker waits until it is told to skip waiting, or no page is left."""

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import expect

from quietcuff.web.shell import client_folder
from tests.field import another_build, work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess

OFFER = "A newer quietcuff is ready."
IS_NEWER = "document.querySelector('meta[name=build]') !== null"
LOOK_FOR_UPDATE = "navigator.serviceWorker.getRegistration().then((one) => one.update()).then(() => true)"
Phones = Callable[..., Phone]


@pytest.fixture
def measuring(server: ServerProcess, new_phone: Phones, tmp_path: Path) -> Phone:
    """A phone amid a measurement, two readings in, to which a newer build has just been offered."""
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    phone.page.reload()  # from here on the worker serves the page
    work.add_animal(phone, "Dog", "Brammel", "")
    phone.tap("Measure")
    phone.tap("Show Readings")
    work.add_readings(phone, "150", "148")
    phone.page.evaluate("window.sameWindow = true")
    server.kill()
    server.environment["QUIETCUFF_CLIENT"] = str(another_build.made_from(client_folder(), tmp_path / "newer"))
    server.start()
    assert phone.page.evaluate(LOOK_FOR_UPDATE)
    expect(phone.page.get_by_text(OFFER, exact=True)).to_be_visible(timeout=15_000)
    return phone


def becomes_newer(phone: Phone) -> None:
    """The page is the newer build's. Looked for from outside: a watch inside the page would itself break its policy."""
    expect(phone.page.locator("meta[name=build]")).to_have_count(1, timeout=15_000)


def still_the_same(phone: Phone) -> None:
    """Neither loaded again nor replaced."""
    assert phone.page.evaluate("window.sameWindow === true")
    assert not phone.page.evaluate(IS_NEWER)


def test_an_offered_build_waits_through_a_measurement_and_its_filing(measuring: Phone) -> None:
    phone = measuring
    work.add_readings(phone, "146", "147", "148", "146")
    phone.page.wait_for_timeout(2000)
    still_the_same(phone)
    phone.tap("Finish")
    phone.tap("File")
    phone.page.get_by_role("button", name="File", exact=True).wait_for(state="detached")
    phone.page.wait_for_timeout(1500)
    still_the_same(phone)  # filing is no reason to load the page either
    phone.close()
    phone.open()  # a cold start without a draft: taken, and nothing is asked
    becomes_newer(phone)
    phone.page.get_by_role("heading", name="Round", exact=True).wait_for()
    expect(phone.page.get_by_text(OFFER, exact=True)).to_have_count(0)


def test_another_window_opened_amid_the_measurement_does_not_take_it(measuring: Phone) -> None:
    assert measuring.context is not None
    other = measuring.context.new_page()
    other.goto(measuring.url)
    expect(other.get_by_text(OFFER, exact=True)).to_be_visible(timeout=15_000)  # there is a draft: offered and no more
    other.wait_for_timeout(1500)
    assert not other.evaluate(IS_NEWER)
    still_the_same(measuring)


def test_all_windows_gone_the_draft_is_whole_and_the_page_is_loaded_once(measuring: Phone) -> None:
    """With no window left the browser itself puts the waiting worker in place before the page is drawn: no thumb is on it."""
    phone = measuring
    phone.scripts.append("sessionStorage.loads = Number(sessionStorage.loads ?? 0) + 1;")
    phone.close()
    phone.open()
    phone.page.get_by_role("button", name="Finish", exact=True).wait_for()
    expect(phone.page.get_by_text("148", exact=True).first).to_be_visible()
    work.add_readings(phone, "146")
    phone.page.wait_for_timeout(2000)
    assert phone.page.evaluate("sessionStorage.loads") == "1"


def test_an_offered_build_is_taken_at_a_tap_and_the_measurement_is_there_in_it(measuring: Phone) -> None:
    phone = measuring
    phone.type_number("14")
    expect(phone.page.get_by_label("Systolic", exact=True)).to_have_value("14")
    phone.tap("Use it now")
    becomes_newer(phone)
    expect(phone.page.get_by_label("Systolic", exact=True)).to_have_value("14")
    expect(phone.page.get_by_text("148", exact=True).first).to_be_visible()


def test_a_draft_of_training_keeps_a_newer_build_waiting_too(server: ServerProcess, new_phone: Phones, tmp_path: Path) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    phone.page.goto(phone.url + "/#/training")
    phone.tap("Begin training")
    phone.tap("A dog")
    phone.tap("Show Readings")
    work.add_readings(phone, "150")
    phone.page.goto(phone.url + "/#/training")
    phone.tap("Back to the record")
    phone.close()
    server.kill()
    server.environment["QUIETCUFF_CLIENT"] = str(another_build.made_from(client_folder(), tmp_path / "newer"))
    server.start()
    phone.open()
    expect(phone.page.get_by_text(OFFER, exact=True)).to_be_visible(timeout=15_000)
    phone.page.wait_for_timeout(1500)
    assert not phone.page.evaluate(IS_NEWER)
