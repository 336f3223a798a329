"""Two sets with attempts that gave no number: measured first, filed under an animal afterwards, and how it was worked out.

Truth about filing is read from the server's database. Expected figures are worked by hand from the text of the rule set; the animal is
invented for this test. It must not take a figure from either engine.
"""

import re
from collections.abc import Callable

from playwright.sync_api import Locator, expect

from tests.field import work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess
from tests.field.test_main_job import measured

RULES = ["Cuff", "What each reading counts for", "Do the readings agree", "Average", "What holds without an average",
         "Cuff against the heart", "Risk of organ damage", "Cautions"]
CERTAINTY = re.compile(r"^(published, read|published, not re-read by us|common practice|from memory|our own figure): \S+")

# Nothing was noted but the readings, so the first set can average nothing: its last attempt was above the gauge, and the readings
# before it may not be averaged in its place.
FIRST_SET = [("1", "152", "first of the set, does not count"), ("2", "148", "may count"), ("3", "146", "may count"),
             ("4", "No sound", "no number"), ("5", "Above gauge", "no number")]
# 146 + 148 + 150 + 144 + 149 = 737, / 5 = 147.4. Even: 150 - 144 = 6, 6 / 147.4 = 40.7 ‰. Not falling: 147.0 - 146.5 = 0.5.
SECOND_SET = [("1", "170", "first of the set, does not count"), *(
    (str(n), value, "counts") for n, value in enumerate(["146", "148", "150", "144", "149"], start=2))]


def measure_two_sets(phone: Phone) -> None:
    """Three readings and two attempts without a number, the cuff wrapped anew, then six readings."""
    phone.tap("A dog")
    phone.tap("Show Cuff")
    phone.choose("Method", "Doppler")
    phone.tap("Show Readings")
    work.add_readings(phone, "152", "148", "146")
    for n, attempt in ((4, "No sound"), (5, "Above gauge")):
        phone.tap(attempt)
        phone.shows(f"No. {n}: no number")
    phone.tap("New set")
    phone.tap("Cuff moved or wrapped anew")
    phone.shows("Set 2 · No readings yet")
    work.add_readings(phone, "170", "146", "148", "150", "144", "149")
    phone.shows("Set 2 · Readings agree")
    phone.tap("Finish")


def shows_set(worked: Locator, caption: str, rows: list[tuple[str, str, str]]) -> None:
    """The table of one set holds exactly these rows: number, value, standing in words."""
    table = worked.get_by_role("table", name=caption, exact=True)
    expect(table.get_by_role("row")).to_have_count(len(rows))
    for at, (n, value, standing) in enumerate(rows):
        row = table.get_by_role("row").nth(at)
        expect(row.get_by_role("rowheader")).to_have_text(n)
        expect(row.get_by_role("cell")).to_have_text([value, standing])


def shows_how_it_was_worked_out(phone: Phone) -> None:
    """Both sets, and every rule with at least one source that says how certain it is."""
    phone.page.get_by_text("How this was worked out", exact=True).click()
    worked = phone.page.locator("details.worked")
    expect(worked.get_by_text("Rule set v1", exact=True)).to_be_visible()
    shows_set(worked, "Set 1, Doppler", FIRST_SET)
    shows_set(worked, "Set 2, Doppler", SECOND_SET)
    for title in RULES:
        heading = phone.page.get_by_role("heading", name=title, exact=True)
        rule = worked.locator("section").filter(has=heading)
        rule.get_by_text(re.compile(r"^\d+ sources?, and how certain")).click()
        expect(rule.get_by_role("listitem").first).to_be_visible()
        lines = rule.get_by_role("listitem").all_inner_texts()
        assert all(CERTAINTY.match(line) for line in lines), f"{title}: a source without its certainty among {lines}"


def file_under_a_new_animal(phone: Phone) -> None:
    """*File* asks which animal it was; it is added there."""
    phone.tap("File")
    phone.page.get_by_role("heading", name="Which animal was this?").wait_for()
    phone.tap("Add animal")
    phone.fill("Name", "Tansy")
    phone.fill("Mark", "run 6")
    phone.tap("Save animal")
    phone.shows("File under Tansy, run 6")
    phone.tap("File")
    phone.shows("Filed: Tansy")


def test_two_sets_with_attempts_are_worked_out_and_filed(server: ServerProcess, new_phone: Callable[..., Phone]) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    measure_two_sets(phone)
    result = phone.page.get_by_role("region", name="Result")
    expect(result).to_contain_text("low risk of organ damage (140–159)")
    expect(result).to_contain_text("147.4 mmHg from 5 readings.")
    shows_how_it_was_worked_out(phone)
    file_under_a_new_animal(phone)
    phone.page.goto(phone.url + "/#/outbox")
    expect(phone.page.get_by_text("In the record", exact=True)).to_have_count(2, timeout=30_000)
    check_the_record(server)


def check_the_record(server: ServerProcess) -> None:
    """What the database says, worked by hand."""
    assert server.rows("SELECT kind FROM journal ORDER BY position") == [("patient",), ("measurement",)]
    assert server.rows("SELECT differs FROM measurements") == [(0,)]
    body, phones, servers = measured(server)["dog"]
    assert phones == servers
    assert (body["patient"],) in server.rows("SELECT id FROM journal WHERE kind = 'patient'")
    assert [[r.get("systolic_mmhg", r.get("beyond")) for r in one["readings"]] for one in body["sets"]] == [
        [152, 148, 146, "no_sound", "above_gauge"], [170, 146, 148, 150, 144, 149]]
    assert servers["result_set"] == 1
    assert servers["category"] == "low"
    first, second = servers["sets"]
    # nothing stands after the attempt above the gauge: all 5 are needed anew; 148, 146 and "above" are all at least 140
    assert (first["verdict"], first["readings_needed"], first["bounds"]) == ("too_few", 5, {"at_least_mmhg": 140})
    # squared deviations 1.96 + 0.36 + 6.76 + 11.56 + 2.56 = 23.2, / 4 = 5.8, sd 2.408; half width 2.776 × 2.408 / √5 = 2.99
    assert second["systolic"] == {"n": 5, "mean_tenths_mmhg": 1474, "sd_tenths_mmhg": 24, "spread_permille": 41,
                                  "ci95_half_width_tenths_mmhg": 30}
