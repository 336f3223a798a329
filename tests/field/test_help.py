"""Help in place: the same slot on every screen (WCAG 2.2, 3.2.6 Consistent Help), without a network, and a way back that loses nothing."""

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

from tests.field import work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess

PARTS = {"Ready?": "Ready?", "Calm": "Calm", "Cuff": "Cuff", "Readings": "Readings"}
SCREENS = ("round", "outbox", "bag", "help", "this-phone", "training", "sign-in")


@pytest.fixture
def phone(server: ServerProcess, new_phone: Callable[..., Phone]) -> Phone:
    """Signed in, every screen fetched, and no network from here on."""
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    phone.page.get_by_role("link", name="Help").first.click()
    phone.page.get_by_role("heading", name="Help", exact=True).wait_for()
    phone.page.goto(phone.url + "/#/round")
    work.add_animal(phone, "Cat", "Quill", "")
    assert phone.context is not None
    phone.context.set_offline(True)
    return phone


def slot(page: Page) -> tuple[int, float]:
    """Which of the head's last things *Help* is, counted from the end, and how high it is, px."""
    help_link = page.get_by_role("banner").get_by_role("link", name="Help", exact=True)
    expect(help_link).to_have_count(1)
    from_end = help_link.evaluate("(one) => [...one.parentElement.children].reverse().indexOf(one)")
    box = help_link.bounding_box()
    assert box is not None and box["width"] >= 44
    return int(from_end), box["height"]


def opened(page: Page) -> list[str]:
    """Titles of the topics that are open."""
    return list(page.evaluate("[...document.querySelectorAll('details.topic[open] > summary')].map((one) => one.textContent)"))


def show(phone: Phone, part: str) -> None:
    """The part, once it is shown: a press is kept before it is painted."""
    phone.tap(f"Show {part}")
    expect(phone.page.get_by_role("button", name=f"Show {part}", exact=True)).to_have_attribute("aria-expanded", "true")


def test_help_has_one_place_on_every_screen(phone: Phone) -> None:
    slots = []
    for screen in SCREENS:
        phone.page.goto(f"{phone.url}/#/{screen}")
        phone.page.get_by_role("heading", level=1).wait_for()
        slots.append(slot(phone.page))
    phone.page.goto(phone.url + "/#/round")
    phone.page.get_by_role("link", name="Quill").first.click()
    phone.page.get_by_role("heading", name="Quill", exact=True).wait_for()
    slots.append(slot(phone.page))
    phone.tap("Measure")
    for part in PARTS:
        show(phone, part)
        slots.append(slot(phone.page))
    assert {from_end for from_end, _ in slots} == {1}, "the last but one, before the look"
    assert min(height for _, height in slots) >= 44


def test_help_opens_at_the_step_and_leads_back_to_it(phone: Phone) -> None:
    phone.page.get_by_role("heading", name="Quill", exact=True).wait_for()
    phone.tap("Measure")
    for part, topic in PARTS.items():
        show(phone, part)
        phone.page.get_by_role("link", name="Help", exact=True).click()
        phone.page.get_by_role("heading", name="Help", exact=True).wait_for()
        assert opened(phone.page) == [topic]
        phone.page.get_by_role("link", name="Back", exact=True).click()
        expect(phone.page.get_by_role("button", name=f"Show {part}", exact=True)).to_have_attribute("aria-expanded", "true")


def test_a_topic_asked_for_stands_first_and_the_way_back_stays_in_sight(phone: Phone) -> None:
    page = phone.page
    back = page.get_by_role("link", name="Back", exact=True)
    summary = page.locator("details.topic[open] > summary")
    for before in ("#/help", "#/help/first", "#/round"):
        page.goto(f"{phone.url}/{before}")
        page.get_by_role("heading", level=1).wait_for()
        page.goto(f"{phone.url}/#/help/offline")  # among the last of the list
        expect(summary).to_have_text(["Without a network"])
        box = summary.bounding_box()
        assert box is not None and 0 < box["y"] < 200, f"from {before}: {box}"
        expect(page.locator("details.topic > summary")).to_have_count(13)
    page.evaluate("scrollTo(0, document.documentElement.scrollHeight)")
    expect(page.get_by_text("Versions", exact=True)).to_be_in_viewport()
    expect(back).to_be_in_viewport()
    back.click()
    expect(page.get_by_role("heading", name="Round", exact=True)).to_be_visible()


def test_the_page_of_an_animal_stands_as_it_was_left_for_help(phone: Phone) -> None:
    phone.page.get_by_role("heading", name="Quill", exact=True).wait_for()
    phone.page.get_by_text("Handling", exact=True).click()
    phone.page.get_by_label("What worked", exact=True).wait_for()
    phone.page.get_by_role("link", name="Help", exact=True).click()
    phone.page.get_by_role("heading", name="Help", exact=True).wait_for()
    phone.page.get_by_role("link", name="Back", exact=True).click()
    expect(phone.page.get_by_label("What worked", exact=True)).to_be_visible()
    address = phone.page.url
    phone.page.goto(phone.url + "/#/round")
    phone.page.get_by_role("heading", name="Round", exact=True).wait_for()
    phone.page.goto(address)
    phone.page.get_by_role("heading", name="Quill", exact=True).wait_for()
    expect(phone.page.get_by_label("What worked", exact=True)).to_have_count(0)


def test_nothing_is_lost_on_the_way_even_when_the_app_is_killed_on_help(phone: Phone) -> None:
    phone.page.get_by_role("heading", name="Quill", exact=True).wait_for()
    phone.tap("Measure")
    phone.tap("Show Readings")
    work.add_readings(phone, "150")
    phone.type_number("14")
    expect(phone.page.get_by_label("Systolic", exact=True)).to_have_value("14")
    phone.page.get_by_role("link", name="Help", exact=True).click()
    phone.page.get_by_role("heading", name="Help", exact=True).wait_for()
    phone.page.get_by_role("link", name="Back", exact=True).click()
    expect(phone.page.get_by_label("Systolic", exact=True)).to_have_value("14")
    phone.page.get_by_role("link", name="Help", exact=True).click()
    phone.page.get_by_role("heading", name="Help", exact=True).wait_for()
    phone.kill_tab()
    phone.page.get_by_role("link", name="Back", exact=True).click()
    expect(phone.page.get_by_label("Systolic", exact=True)).to_have_value("14")
    expect(phone.page.get_by_text("150", exact=True).first).to_be_visible()


def test_every_topic_opens_without_a_network_and_has_its_words(phone: Phone) -> None:
    phone.page.goto(phone.url + "/#/help")
    topics = phone.page.locator("details.topic > summary")
    expect(topics).to_have_count(13)
    for at in range(13):
        topics.nth(at).click()
    expect(phone.page.get_by_text("Rule set", exact=True)).to_be_visible()
    text = phone.page.get_by_role("main").inner_text()
    assert "[" not in text, "a sentence is missing"
    for said in ("It never diagnoses and never doses", "Saved on this phone", "In the record", "Needs you", "Field practice", "Rule set"):
        assert said in text
