"""Three quiet times at once, on three drafts: exact after the page was hidden and after the app was killed, silent, none lost.

A quiet time is a start and a need (needs for dog and cat are read from the rule document), so whatever happened to the page, what is
left is a subtraction. The page's clock is moved on by an init script; what is expected is worked out from the page's own clock read
around each tap.
"""

import json
import re
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Locator, Page, expect

from tests.field import work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess

NewPhone = Callable[..., Phone]

RULE = Path(__file__).parents[2] / "shared_schemas" / "rules" / "v1" / "cautions.json"
NEED_S: dict[str, int] = json.loads(RULE.read_text())["numbers"]["rest_short_s"]

CLOCK = """(() => {
  let later = %d, sight = 'visible', real = Date.now.bind(Date);
  Date.now = () => real() + later;
  Object.defineProperty(Document.prototype, 'visibilityState', { get: () => sight });
  const turn = (to) => { sight = to; document.dispatchEvent(new Event('visibilitychange')); };
  window.away = (ms) => { turn('hidden'); later += ms; turn('visible'); };
  window.clockSet = (ms) => { later += ms; };
  window.buzzed = 0; navigator.vibrate = () => { window.buzzed += 1; return true; };
})()"""
"""`away`: out of sight for so long. `clockSet`: the wall clock set in plain sight. `buzzed`: how often the phone buzzed."""


def now_ms(page: Page) -> int:
    """The page's own clock."""
    return int(page.evaluate("Date.now()"))


def start_one(phone: Phone, species: str, name: str) -> float:
    """A new animal whose quiet time is started on *Calm*; the start as the page's clock has it, in ms, to half a tap."""
    work.add_animal(phone, species, name, f"cage of {name}")
    phone.tap("Measure")
    phone.tap("Show Calm")
    before = now_ms(phone.page)
    phone.tap("Start quiet time")
    phone.page.get_by_role("timer").wait_for()
    after = now_ms(phone.page)
    assert after - before < 1500, "too slow a machine to tell a second"
    phone.page.goto(phone.url + "/#/round")
    phone.page.get_by_role("heading", name="Round", exact=True).wait_for()
    return (before + after) / 2


def strip(phone: Phone) -> Locator:
    """The rows of all quiet times."""
    return phone.page.get_by_role("region", name="Quiet times").get_by_role("link")


def left_s(phone: Phone, name: str) -> int:
    """What its row on the round says is left."""
    row = strip(phone).filter(has_text=name)
    said = re.search(r"Quiet: (\d+):(\d\d) left", row.inner_text())
    assert said, row.inner_text()
    return int(said[1]) * 60 + int(said[2])


def holds(phone: Phone, starts: dict[str, tuple[str, float]]) -> None:
    """Every row says what is left, to a second (and half the tap that started it)."""
    for name, (species, start) in starts.items():
        expected = NEED_S[species] - (now_ms(phone.page) - start) / 1000
        assert abs(left_s(phone, name) - expected) <= 1 + 0.75, (name, left_s(phone, name), expected)


