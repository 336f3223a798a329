"""Makes the readings of a visit: a series that settles, as animals do, on a needle gauge in steps of 2 mmHg, or a machine's three numbers.

Chance comes from a seed that is the animal's name and the visit, so the same visit has the same readings every time. It must not
know a rule: which readings count is for the engines to say.
"""

from __future__ import annotations

from random import Random
from typing import Any

from demo.animals import Facts, Told

FIRST_AFTER_S = 40  # from the end of the quiet time to the first reading
LEAST_GAP_S, MOST_GAP_S = 36, 66
STEP_MMHG = 2  # marks of a needle gauge
# how far above its level an animal begins, and comes down to it
DOWN_PERMILLE = ((55, 95), (20, 40), (8, 16))
AROUND_MMHG = (-4, -2, 0, 2, 4)  # a settled animal, beat to beat, by probe; a machine strays twice as far
DIASTOLIC_PERMILLE = (560, 610)  # of the systolic
MEAN_SHARE_PERMILLE = (360, 420)  # of the way from diastolic to systolic
PULSE_AROUND_BPM = 5


def settling(level_mmhg: int, chance: Random) -> list[int]:
    """Seven systolics, or eight: two or three on the way down, then around the level and no longer falling."""
    around = list(AROUND_MMHG)
    chance.shuffle(around)
    if sum(around[:2]) > sum(around[-2:]):
        around.reverse()
    down = DOWN_PERMILLE[: chance.choice((2, 2, 3))]
    starts = [level_mmhg * chance.randint(*share) // 1000 for share in down]
    return [level_mmhg + above for above in (*starts, *around)]


def readings(first_s: int, told: tuple[Told, ...], chance: Random, first_id: int = 1) -> list[Facts]:
    """The readings told one by one, at times as a hand takes them."""
    taken_s, made = first_s, []
    for place, one in enumerate(told):
        made.append({"id": f"r{first_id + place}", "taken_s": taken_s, **_as_facts(one)})
        taken_s += chance.randint(LEAST_GAP_S, MOST_GAP_S)
    return made


def as_read(systolics: list[int], placed: Facts, chance: Random) -> tuple[Told, ...]:
    """What the gauge or the machine of this placing shows of them."""
    if placed["method"] == "oscillometric":
        level = sorted(systolics)[len(systolics) // 2]
        return tuple(_triplet(2 * one - level, chance) for one in systolics)
    if placed.get("gauge") == "digital":
        return tuple(systolics)
    return tuple(round(one / STEP_MMHG) * STEP_MMHG for one in systolics)


def _triplet(systolic: int, chance: Random) -> tuple[int, int, int]:
    diastolic = systolic * chance.randint(*DIASTOLIC_PERMILLE) // 1000
    mean = diastolic + (systolic - diastolic) * chance.randint(*MEAN_SHARE_PERMILLE) // 1000
    return systolic, mean, diastolic


def with_pulse(made: list[Facts], pulse_bpm: int, chance: Random) -> list[Facts]:
    """The machine's pulse beside each of its numbers."""
    beats = (pulse_bpm + chance.randint(-PULSE_AROUND_BPM, PULSE_AROUND_BPM) for _ in made)
    return [one if "beyond" in one else {**one, "pulse_bpm": bpm} for one, bpm in zip(made, beats, strict=True)]


def _as_facts(one: Told) -> dict[str, Any]:
    match one:
        case int():
            return {"systolic_mmhg": one}
        case str():
            return {"beyond": one}
        case int() | str() as told, str() as why:
            return {**_as_facts(told), "set_aside": why}
        case systolic, mean, diastolic:
            return {"systolic_mmhg": systolic, "mean_mmhg": mean, "diastolic_mmhg": diastolic}
    raise ValueError(one)
