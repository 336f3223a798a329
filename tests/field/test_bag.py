"""The bag: filed without a network, in the record later, on the practice's other phone, and what Cuff makes of it.

Truth about filing is read from the server's database. Bag and animals are invented for this test.
"""

import json
import re
from collections.abc import Callable

from playwright.sync_api import expect

from tests.field import work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess

NewPhone = Callable[..., Phone]
SENT_MS = 45_000


def add_machine(phone: Phone, name: str, validated: str) -> None:
    """A machine joins the bag that is open."""
    phone.tap("Add machine")
    phone.fill("Name", name)
    phone.choose("Validated for", validated)
    phone.tap("Checked today")
    phone.tap("Put into the bag")
    phone.page.get_by_role("button", name=f"Change {name}", exact=True).wait_for()


def pack(phone: Phone) -> None:
    """A first bag: four cuffs, one of them taken out and back again, and a machine for dogs."""
    phone.page.goto(phone.url + "/#/bag")
    phone.fill("Name of the bag", "Van")
    phone.fill("Add widths, in mm", "20, 25, 30, 40")
    phone.tap("Add cuffs")
    phone.tap("Take out 25 mm")
    phone.tap("Undo: 25 mm taken out")
    phone.page.get_by_role("button", name="Change 25 mm", exact=True).wait_for()
    add_machine(phone, "Box 2", "Dogs")


def to_cuff(phone: Phone, species: str) -> None:
    """A measurement of an animal whose name comes later, at the part *Cuff*."""
    phone.page.goto(phone.url + "/#/round")
    phone.tap(f"A {species}")
    phone.tap("Show Cuff")
    phone.page.get_by_role("button", name="Next: readings").wait_for()


def choose_the_cuff(phone: Phone) -> None:
    """A limb of 8.5 cm: for a cat 35 % of 85 mm is 29.8 mm, so 30 fits best; no cuff is typed."""
    to_cuff(phone, "cat")
    phone.choose("Method", "Oscillometric")
    phone.choose("Site", "Above the elbow")
    phone.choose("Side", "Left")
    phone.fill("Limb circumference", "8.5")
    phone.shows(re.compile(r"^30 mm: good fit"))
    phone.page.get_by_role("radio", name="30 fits best", exact=True).check(force=True)
    phone.choose("Posture", "In the lap")
    phone.choose("Cuff against the heart", "Not known")


def bodies(server: ServerProcess, kind: str) -> list[dict]:
    """The bodies of all letters of a kind, in the order of the record."""
    rows = server.rows("SELECT letter FROM journal WHERE kind = ? ORDER BY position", kind)
    return [json.loads(letter)["body"] for (letter,) in rows]


def test_a_bag_filed_offline_is_in_the_record_and_on_the_other_phone(server: ServerProcess, new_phone: NewPhone) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    assert phone.context is not None
    phone.context.set_offline(True)
    pack(phone)
    phone.kill_tab()
    phone.page.get_by_role("button", name="Change Box 2", exact=True).wait_for()
    phone.tap("Save bag")
    phone.shows(re.compile("^Saved on this phone$"))
    choose_the_cuff(phone)
    phone.choose("Machine", "Box 2")
    phone.shows("Not validated for cats as far as the bag says.")
    assert bodies(server, "bag") == []
    phone.back_in_reach()
    phone.page.goto(phone.url + "/#/bag")
    expect(phone.page.get_by_text("In the record", exact=True)).to_be_visible(timeout=SENT_MS)
    (bag,) = bodies(server, "bag")
    assert (bag["name"], [cuff["width_mm"] for cuff in bag["cuffs"]]) == ("Van", [20, 25, 30, 40])
    assert [(machine["name"], machine["validated_in"]) for machine in bag["machines"]] == [("Box 2", ["dog"])]
    the_other_phone_has_it(server, new_phone)


FORGETS_NOTHING = """
const { put } = IDBObjectStore.prototype;
IDBObjectStore.prototype.put = function (row, ...rest) {
  if (window.isDying && this.name === 'meta' && row.name.includes('bag_edit')) throw new DOMException('died', 'AbortError');
  return put.call(this, row, ...rest);
};
"""


def test_a_bag_saved_right_before_the_app_died_is_not_offered_again(server: ServerProcess, new_phone: NewPhone) -> None:
    """After the filing nothing of the half-typed bag is written any more, as when the app is killed then."""
    phone = new_phone(server.url)
    phone.scripts.append(FORGETS_NOTHING)
    phone.open()
    work.sign_in(phone)
    phone.page.goto(phone.url + "/#/bag")
    phone.fill("Name of the bag", "Van")
    expect(phone.page.get_by_label("Name of the bag", exact=True)).to_have_value("Van")
    phone.page.evaluate("window.isDying = true")
    phone.tap("Save bag")
    phone.page.get_by_role("radio", name="Another bag").wait_for()
    phone.kill_tab()
    phone.choose("Bag this phone measures with", "Another bag")
    phone.button("Save bag").wait_for()
    expect(phone.page.get_by_label("Name of the bag", exact=True)).to_have_value("")
    expect(phone.page.get_by_role("link", name="Outbox, 0 not sent")).to_be_visible(timeout=SENT_MS)
    assert len(bodies(server, "bag")) == 1