def test_three_at_once(server: ServerProcess, new_phone: NewPhone) -> None:
    phone = new_phone(server.url)
    phone.scripts.append(CLOCK % 0)
    phone.open()
    work.sign_in(phone)
    starts = {}
    for name, species in (("Momo", "cat"), ("Brammel", "dog"), ("Quill", "cat")):
        starts[name] = (species, start_one(phone, species.capitalize(), name))
        phone.page.evaluate("window.away(20000)")
    expect(strip(phone)).to_have_count(3)
    # 300 s for the dog, 600 s for the cats, each begun 20 s after the one before
    assert [text.split(",")[0] for text in strip(phone).all_inner_texts()] == ["Brammel", "Momo", "Quill"]
    holds(phone, starts)

    phone.page.evaluate("window.away(90000)")
    holds(phone, starts)

    server.kill()
    # killed, and started again another 100 s later
    phone.scripts[-1] = CLOCK % (60_000 + 90_000 + 100_000)
    phone.kill()
    phone.open("/", offline=True)
    expect(strip(phone)).to_have_count(3)
    holds(phone, starts)

    phone.page.evaluate("window.away(120000)")
    over = strip(phone).first
    expect(over).to_contain_text("Brammel")
    expect(over).to_contain_text("Quiet time is over, ready since")
    assert phone.page.evaluate("window.buzzed") == 0, "silent unless somebody asked for it"

    over.click()
    expect(phone.page.get_by_role("timer")).to_have_text("Quiet time is over")
    panel = phone.page.get_by_role("timer").locator("..").bounding_box()
    assert panel and panel["width"] * panel["height"] >= 0.2 * 360 * 740, "seen at arm's length"
    phone.tap("Show Readings")
    work.add_readings(phone, "150")
    phone.tap("Show Calm")
    waited_min = (now_ms(phone.page) - starts["Brammel"][1]) / 60_000
    assert waited_min > NEED_S["dog"] / 60
    said = phone.page.get_by_text("were waited before the first reading").inner_text()
    assert abs(float(said.split()[0]) - waited_min) < 0.3, said
    # the other two wait on, in the head of this visit
    expect(phone.page.get_by_role("region", name="Quiet times")).to_contain_text("Momo")
    expect(phone.page.get_by_role("region", name="Quiet times")).to_contain_text("and 1 more")


def test_a_clock_that_is_set_is_said(server: ServerProcess, new_phone: NewPhone) -> None:
    phone = new_phone(server.url)
    phone.scripts.append(CLOCK % 0)
    phone.open()
    work.sign_in(phone)
    phone.tap("A cat")
    phone.tap("Show Calm")
    phone.tap("Start quiet time")
    phone.page.get_by_role("timer").wait_for()
    phone.page.wait_for_timeout(1500)
    expect(phone.page.get_by_text("The phone's clock was set")).to_have_count(0)
    phone.page.evaluate("window.clockSet(61000)")
    expect(phone.page.get_by_text(re.compile("clock was set .*forward.* by .*1:01.* meanwhile"))).to_be_visible()
    phone.kill_tab()
    expect(phone.page.get_by_text("The phone's clock was set")).to_be_visible()
    # by the wall more than a minute passed, in truth a few seconds: those alone are written down
    phone.tap("Show Readings")
    work.add_readings(phone, "150")
    phone.tap("Show Calm")
    said = phone.page.get_by_text("were waited before the first reading").inner_text()
    assert float(said.split()[0]) < 61 / 60, said


def test_stopped_by_mistake_goes_on(server: ServerProcess, new_phone: NewPhone) -> None:
    phone = new_phone(server.url)
    phone.scripts.append(CLOCK % 0)
    phone.open()
    work.sign_in(phone)
    phone.tap("A dog")
    phone.tap("Show Calm")
    phone.tap("Start quiet time")
    phone.page.get_by_role("timer").wait_for()
    phone.page.evaluate("window.away(65000)")
    phone.tap("Stop")
    phone.shows(re.compile(r"Stopped after 1:0\d"))
    phone.tap("Let it go on")
    expect(phone.page.get_by_role("timer")).to_have_text(re.compile(r"3:5\d left"))


def test_it_buzzes_once_where_that_was_asked_for(server: ServerProcess, new_phone: NewPhone) -> None:
    phone = new_phone(server.url)
    phone.scripts.append(CLOCK % 0)
    phone.open()
    work.sign_in(phone)
    phone.page.goto(phone.url + "/#/this-phone")
    phone.choose("When a quiet time is over", "Buzz once")
    phone.page.goto(phone.url + "/#/round")
    phone.tap("A dog")
    phone.tap("Show Calm")
    phone.tap("Start quiet time")
    expect(phone.page.get_by_role("timer")).to_contain_text("left")
    phone.page.evaluate(f"window.away({(NEED_S['dog'] - 3) * 1000})")
    assert phone.page.evaluate("window.buzzed") == 0
    expect(phone.page.get_by_role("timer")).to_have_text("Quiet time is over")
    phone.page.wait_for_timeout(1500)
    assert phone.page.evaluate("window.buzzed") == 1
