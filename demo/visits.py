"""Makes each visit of the invented practice a whole measurement, in the shape of wire/measurement.1.json, with the one before it known.

Times hang on one day, the Monday of the week of playing in: an animal is always seen on the same weekday at about the same hour.
It must not work out a result itself: the rules do, in letters.py.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from random import Random
from typing import Any

from demo.animals import YES, Animal, Facts, Visit
from demo.made_readings import FIRST_AFTER_S, as_read, readings, settling, with_pulse
from quietcuff.contract.rule_documents import rule_set
from quietcuff.rules.assess import assess

RULES = "v1"
EPOCH = date(1970, 1, 1)
DAY_MS, MINUTE_MS = 86_400_000, 60_000
ZONE, OFFSET_MIN = "UTC", 0  # the clock of the invented practice knows no summer time
SLOT_MS = 25 * 60_000  # one animal after the other
FIRST_SLOT_MS = 8 * 3_600_000
SLOTS = 18
# weekday and demeanour where nothing else is told; quiet time in s as people allow for it there
PLACES: dict[str, dict[str, Any]] = {
    "home": {"weekdays": (0, 1, 3), "owner_present": True, "rest_s": (610, 900)},
    "shelter": {"weekdays": (5,), "owner_present": False, "rest_s": (300, 720)},
    "partner": {"weekdays": (2, 4), "owner_present": True, "rest_s": (360, 780)},
}


def monday_of(day: date) -> date:
    """The first day of its week."""
    return day - timedelta(days=day.weekday())


def began_ms(animal: Animal, weeks_ago: int, base: date, place: int) -> int:
    """When a visit began, ms UTC; `place` is the animal's in the list of all, and gives it its hour."""
    weekdays = PLACES[animal.where]["weekdays"]
    day = base + timedelta(days=weekdays[place % len(weekdays)] - 7 * weeks_ago)
    return (day - EPOCH).days * DAY_MS + FIRST_SLOT_MS + place % SLOTS * SLOT_MS


def born_on_day(animal: Animal, base: date) -> int | None:
    """Days since 1970-01-01, where its age is known; the twelfth of a month, since a shelter knows no more."""
    if animal.age_months is None:
        return None
    months = base.year * 12 + base.month - 1 - animal.age_months
    return (date(months // 12, months % 12 + 1, 12) - EPOCH).days


def measured(animal: Animal, place: int, base: date) -> Iterator[tuple[Visit, Facts, Facts]]:
    """Each visit, its measurement (without the patient's id) and the assessment of it."""
    before: tuple[Facts, Facts] | None = None
    for visit in animal.visits:
        body = _measurement(animal, visit, began_ms(animal, visit.weeks_ago, base, place), base)
        if before is not None:
            body["previous"] = _previous(*before, body["started_at_ms"])
        assessment = assess(body, rule_set(RULES))
        if any(one["readings"] for one in body["sets"]):
            before = (body, assessment)
        yield visit, body, assessment


def _measurement(animal: Animal, visit: Visit, started_at_ms: int, base: date) -> Facts:
    chance = Random(f"{animal.name}, {visit.weeks_ago} weeks ago")
    usual = PLACES[animal.where]
    facts = {
        "state": "awake", "rhythm": "regular", "demeanour": "calm", "rest_s": chance.randrange(*usual["rest_s"], 10),
        "place": animal.where, "owner_present": usual["owner_present"], "ready": YES, **animal.facts, **visit.facts,
    }
    pulse_bpm = facts.pop("pulse_bpm", None)
    body = {"started_at_ms": started_at_ms, "species": animal.patient["species"],
            **{name: value for name, value in facts.items() if value not in ([], None)}}
    age = _age_months(born_on_day(animal, base), started_at_ms)
    if age is not None:
        body["age_months"] = age
    if "rest_s" not in body:
        return body | {"sets": [{"method": animal.placed["method"], "readings": []}]}
    return body | {"sets": list(_sets(animal, visit, body["rest_s"] + FIRST_AFTER_S, pulse_bpm, chance))}


def _sets(animal: Animal, visit: Visit, first_s: int, pulse_bpm: int | None, chance: Random) -> Iterator[Facts]:
    placed = {**animal.placed, **visit.placed}
    told = visit.told or (as_read(settling(visit.level, chance), placed, chance) if visit.level else ())
    done = 0
    for where, series in ((placed, told), *visit.sets):
        made = readings(first_s, series, chance, done + 1)
        if pulse_bpm is not None and where["method"] == "oscillometric":
            made = with_pulse(made, pulse_bpm, chance)
        done += len(made)
        first_s = made[-1]["taken_s"] + 2 * FIRST_AFTER_S if made else first_s
        yield {**where, "readings": made}


def _age_months(born: int | None, at_ms: int) -> int | None:
    """Whole months, as a phone counts them."""
    if born is None:
        return None
    then, now = (EPOCH + timedelta(days=day) for day in (born, at_ms // DAY_MS))
    return (now.year - then.year) * 12 + now.month - then.month - (now.day < then.day)


def day_of(at_ms: int) -> int:
    """The practice's own calendar day of an instant, days since 1970-01-01: yesterday afternoon is not today, however few hours ago."""
    return (at_ms + OFFSET_MIN * MINUTE_MS) // DAY_MS


def _previous(body: Facts, assessment: Facts, now_ms: int) -> Facts:
    """What is known of the visit before, of the set its result speaks of."""
    at = assessment["result_set"]
    one = body["sets"][at]
    known = {
        **{name: one[name] for name in ("method", "site", "posture", "instrument") if name in one}, "place": body["place"],
        "days_ago": day_of(now_ms) - day_of(body["started_at_ms"]),
    }
    share = assessment["sets"][at].get("cuff", {}).get("share_permille")
    return known if share is None else {**known, "cuff_share_permille": share}
