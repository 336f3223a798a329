"""The whole computation: the only file that knows the order of the rules.

Answers one assessment for one measurement that already passed the contract check. Must never look at a date, a clock
or a file, nor raise for a poor measurement: what is wrong with it is part of the answer.
"""

from collections.abc import Mapping, Sequence
from typing import Any

from quietcuff.rules.agreement import advice_without_window, agreement, wants_second_look
from quietcuff.rules.averaging import averages
from quietcuff.rules.bounds import bounds, decides, usable_for_bounds
from quietcuff.rules.category import category, firmness, result_set
from quietcuff.rules.cautions import cautions, leaning
from quietcuff.rules.cuff import cuff_in_set
from quietcuff.rules.height import height
from quietcuff.rules.judged_set import JudgedSet
from quietcuff.rules.standing import ELIGIBLE, Reading, final_standings, standings

Documents = Mapping[str, Mapping[str, Any]]


def assess(measurement: Mapping[str, Any], rules: Mapping[str, Any]) -> dict[str, Any]:
    """Assess a measurement by a rule set `{"name": "v1", "documents": {"cuff": {…}, …}}`.

    The measurement is in the shape of wire/measurement.1.json, reading ids unique, numbers or `beyond` in each.
    What does not apply is absent from the answer. A word under `choices` that this engine does not know raises
    KeyError: a document from a newer build must not be half understood; one whose bounds could never decide raises
    ValueError (see `bounds.decides`). Source: shared_schemas/rules/README.md.
    """
    documents = rules["documents"]
    judged_sets = [_judge(measurement, given, documents) for given in measurement["sets"]]
    index = result_set(judged_sets)
    result = judged_sets[index]
    placed = category(measurement, result, documents["category"])
    found = cautions(measurement, result, documents["cautions"])
    leans = leaning(found)
    return _present(
        rules=rules["name"],
        sets=[judged.shown for judged in judged_sets],
        result_set=index,
        **placed,
        cautions=found,
        leaning=leans,
        firmness=firmness(placed, has_headline_caution=leans is not None),
        advice=_advice(measurement, result, "category" in placed, documents["agreement"]),
    )


def _judge(measurement: Mapping[str, Any], given: Mapping[str, Any], documents: Documents) -> JudgedSet:
    """Rules 1 to 6 on one set."""
    readings = given["readings"]
    standing = standings(readings, documents["standing"])
    agreed = agreement(readings, standing, measurement.get("rhythm", "regular"), documents["agreement"])
    eligible = [reading for reading, word in zip(readings, standing, strict=True) if word == ELIGIBLE]
    averaged = agreed.window or eligible
    systolic_sum = sum(reading["systolic_mmhg"] for reading in averaged)
    bounded = None if agreed.window else bounds(readings, standing, documents["bounds"])
    species, above_heart_mm = measurement["species"], given.get("cuff_above_heart_mm", 0)
    shown = _present(
        cuff=cuff_in_set(species, given, documents["cuff"]),
        readings=_shown_readings(readings, final_standings(standing, len(agreed.window))),
        verdict=agreed.verdict,
        readings_needed=agreed.readings_needed or None,
        suspects=agreed.suspects,
        **averages(averaged, bool(agreed.window), documents["averaging"]),
        bounds=bounded,
        height=height(species, above_heart_mm, systolic_sum, len(averaged), documents["height"]),
    )
    return JudgedSet(
        given=given,
        eligible=eligible,
        window=agreed.window,
        averaged=averaged,
        systolic_sum=systolic_sum,
        verdict=agreed.verdict,
        bounds_decide=decides(bounded, documents["bounds"]),
        above_gauge_and_eligible=len(usable_for_bounds(readings, standing)),
        shown=shown,
    )


def _shown_readings(readings: Sequence[Reading], standing: Sequence[str]) -> list[dict[str, str]]:
    return [{"id": reading["id"], "standing": word} for reading, word in zip(readings, standing, strict=True)]


def _advice(
    measurement: Mapping[str, Any], result: JudgedSet, has_category: bool, agreement_document: Mapping[str, Any]
) -> str | None:
    """What to do now, of the result set; None when there is nothing to say."""
    if not result.window:
        return advice_without_window(result.bounds_decide, result.above_gauge_and_eligible, agreement_document)
    if has_category and wants_second_look(
        result.eligible, result.systolic_sum, result.systolic_n, measurement.get("rest_s"), agreement_document
    ):
        return "second_look"
    return None


def _present(**facts: Any) -> dict[str, Any]:
    """Leave out what is None or an empty list or object; 0 is a fact."""
    return {name: fact for name, fact in facts.items() if fact is not None and fact != [] and fact != {}}
