"""Random measurements, valid and hostile: the two engines answer exactly the same, errors included.

50,000 in the default run; `QUIETCUFF_AGREEMENT=1000000 python3 -m tests tests/both_engines/test_random_agreement.py -s`
for a long one, `QUIETCUFF_SEED` for another series. A campaign that misses a verdict or a caution fails.
"""

from __future__ import annotations

import json
import os
from collections import Counter
from concurrent.futures import ThreadPoolExecutor
from random import Random
from typing import Any

from quietcuff.contract.read_json import read_json
from quietcuff.contract.rule_documents import rule_set
from tests.both_engines.hostile import spoiled
from tests.both_engines.measurements import measurement
from tests.both_engines.phone_engine import PhoneEngine
from tests.both_engines.server_engine import answer

SIZE = int(os.environ.get("QUIETCUFF_AGREEMENT", "50000"))
SEED = int(os.environ.get("QUIETCUFF_SEED", "20180101"))
BATCH = 2000
HOSTILE_SHARE = 0.3
OUTCOMES = {
    "verdict": ("steady", "too_few", "falling", "scattered"),
    "category": ("minimal", "low", "moderate", "high"),
    "withheld": ("sedated", "not_adult", "too_few", "falling", "scattered", "low_pressure", "height", "cuff"),
    "advice": ("enough", "stop_today", "go_on", "second_look"),
    "firmness": ("not_placed", "with_care", "firm"),
    "leaning": ("high", "low", "either"),
    "caution": tuple(rule_set()["documents"]["cautions"]["choices"]["weight"]),
}


def test_engines_agree_on_random_measurements(phone: PhoneEngine) -> None:
    """No difference in SIZE measurements, and every outcome was reached."""
    random, seen = Random(SEED), Counter()
    with ThreadPoolExecutor(1) as beside:
        for start in range(0, SIZE, BATCH):
            texts = [json.dumps(_one(random)) for _ in range(min(BATCH, SIZE - start))]
            theirs = beside.submit(phone.answer_lines, [f'{{"do":"assess","measurement":{text}}}' for text in texts])
            ours = [answer({"do": "assess", "measurement": read_json(text)}) for text in texts]
            for text, mine, line in zip(texts, ours, theirs.result(), strict=True):
                assert same(mine, json.loads(line)), f"seed {SEED}: {text}\nserver {mine}\nphone  {line.decode()}"
                _count(seen, mine)
    _report(seen)
    missed = [(kind, word) for kind, words in OUTCOMES.items() for word in words if not seen[kind, word]]
    assert missed == [], "the campaign did not reach these"
    assert seen["valid"] > SIZE * 0.5 and seen["invalid"] > SIZE * 0.1
    assert not [key for key in seen if key[0] == "error" and key[1].startswith("engine")]


def test_engines_agree_on_random_bags(phone: PhoneEngine) -> None:
    """The choice among the widths of a bag: 5,000 bags, every fit reached, and no fit at all."""
    random, seen = Random(SEED), Counter()
    calls = [_bag(random) for _ in range(5000)]
    for call, theirs in zip(calls, phone.answers(calls), strict=True):
        mine = answer(call)
        assert same(mine, theirs), f"{call}\nserver {mine}\nphone  {theirs}"
        seen[mine.get("fit", "no_fit"), mine.get("expect")] += 1
    reached = {("good", None), ("no_fit", None), ("usable", "reads_high"), ("usable", "reads_low")}
    assert set(seen) == reached and min(seen.values()) > 50


def _bag(random: Random) -> dict[str, Any]:
    limb_mm = random.choice((50, 80, 100, 125, 200, 500, 676, 679, random.randint(1, 1000)))
    limits_mm = [limb_mm * permille // 1000 for permille in (250, 300, 350, 400, 450, 500)]
    near_mm = [max(1, limit_mm + random.choice((-1, 0, 0, 1))) for limit_mm in limits_mm]
    bag_mm = random.choices([*near_mm, 20, 30, 40, 50, 60, 500], k=random.choice((1, 2, 2, 3, 7)))
    return {"do": "cuff", "species": random.choice(("dog", "cat")), "limb_circumference_mm": limb_mm, "bag_mm": bag_mm}


def same(mine: Any, theirs: Any) -> bool:
    """Equal to the letter but for the order of keys: 140, 140.0 and true are three things."""
    return json.dumps(mine, sort_keys=True) == json.dumps(theirs, sort_keys=True)


def _one(random: Random) -> Any:
    found = measurement(random)
    return spoiled(random, found) if random.random() < HOSTILE_SHARE else found


def _count(seen: Counter[Any], given: dict[str, Any]) -> None:
    seen["invalid" if "error" in given else "valid"] += 1
    if "error" in given:
        seen["error", given["error"]["why"]] += 1
        return
    result = given["sets"][given["result_set"]]
    seen["verdict", result["verdict"]] += 1
    seen["category", given.get("category")] += 1
    seen["withheld", given.get("category_withheld")] += 1
    seen["advice", given.get("advice")] += 1
    seen["firmness", given["firmness"]] += 1
    seen["leaning", given.get("leaning")] += 1
    for caution in given.get("cautions", ()):
        seen["caution", caution["key"]] += 1


def _report(seen: Counter[Any]) -> None:
    print(f"\nseed {SEED}: {seen['valid']} valid, {seen['invalid']} invalid")
    for kind in (*OUTCOMES, "error"):
        found = sorted(((key[1] or "none", n) for key, n in seen.items() if key[0] == kind), key=lambda pair: -pair[1])
        print(f"  {kind}: " + ", ".join(f"{word} {n}" for word, n in found))


def test_one_digit_is_a_difference() -> None:
    """The comparison sees one digit, one type and one key."""
    base = {"a": [1], "b": "x"}
    assert same(base, {"b": "x", "a": [1]})
    others = ({"a": [2], "b": "x"}, {"a": [True], "b": "x"}, {"a": [1.0], "b": "x"}, {"a": [1]})
    assert not any(same(base, other) for other in others)