def test_the_day_of_a_check_is_typed_in_three_fields_and_mended_without_losing_the_place(server: ServerProcess, new_phone: NewPhone) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    phone.page.goto(phone.url + "/#/bag")
    phone.fill("Name of the bag", "Van")
    phone.tap("Add gauge")
    phone.fill("Name", "Round one")
    for part, text in (("Day", "31"), ("Month", "2"), ("Year", "2026")):
        phone.page.get_by_label(part, exact=True).press_sequentially(text)
        expect(phone.page.get_by_label(part, exact=True)).to_have_value(text)
    phone.tap("Put into the bag")
    expect(phone.page.get_by_role("alert")).to_be_focused()
    phone.page.get_by_role("button", name="Last check: that month has no such day").click()
    expect(phone.page.get_by_label("Day", exact=True)).to_be_focused()
    phone.page.keyboard.press("End")
    phone.page.keyboard.press("Backspace")
    expect(phone.page.get_by_label("Day", exact=True)).to_have_value("3")
    phone.page.keyboard.press("Tab")
    expect(phone.page.get_by_label("Month", exact=True)).to_be_focused()
    phone.page.keyboard.type("13")
    expect(phone.page.get_by_label("Month", exact=True)).to_have_value("13")
    expect(phone.page.get_by_label("Month", exact=True)).to_be_focused()  # said again at each key, and nothing takes the hand away
    phone.page.keyboard.press("Backspace")
    phone.shows("3 Jan 2026")
    phone.tap("Put into the bag")
    phone.tap("Save bag")
    expect(phone.page.get_by_role("link", name="Outbox, 0 not sent")).to_be_visible(timeout=SENT_MS)
    phone.page.get_by_text("In the record", exact=True).wait_for(timeout=SENT_MS)
    # 3 January 2026: 56 years with 14 leap days after 1970-01-01, and two days: 56 * 365 + 14 + 2
    assert bodies(server, "bag")[0]["gauges"] == [{"name": "Round one", "type": "aneroid", "checked_on_day": 20_456}]


def the_other_phone_has_it(server: ServerProcess, new_phone: NewPhone) -> None:
    """It takes a cuff out; the first bag stays one bag, in its second wording."""
    other = new_phone(server.url, "other")
    other.open()
    work.sign_in(other)
    other.page.goto(other.url + "/#/bag")
    expect(other.page.get_by_label("Name of the bag", exact=True)).to_have_value("Van", timeout=SENT_MS)
    other.tap("Take out 40 mm")
    other.tap("Save bag")
    expect(other.page.get_by_text("In the record", exact=True)).to_be_visible(timeout=SENT_MS)
    assert [[cuff["width_mm"] for cuff in bag["cuffs"]] for bag in bodies(server, "bag")] == [[20, 25, 30, 40], [20, 25, 30]]
    expect(other.page.get_by_role("radio", name="Van")).to_have_count(1)
    to_cuff(other, "dog")
    expect(other.page.get_by_role("button", name=re.compile("^Bag Van"))).to_be_visible()


def a_visit_of_a_cat(phone: Phone) -> None:
    """The widths typed are kept as the bag; then the visit is filed."""
    work.add_animal(phone, "Cat", "Quill", "")
    phone.tap("Measure")
    work.cuff(phone, "Doppler", "8.5", "20, 25, 30", "30", "Forearm", "In the lap")
    work.unfold(phone, "Site")
    phone.choose("Side", "Left")
    work.unfold(phone, "Limb")
    phone.tap("Keep these as the bag")
    phone.page.get_by_role("button", name=re.compile("^Bag First bag")).wait_for()
    phone.tap("Show Readings")
    work.add_readings(phone, "142", "140")
    phone.tap("Finish")
    phone.tap("File")
    phone.page.get_by_role("heading", name="Round", exact=True).wait_for()


def test_as_last_time_is_one_tap_and_a_barred_site_is_left_open(server: ServerProcess, new_phone: NewPhone) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    a_visit_of_a_cat(phone)
    phone.page.get_by_role("link", name=re.compile("Quill")).first.click()
    phone.button("Measure").first.wait_for()
    animal = phone.page.url
    phone.tap("Measure")
    phone.tap("Show Cuff")
    phone.page.get_by_role("button", name=re.compile("^As last time: Doppler, forearm, left, limb 8.5 cm, 30 mm cuff")).click()
    phone.page.get_by_role("button", name=re.compile("^Cuff 30 mm"), expanded=False).wait_for()
    phone.tap("Next: readings")
    phone.page.get_by_label("Systolic", exact=True).wait_for()
    phone.page.goto(animal)
    phone.page.get_by_text("Sites not to be used", exact=True).click()
    phone.tap("No cuff here: Forearm · Left")
    phone.choose("Why no cuff there", "Missing")
    phone.tap("Save site")
    phone.shows("Forearm · Left · Missing · for good")
    phone.tap("Measure")
    phone.tap("Show Cuff")
    phone.shows(re.compile("Forearm, Left, used last time, is not to be used: Missing"))
    work.unfold(phone, "Site")
    phone.choose("Site", "Forearm")
    sides = phone.page.get_by_role("group", name="Side", exact=True)
    expect(sides.get_by_role("radio")).to_have_count(1)
    phone.tap("Use all the same: Left")
    expect(sides.get_by_role("radio", name="Left", exact=True)).to_be_visible()
    phone.choose("Site", "Tail base")
    work.unfold(phone, "Site")
    phone.choose("Site", "Forearm")
    show_again(phone)
    phone.button("Site Forearm").click()
    expect(phone.page.get_by_role("radio", name="Forearm", exact=True)).to_be_focused()  # the line that opened the sites is gone


def show_again(phone: Phone) -> None:
    """The Cuff part as it opens with what is noted: the site, and its side still to be chosen."""
    phone.tap("Show Calm")
    phone.button("Show Cuff").wait_for()
    phone.tap("Show Cuff")
