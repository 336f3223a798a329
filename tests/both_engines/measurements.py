"""Measurements by chance: valid ones that sit on and near the limits, and hostile ones that should be refused.

The same seed gives the same measurements on every machine. It must not know what either engine answers.
"""

from __future__ import annotations

from random import Random
from typing import Any

from tests.both_engines.wire_words import words_at

EDGES_MMHG = (20, 80, 100, 140, 160, 180, 200, 240, 300)
REST_S = (0, 299, 300, 301, 599, 600, 601, 900, 3600)
HEIGHTS_MM = (0, 0, 0, 49, 50, 51, 100, 101, 125, 126, 250, 400)
NOISES_MMHG = (0, 1, 2, 2, 4, 8, 15, 30, 60)


def measurement(random: Random) -> dict[str, Any]:
    """One measurement that passes the check."""
    found: dict[str, Any] = {"species": random.choice(("dog", "cat"))}
    _maybe(random, found, 0.3, "age_months", lambda: random.choice((0, 3, 11, 12, 13, 60, 600)))
    _maybe(random, found, 0.2, "state", lambda: random.choice(("awake", "calmed", "sedated")))
    _maybe(random, found, 0.2, "rhythm", lambda: random.choice(("regular", "irregular")))
    _maybe(random, found, 0.7, "demeanour", lambda: random.choice(words_at("demeanour")))
    _maybe(random, found, 0.8, "rest_s", lambda: random.choice(REST_S))
    _maybe(random, found, 0.3, "place", lambda: random.choice(words_at("place")))
    _maybe(random, found, 0.1, "signs", lambda: random.sample(words_at("signs", "[]"), 2))
    _maybe(random, found, 0.3, "previous", lambda: _previous(random))
    number = random.choice((1,) * 16 + (2, 2, 2, 3, 6))
    found["sets"] = [_set(random, found["species"], index) for index in range(number)]
    return found


def _maybe(random: Random, into: dict[str, Any], chance: float, key: str, value: Any) -> None:
    if random.random() < chance:
        into[key] = value()


def _previous(random: Random) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for key in ("method", "site", "posture", "place"):
        _maybe(random, found, 0.4, key, lambda key=key: random.choice(words_at("previous", key)))
    shares = (0, 349, 350, 351, 399, 400, 401, 450, 451)
    _maybe(random, found, 0.4, "cuff_share_permille", lambda: random.choice(shares))
    _maybe(random, found, 0.3, "instrument", lambda: random.choice(("d1", "Gerät β", "💓")))
    _maybe(random, found, 0.3, "days_ago", lambda: random.randint(0, 400))
    return found


def _set(random: Random, species: str, index: int) -> dict[str, Any]:
    method = random.choice(words_at("sets", "[]", "method"))
    found: dict[str, Any] = {"method": method}
    for key in ("gauge", "site", "side", "posture", "restraint"):
        _maybe(random, found, 0.5, key, lambda key=key: random.choice(words_at("sets", "[]", key)))
    _maybe(random, found, 0.3, "instrument", lambda: random.choice(("d1", "d2", "Gerät β")))
    limb_mm = random.choice((69, 70, 80, 100, 130, 143, 160, 200, 1000, random.randint(1, 1000)))
    _maybe(random, found, 0.9, "limb_circumference_mm", lambda: limb_mm)
    _maybe(random, found, 0.9, "cuff_width_mm", lambda: _width_mm(random, species, limb_mm))
    _maybe(random, found, 0.4, "cuff_above_heart_mm", lambda: random.choice((-1, 1)) * random.choice(HEIGHTS_MM))
    found["readings"] = _readings(random, method, index)
    return found


def _width_mm(random: Random, species: str, limb_mm: int) -> int:
    """Near a limit of the fit, mostly on the good side."""
    permille = random.choice((250, 300, 350, 350, 400, 400, 400, 450, 500, random.randint(200, 600)))
    return max(1, min(500, limb_mm * permille // 1000 + random.choice((-1, 0, 0, 0, 1))))


def _readings(random: Random, method: str, index: int) -> list[dict[str, Any]]:
    few, many = (0, 1, 2, 3, 4, 5, 5), (10, 11, 12, 14, 14, random.choice((14, 40)))
    number = random.choice((*few, *(6, 6, 7, 7, 8, 8, 9) * 4, *many))
    centre = random.choice(EDGES_MMHG) + random.choice((-5, -2, -1, 0, 0, 1, 2, 5))
    noise, drift = random.choice(NOISES_MMHG), random.choice((0, 0, 0, 0, -1, -2, 1, 2, -6, 4))
    clock, step_s = random.choice((0, 0, 600)), random.choice((None, None, 5, 10, 20, 29, 30, 31, 60, 599, 600))
    plain = random.random() < 0.5
    found = []
    for place in range(number):
        reading: dict[str, Any] = {"id": f"{index}-{place}"}
        if step_s is not None and random.random() < 0.95:
            reading["taken_s"] = clock
        clock += (step_s or 0) + random.choice((0, 0, 0, 0, 1, -1, 600)) if clock else (step_s or 0)
        systolic = centre + random.randint(-noise, noise) + drift * place
        found.append(reading | _what_was_read(random, method, max(0, min(999, systolic)), plain))
    return found


def _what_was_read(random: Random, method: str, systolic: int, plain: bool) -> dict[str, Any]:
    """Numbers or an attempt without one, now and then set aside; plain series have few of either."""
    found: dict[str, Any] = {}
    _maybe(random, found, 0.03 if plain else 0.15, "set_aside", lambda: random.choice(_SET_ASIDE))
    if random.random() < (0.01 if plain else 0.12):
        return found | {"beyond": random.choice(words_at("sets", "[]", "readings", "[]", "beyond"))}
    found["systolic_mmhg"] = systolic if random.random() < 0.99 else random.choice((0, 19, 20, 300, 301, 999))
    if method == "oscillometric" or random.random() < 0.05:
        below = random.choice((1, 10, 20, 30, 60, 0 if not plain else 15))
        _maybe(random, found, 0.8, "mean_mmhg", lambda: max(0, systolic - below))
        _maybe(random, found, 0.8, "diastolic_mmhg", lambda: max(0, systolic - below - random.choice((1, 10, 30, 60))))
    _maybe(random, found, 0.3, "pulse_bpm", lambda: random.randint(60, 260))
    if "pulse_bpm" in found and random.random() < 0.5:
        found["palpated_bpm"] = max(0, found["pulse_bpm"] + random.choice((0, 5, -10, 10, -11, 11, 20, -21, 40)))
    return found


_SET_ASIDE = words_at("sets", "[]", "readings", "[]", "set_aside")
