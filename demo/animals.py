"""Invented animals and visits; any likeness is chance. Only in the demo: no test takes its truth from here.

The figures are plausible ones, chosen so that each verdict of the rules is seen at least once. It must not hold a result.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date
from typing import Any

EPOCH = date(1970, 1, 1)


@dataclass(frozen=True)
class Visit:
    """One visit: when it began (UTC) and what was measured, in the shape of wire/measurement.1.json."""

    began: str
    measured: dict[str, Any]

    @property
    def last_reading_s(self) -> int:
        """Seconds from the beginning to the last reading."""
        return max(reading["taken_s"] for one in self.measured["sets"] for reading in one["readings"])


@dataclass(frozen=True)
class Animal:
    """An animal, in the shape of wire/patient.1.json, and its visits."""

    patient: dict[str, Any]
    visits: list[Visit] = field(default_factory=list)


def day(year: int, month: int, of_month: int) -> int:
    """Days since 1970-01-01."""
    return (date(year, month, of_month) - EPOCH).days


def series(first_s: int, every_s: int, *taken: int | tuple[int, int, int] | dict[str, Any]) -> list[dict[str, Any]]:
    """Readings in even steps: a systolic, (systolic, mean, diastolic), or a reading of its own making."""
    readings = []
    for place, one in enumerate(taken):
        known: dict[str, Any] = {"id": f"r{place + 1}", "taken_s": first_s + place * every_s}
        if isinstance(one, dict):
            known |= one
        elif isinstance(one, tuple):
            known |= dict(zip(("systolic_mmhg", "mean_mmhg", "diastolic_mmhg"), one, strict=True))
        else:
            known["systolic_mmhg"] = one
        readings.append(known)
    return readings


def doppler(site: str, circumference_mm: int, width_mm: int, readings: list[dict[str, Any]], **more: Any) -> dict[str, Any]:
    """One placing of the cuff, measured by Doppler with an aneroid gauge."""
    return {"method": "doppler", "gauge": "aneroid", "site": site, "side": "left", "limb_circumference_mm": circumference_mm,
            "cuff_width_mm": width_mm, "readings": readings, **more}


def machine(site: str, circumference_mm: int, width_mm: int, readings: list[dict[str, Any]], **more: Any) -> dict[str, Any]:
    """One placing of the cuff, measured by an oscillometric machine."""
    return {"method": "oscillometric", "site": site, "limb_circumference_mm": circumference_mm, "cuff_width_mm": width_mm,
            "instrument": "machine, grey case", "readings": readings, **more}


AT_HOME = {"state": "awake", "rhythm": "regular", "place": "home", "owner_present": True}
AT_SHELTER = {"state": "awake", "rhythm": "regular", "place": "shelter", "owner_present": False}
BEFORE = {"method": "doppler", "site": "forearm", "posture": "sternal", "place": "home"}

ANIMALS = [
    Animal(
        {"species": "cat", "name": "Marrow", "mark": "grey tabby, notch in the left ear", "born_on_day": day(2011, 5, 20),
         "sex": "male_neutered", "breed": "domestic shorthair"},
        [
            Visit("2025-03-03T09:10", {**AT_HOME, "demeanour": "calm", "rest_s": 660, "treatment": "none", "signs": ["eye"],
                  "sets": [doppler("forearm", 80, 28, series(700, 40, 208, 202, 198, 200, 204, 200, 198), posture="sternal",
                                   restraint="lap")]}),
            Visit("2025-03-10T09:05", {**AT_HOME, "demeanour": "calm", "rest_s": 720, "treatment": "started",
                  "previous": {**BEFORE, "days_ago": 7},
                  "sets": [doppler("forearm", 80, 28, series(760, 45, 176, 172, 168, 170, 172, 168, 170), posture="sternal",
                                   restraint="lap")]}),
            Visit("2025-04-07T09:20", {**AT_HOME, "demeanour": "sleepy", "rest_s": 900, "treatment": "changed",
                  "previous": {**BEFORE, "days_ago": 28},
                  "sets": [doppler("forearm", 81, 28, series(930, 40, 152, 148, 146, 150, 148, 146, 148), posture="sternal",
                                   restraint="lap")]}),
        ],
    ),
    Animal(
        {"species": "dog", "name": "Juniper", "mark": "brown, white chest", "born_on_day": day(2016, 2, 11),
         "sex": "female_neutered", "breed": "mixed"},
        [
            Visit("2025-03-03T11:00", {**AT_HOME, "demeanour": "calm", "rest_s": 420, "treatment": "none",
                  "sets": [machine("tail_base", 110, 45, series(450, 60, (151, 110, 84), (142, 104, 80), (138, 101, 78),
                                   (140, 103, 79), (144, 105, 81), (141, 103, 80), (139, 102, 78)), posture="lateral",
                                   restraint="held")]}),
            Visit("2025-04-14T10:40", {**AT_HOME, "demeanour": "calm", "rest_s": 480, "treatment": "unchanged",
                  "previous": {"method": "oscillometric", "site": "tail_base", "posture": "lateral", "place": "home", "days_ago": 42},
                  "sets": [machine("tail_base", 110, 45, series(500, 60, (140, 100, 77), (133, 97, 74), (131, 95, 72),
                                   (134, 97, 75), (130, 94, 72), (132, 96, 73)), posture="lateral", restraint="held")]}),
        ],
    ),
    Animal(
        {"species": "cat", "name": "Sorrel", "mark": "kennel 4, ginger", "sex": "female"},
        [
            # came straight from the cage: the values are still coming down
            Visit("2025-03-08T08:30", {**AT_SHELTER, "demeanour": "tense", "rest_s": 200, "circumstances": ["waited_near_dogs"],
                  "sets": [doppler("forearm", 76, 28, series(220, 35, 190, 184, 176, 168, 160, 154, 148), posture="sternal",
                                   restraint="towel")]}),
        ],
    ),
    Animal(
        {"species": "dog", "name": "Fennel", "mark": "kennel 9, tan, long legs", "born_on_day": day(2024, 10, 5), "sex": "male"},
        [
            # not a year old: a number, and no risk category
            Visit("2025-03-08T09:15", {**AT_SHELTER, "demeanour": "calm", "rest_s": 360,
                  "sets": [doppler("above_hock", 120, 50, series(380, 40, 128, 120, 118, 120, 122, 120), posture="lateral",
                                   restraint="held")]}),
        ],
    ),
    Animal(
        {"species": "cat", "name": "Quill", "mark": "black, one white foot", "born_on_day": day(2014, 7, 1),
         "sex": "female_neutered"},
        [
            # one reading far from the others and no agreement yet
            Visit("2025-03-17T14:00", {**AT_HOME, "demeanour": "tense", "rest_s": 640, "sets": [
                doppler("forearm", 84, 30, series(660, 40, 158, 150, 146, {"systolic_mmhg": 210}, 152, 148, 150),
                        posture="in_lap", restraint="lap")]}),
            # measured again: one reading set aside by hand, the others agree
            Visit("2025-03-31T14:10", {**AT_HOME, "demeanour": "calm", "rest_s": 700, "previous": {**BEFORE, "posture": "in_lap", "days_ago": 14},
                  "sets": [doppler("forearm", 84, 30, series(720, 40, 150, 144, {"systolic_mmhg": 176, "set_aside": "moved"},
                                   142, 146, 144, 142, 144), posture="in_lap", restraint="lap")]}),
        ],
    ),
    Animal(
        {"species": "dog", "name": "Bramble", "mark": "large, brindle", "born_on_day": day(2015, 9, 30), "sex": "male_neutered",
         "breed": "sighthound cross"},
        [
            # an irregular beat: more readings, averaged without the test of agreement
            Visit("2025-04-02T16:30", {**AT_HOME, "rhythm": "irregular", "demeanour": "calm", "rest_s": 600, "treatment": "unchanged",
                  "sets": [doppler("forearm", 190, 80, series(620, 45, 150, 138, 146, 134, 150, 142, 138, 144, 136),
                                   posture="lateral", restraint="held")]}),
        ],
    ),
]
