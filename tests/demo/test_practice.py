"""Each awkward animal of the demo shows what it is there for; the assessments are the engine's, the expectations are read off
shared_schemas/rules/README.md by hand. Formats: ISO 11784 (15 digits, the last twelve below 2^38, 999 for tests; from memory)."""

from __future__ import annotations

from collections import Counter
from datetime import UTC, date, datetime
from typing import Any

import pytest

from demo import visits as made_visits
from demo.letters import letters
from demo.practice import ANIMALS
from demo.practice.bags import BAGS

AUTHOR = "01950000-0000-7000-8000-000000000001"
TODAY = date(2026, 3, 4)
TODAY_DAY = (TODAY - date(1970, 1, 1)).days
MADE = letters(AUTHOR, TODAY)
NAMES = {letter["id"]: letter["body"]["name"] for letter in MADE if letter["kind"] == "patient" and "amends" not in letter}
VISITS = [(NAMES[letter["body"]["patient"]], letter["body"], letter["assessment"]) for letter in MADE if letter["kind"] == "measurement"]


def visits(name: str) -> list[tuple[dict[str, Any], dict[str, Any]]]:
    """The measurements and assessments of an animal, oldest first."""
    return [(body, assessment) for animal, body, assessment in VISITS if animal == name]


def patient(name: str) -> dict[str, Any]:
    """The animal as it was first written down."""
    return next(letter["body"] for letter in MADE if letter["kind"] == "patient" and letter["body"]["name"] == name)


def result_set(assessment: dict[str, Any]) -> dict[str, Any]:
    """What is said of the set the result speaks of."""
    return assessment["sets"][assessment["result_set"]]


def keys(assessment: dict[str, Any]) -> set[str]:
    """The cautions of an assessment."""
    return {caution["key"] for caution in assessment.get("cautions", [])}


def test_the_practice_is_as_large_as_it_says() -> None:
    """40 animals at three kinds of place, 185 visits over two years, seen between twice and twelve times each."""
    assert len(ANIMALS) == len(set(NAMES.values())) == 40
    assert len(VISITS) == 185
    assert set(Counter(animal.where for animal in ANIMALS)) == {"home", "shelter", "partner"}
    per_animal = Counter(name for name, _, _ in VISITS).values()
    assert (min(per_animal), max(per_animal)) == (2, 12)
    assert max(visit.weeks_ago for animal in ANIMALS for visit in animal.visits) == 103


def day_by_calendar(at_ms: int) -> date:
    """By Python's own calendar; the practice keeps UTC."""
    return datetime.fromtimestamp(at_ms / 1000, UTC).date()


def test_the_visit_before_is_told_by_calendar_days(monkeypatch: pytest.MonkeyPatch) -> None:
    """Seen in the evening, and some weeks later in the morning: as many weeks ago, as a phone counts it."""
    began_ms = made_visits.began_ms
    monkeypatch.setattr(made_visits, "began_ms", lambda animal, weeks_ago, base, place: began_ms(animal, weeks_ago, base, 0)
                        + (0 if weeks_ago == last_week else 11 * 3_600_000))
    animal = ANIMALS[0]
    last_week = min(visit.weeks_ago for visit in animal.visits)
    bodies = [body for _, body, _ in made_visits.measured(animal, 0, TODAY)]
    told = [body["previous"]["days_ago"] for body in bodies[1:]]
    days = [day_by_calendar(body["started_at_ms"]) for body in bodies]
    assert told == [(later - earlier).days for earlier, later in zip(days, days[1:], strict=False)]
    assert told[-1] % 7 == 0


def test_each_kind_of_result_is_to_be_seen() -> None:
    """A first look shows what agrees, what does not, and what is not placed, most of it unremarkable."""
    assert Counter(result_set(a)["verdict"] for _, _, a in VISITS).keys() == {"steady", "falling", "scattered", "too_few"}
    assert {a["firmness"] for _, _, a in VISITS} == {"firm", "with_care", "not_placed"}
    assert {a.get("category") for _, _, a in VISITS} == {None, "minimal", "low", "moderate", "high"}
    assert {a["category_withheld"] for _, _, a in VISITS if "category_withheld" in a} == {
        "sedated", "not_adult", "falling", "scattered", "too_few", "low_pressure", "cuff"}


def test_above_the_gauge_is_at_least_180() -> None:
    body, told = visits("Mistral")[2]
    assert [r["beyond"] for r in body["sets"][0]["readings"] if "beyond" in r] == ["above_gauge"] * 2
    assert result_set(told)["bounds"] == {"at_least_mmhg": 180}
    assert told["advice"] == "enough"
    assert set(body["signs"]) == {"eye", "brain"}


def test_scattered_from_190_to_250_is_at_least_180_without_a_mean_to_place() -> None:
    body, told = visits("Bracken")[0]
    taken = [r["systolic_mmhg"] for r in body["sets"][0]["readings"]]
    assert 190 <= min(taken) and max(taken) == 250
    assert (result_set(told)["verdict"], result_set(told)["bounds"]) == ("scattered", {"at_least_mmhg": 180})


