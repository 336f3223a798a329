"""How the invented practice is written down: animals with what is usual for each, and visits with what was different that day.

The tables stand in demo/practice; whole weeks and days are told backwards from the day the demo is played in. Any likeness is chance,
and no test takes its truth from here. It must not hold a result.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

Facts = dict[str, Any]
# a systolic; (systolic, mean, diastolic); a number set aside and why; or a word of `beyond`
Told = int | tuple[int, int, int] | tuple[int, str] | str


@dataclass(frozen=True)
class Visit:
    """One visit. `level` is the systolic the animal settles to that day, in mmHg; `told` gives the readings one by one instead.

    `facts` go to the measurement, `placed` to its set, both in the words of wire/measurement.1.json; `sets` are further placings.
    """

    weeks_ago: int
    level: int = 0
    told: tuple[Told, ...] = ()
    facts: Facts = field(default_factory=dict)
    placed: Facts = field(default_factory=dict)
    sets: tuple[tuple[Facts, tuple[Told, ...]], ...] = ()


@dataclass(frozen=True)
class Later:
    """What was written anew about an animal later on, and why."""

    weeks_ago: int
    patient: Facts
    reason: str


@dataclass(frozen=True)
class Animal:
    """An animal, in the words of wire/patient.1.json, how it is usually measured, and its visits, oldest first.

    `age_months` is its age on the day of playing in. In `sites_not_used`, `until_days` counts from that day and becomes `until_day`.
    """

    patient: Facts
    where: str
    placed: Facts
    visits: tuple[Visit, ...]
    age_months: int | None = None
    facts: Facts = field(default_factory=dict)
    later: tuple[Later, ...] = ()

    @property
    def name(self) -> str:
        """What it is called; no two are called alike."""
        return str(self.patient["name"])


def on(weeks_ago: int, level: int = 0, *told: Told, placed: Facts | None = None, sets: tuple[Any, ...] = (), **facts: Any) -> Visit:
    """A visit in one line of a table."""
    return Visit(weeks_ago, level, told, facts, placed or {}, sets)


def doppler(site: str, limb_mm: int, cuff_mm: int, **more: Any) -> Facts:
    """A cuff listened to with a probe and read on the needle gauge of the large bag."""
    return {"method": "doppler", "gauge": "aneroid", "instrument": "probe, taped cable", "site": site, "side": "left",
            "limb_circumference_mm": limb_mm, "cuff_width_mm": cuff_mm, **more}


def machine(site: str, limb_mm: int, cuff_mm: int, **more: Any) -> Facts:
    """A cuff read by the machine of the large bag."""
    side = {} if site == "tail_base" else {"side": "left"}
    return {"method": "oscillometric", "instrument": "machine, grey case", "site": site, **side,
            "limb_circumference_mm": limb_mm, "cuff_width_mm": cuff_mm, **more}


def chip(number: int) -> Facts:
    """A microchip's number in the form of ISO 11784, with 999: that standard's code for tests, which no animal's chip may carry."""
    return {"kind": "chip", "text": f"999{number:012d}"}


def kennel(name: str) -> Facts:
    """Where it is kept."""
    return {"kind": "kennel", "text": name}


def drug(group: str, hours: int | None = None) -> Facts:
    """A drug on board, with the hours since it was given where they are known."""
    return {"group": group} if hours is None else {"group": group, "hours": hours}


def not_today(weeks_ago: int, why: str, note: str, **ready: bool) -> Visit:
    """A visit that ended before any quiet time began or a cuff went on."""
    return on(weeks_ago, ready=ready, outcome={"kind": "not_today", "why": why, "note": note}, rest_s=None, demeanour=None)


YES = {"breathing_easy": True, "awake": True, "no_pain": True, "safe_to_handle": True}
