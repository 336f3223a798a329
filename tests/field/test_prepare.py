"""Prepare for offline in a real browser: the self-test fails where something is missing, says what to do, and is mended by that.

The browser's own answers (persistence, room) are put in its mouth at its border; caches and stores are the real ones.
Sources: Storage Standard (persist, persisted, estimate), Service Workers (Cache).
"""

import re
from collections.abc import Callable

import pytest
from playwright.sync_api import Locator, expect

from tests.field import on_disk, work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess

PROMISE = """
StorageManager.prototype.persisted = async () => {promised};
StorageManager.prototype.persist = async () => {granted};
StorageManager.prototype.estimate = async () => ({{ quota: {quota}, usage: {usage} }});
"""
CHECKS = ["The app's files", "Start without a network", "Keeping what you type", "Opening what is kept", "The record", "The bag",
          "The browser's promise", "Room", "The clock"]


def answers(promised: bool = True, granted: bool = True, quota: int = 10**9, usage: int = 10**6) -> str:
    """What the browser shall say."""
    return PROMISE.format(promised=str(promised).lower(), granted=str(granted).lower(), quota=quota, usage=usage)


@pytest.fixture
def phone(server: ServerProcess, new_phone: Callable[..., Phone]) -> Phone:
    """A phone to be opened by `prepared`."""
    return new_phone(server.url)


def prepared(phone: Phone, script: str) -> None:
    """Signed in, everything loaded, and on *This phone* with the self-test over."""
    phone.scripts.append(script)
    phone.open()
    work.sign_in(phone)
    phone.page.get_by_role("link", name="Outbox, 0 not sent").click()
    phone.shows(re.compile("^Record as of"))
    phone.page.goto(phone.url + "/#/this-phone")
    over(phone)


def over(phone: Phone) -> None:
    """The self-test has come to its end."""
    expect(phone.button("Check again")).to_be_enabled(timeout=15_000)


def line(phone: Phone, check: str) -> Locator:
    """The line of one check."""
    return phone.page.get_by_role("listitem").filter(has=phone.page.get_by_text(re.compile(f"^{re.escape(check)}: (ready|missing)$")))


def missing(phone: Phone) -> list[str]:
    """Names of the checks that fail; each check must be there and say one of two words."""
    for check in CHECKS:
        expect(line(phone, check)).to_have_count(1)
    return [check for check in CHECKS if line(phone, check).get_by_text(f"{check}: missing", exact=True).count()]


def test_all_but_an_empty_bag_is_ready(phone: Phone) -> None:
    prepared(phone, answers())
    assert missing(phone) == ["The bag"]
    phone.shows("Not ready")
    phone.shows(re.compile(r"^All \d+ are on this phone\.$"))
    phone.shows("Enter them in the bag.")


def test_with_a_bag_the_phone_is_ready_and_the_round_says_nothing(phone: Phone) -> None:
    prepared(phone, answers())
    phone.page.goto(phone.url + "/#/bag")
    phone.fill("Name of the bag", "Shelter bag")
    phone.fill("Add widths, in mm", "25, 35")
    phone.tap("Add cuffs")
    phone.tap("Save bag")
    phone.page.get_by_text("Changed, and not in the bag yet", exact=True).wait_for(state="detached")
    phone.page.goto(phone.url + "/#/this-phone")
    phone.shows("Ready: this phone works a day without a network.", timeout_ms=15_000)
    assert missing(phone) == []
    phone.page.goto(phone.url + "/#/round")
    phone.page.wait_for_timeout(4000)
    expect(phone.page.get_by_role("link", name=re.compile("^Not ready"))).to_have_count(0)


def test_a_file_gone_from_the_cache_is_missed_and_fetched_again(phone: Phone) -> None:
    prepared(phone, answers())
    kept = sorted(on_disk.cached(phone.page))
    script = next(url for url in kept if re.search(r"/assets/help-[\w-]{8}\.js$", url))
    on_disk.delete_from_cache(phone.page, script)
    phone.tap("Check again")
    over(phone)
    assert missing(phone) == ["The app's files", "The bag"]
    phone.shows(re.compile(rf"^1 of {len(kept)} are gone from this phone\."))
    phone.tap("Fetch the missing files")
    over(phone)
    assert missing(phone) == ["The bag"]
    assert sorted(on_disk.cached(phone.page)) == kept


def test_the_page_itself_gone_means_no_start_without_a_network(phone: Phone) -> None:
    prepared(phone, answers())
    page = next(url for url in on_disk.cached(phone.page) if "/index.html" in url)
    on_disk.delete_from_cache(phone.page, page)
    phone.tap("Check again")
    over(phone)
    assert missing(phone) == ["The app's files", "Start without a network", "The bag"]
    phone.tap("Fetch the missing files")
    over(phone)
    assert missing(phone) == ["The bag"]
    phone.close()
    phone.open(offline=True)  # and what was fetched again does start
    phone.page.get_by_role("heading", name="Round", exact=True).wait_for()


def test_a_refused_promise_is_said_and_explained(phone: Phone) -> None:
    prepared(phone, answers(promised=False, granted=False))
    assert missing(phone) == ["The bag", "The browser's promise"]
    phone.tap("Ask the browser to keep it")
    expect(phone.page.get_by_role("alert").filter(has_text="The browser did not promise it.")).to_be_visible()
    over(phone)
    assert "The browser's promise" in missing(phone)
    phone.page.goto(phone.url + "/#/round")
    link = phone.page.get_by_role("link", name="Not ready to work without a network: what is missing")
    expect(link).to_be_visible()
    link.click()
    phone.page.get_by_role("heading", name="Prepare for offline").wait_for()


def test_much_room_is_said_in_gigabytes(phone: Phone) -> None:
    prepared(phone, answers(quota=10_738_000_000, usage=1_000_000))
    phone.shows("10 GB are left for the app.")


def test_a_full_phone_and_a_wrong_clock_are_seen(phone: Phone, server: ServerProcess) -> None:
    # two minutes and a half ahead of the server's clock
    ahead = "const now = Date.now.bind(Date); Date.now = () => now() + 150000;"
    prepared(phone, answers(quota=100_000_000, usage=96_000_000) + ahead)
    assert missing(phone) == ["The bag", "Room", "The clock"]
    phone.shows(re.compile(r"^4 MB are left and 96 % are used\."))
    phone.shows(re.compile(r"minutes off the server's\."))