@pytest.mark.parametrize(("name", "count"), [("Pepperpot", 2), ("Pippin", 2), ("Fennel", 2)])
def test_under_a_year_gets_a_number_and_no_band(name: str, count: int) -> None:
    """Fennel turns one before the last visit, and then gets a band."""
    for body, told in visits(name)[:count]:
        assert body["age_months"] < 12
        assert told["category_withheld"] == "not_adult"
        assert result_set(told)["systolic"]["n"] >= 5
    assert all("category" in told for _, told in visits(name)[count:])


def test_an_irregular_beat_is_listened_to_and_averaged_over_many() -> None:
    for body, told in visits("Bramble"):
        assert {one["method"] for one in body["sets"]} == {"doppler"}
        assert 7 <= result_set(told)["systolic"]["n"] <= 10
        assert "irregular_rhythm" in keys(told)


def test_an_amputee_is_never_measured_where_nothing_is() -> None:
    missing = [site for site in patient("Ruffle")["sites_not_used"] if site["why"] == "missing"]
    assert missing and not any("until_day" in site for site in missing)
    used = {(one["site"], one["side"]) for body, _ in visits("Ruffle") for one in body["sets"]}
    assert not used & {(site["site"], site["side"]) for site in missing}


def test_barred_sites_ended_and_still_hold() -> None:
    ends = [site["until_day"] for animal in NAMES.values() for site in patient(animal).get("sites_not_used", []) if "until_day" in site]
    assert any(day < TODAY_DAY for day in ends) and any(day > TODAY_DAY + 7 for day in ends)


def test_a_round_dog_fits_no_cuff_of_the_small_bag() -> None:
    (first, _), (_, narrow), (_, fitting), (_, lower) = visits("Dumpling")
    assert first["outcome"]["why"] == "no_cuff"
    assert (result_set(narrow)["cuff"]["fit"], narrow["category_withheld"]) == ("poor", "cuff")
    assert {result_set(one)["cuff"]["fit"] for one in (fitting, lower)} == {"good"}


def test_low_pressure_is_never_minimal() -> None:
    body, told = visits("Sexton")[3]
    assert (told["category_withheld"], "category" in told, "weak" in body["signs"]) == ("low_pressure", False, True)


def test_a_calmed_cat_says_the_drug_and_its_hours() -> None:
    calmed = [(body, told) for body, told in visits("Burdock") if body["state"] == "calmed"]
    assert len(calmed) == 4
    for body, told in calmed:
        assert body["calming"] == {"drug_group": "gabapentinoid", "hours": body["calming"]["hours"]}
        assert "calmed" in keys(told)


def test_breeds_that_the_bands_fit_badly_are_there() -> None:
    assert {patient("Lattice")["breed"], patient("Gavotte")["breed"]} == {"sighthound", "wolfhound"}


def test_outcomes_without_a_series_are_respectable() -> None:
    found = Counter((body["outcome"]["kind"], body["outcome"]["why"]) for _, body, _ in VISITS if "outcome" in body)
    assert found.keys() >= {("not_today", "not_safe"), ("not_today", "breathing"), ("stopped", "bite_or_scratch")}
    for _, body, _ in VISITS:
        if body.get("outcome", {}).get("kind") == "not_today":
            assert not all(body["ready"].values()) or body["outcome"]["why"] == "no_cuff"
            assert all(not one["readings"] for one in body["sets"])


def test_a_machine_gives_codes_and_three_numbers_in_their_order() -> None:
    by_machine = [r for _, body, _ in VISITS for one in body["sets"] if one["method"] == "oscillometric" for r in one["readings"]]
    assert sum(r.get("set_aside") == "device_code" for r in by_machine) >= 5
    numbers = [(r["systolic_mmhg"], r["mean_mmhg"], r["diastolic_mmhg"]) for r in by_machine if "systolic_mmhg" in r]
    assert len(numbers) > 100
    assert all(systolic > mean > diastolic >= 50 for systolic, mean, diastolic in numbers)


def test_a_needle_gauge_is_read_at_its_marks_of_2() -> None:
    read = [r["systolic_mmhg"] for _, body, _ in VISITS for one in body["sets"] if one.get("gauge") == "aneroid"
            for r in one["readings"] if "systolic_mmhg" in r]
    assert len(read) > 800 and all(one % 2 == 0 for one in read)


def test_every_width_but_the_partners_lies_in_a_bag_and_nothing_is_said_of_its_make() -> None:
    carried = {cuff["width_mm"] for bag in BAGS for cuff in bag["cuffs"]}
    assert {one["cuff_width_mm"] for _, body, _ in VISITS for one in body["sets"] if one["readings"]} <= carried
    things = [thing for bag in BAGS for kind in ("gauges", "detectors", "machines") for thing in bag.get(kind, [])]
    assert 0 < sum("validated_in" in thing for thing in things) < len(things)


def test_no_chip_can_be_that_of_a_real_animal() -> None:
    chips = [one["text"] for name in NAMES.values() for one in patient(name).get("identifiers", []) if one["kind"] == "chip"]
    assert len(chips) == len(set(chips)) > 15
    assert all(len(one) == 15 and one.startswith("999") and int(one[3:]) < 2**38 for one in chips)
