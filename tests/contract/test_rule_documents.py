"""Rule documents: the released ones are in shape, and each way of leaving the shape is refused.

The structure is checked a second time by the general reference library `jsonschema` against rule.schema.json.
"""

import copy
from collections.abc import Callable
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from quietcuff.contract.rule_documents import RuleDocumentError, check_rule_document, leaves, rule_set
from quietcuff.contract.shared_files import read_shared_json

V1 = rule_set("v1")["documents"]
SHAPE = Draft202012Validator(read_shared_json("rule.schema.json"))


def test_version_one_holds_rules_one_to_eight() -> None:
    assert rule_set()["name"] == "v1"
    named_by_the_text = {"cuff", "standing", "agreement", "averaging", "bounds", "height", "category", "cautions"}
    assert set(V1) >= named_by_the_text
    assert rule_set("v1") is rule_set("v1")


@pytest.mark.parametrize("rule", sorted(V1))
def test_every_document_is_in_shape(rule: str) -> None:
    Draft202012Validator.check_schema(SHAPE.schema)
    assert list(SHAPE.iter_errors(V1[rule])) == []
    check_rule_document(rule, V1[rule])


@pytest.mark.parametrize("name", ["v2", "v01", "../wire", "", "v1/"])
def test_unknown_rule_sets(name: str) -> None:
    with pytest.raises(KeyError):
        rule_set(name)


def test_leaves_are_single_numbers_and_words() -> None:
    found = leaves(V1["cuff"])
    assert found["/numbers/good_permille/dog/1"] == 450
    assert found["/choices/of_equal_fit"] == "larger_unless_near_smaller"
    assert all(isinstance(leaf, (int, str)) for leaf in found.values())


def change(*steps: str, to: Any) -> Callable[[dict[str, Any]], None]:
    """A planted fault: the value at these steps of a document becomes `to`."""

    def plant(document: dict[str, Any]) -> None:
        for step in steps[:-1]:
            document = document[step]
        document[steps[-1]] = to

    return plant


def drop(*steps: str) -> Callable[[dict[str, Any]], None]:
    """A planted fault: what is at these steps is gone."""

    def plant(document: dict[str, Any]) -> None:
        for step in steps[:-1]:
            document = document[step]
        del document[steps[-1]]

    return plant


PUBLISHED = "/numbers/target_permille"
# Faults that a schema sees as well.
OF_STRUCTURE = [
    change("formula", to="target = 0.4 * circumference"),
    drop("sources"),
    drop("may_change"),
    change("numbers", to=[]),
    change("numbers", to={}),
    change("numbers", "target_permille", "dog", to=400.5),
    change("numbers", "target_permille", "dog", to="400"),
    change("numbers", "target_permille", "dog", to=True),
    change("numbers", "target_permille", "dog", to=None),
    change("numbers", "target_permille", to={}),
    change("numbers", "good_permille", "dog", to=[]),
    change("numbers", "good_permille", "dog", to=[350, [450]]),
    change("choices", "of_equal_fit", to=1),
    change("choices", "of_equal_fit", to="x > 3"),
    change("choices", "of_equal_fit", to={}),
    change("may_change", "/numbers/target_permille/dog", to=[380]),
    change("may_change", "/numbers/target_permille/dog", to=[380, 420.5]),
    change("may_change", "/choices/of_equal_fit", to=[1, 2]),
    change("sources", PUBLISHED, "kind", to="hearsay"),
    change("sources", PUBLISHED, "read", to="yes"),
    drop("sources", PUBLISHED, "read"),
    drop("sources", PUBLISHED, "why"),
    change("sources", PUBLISHED, "why", to=""),
    change("sources", PUBLISHED, "page", to=3),
    change("sources", "/numbers/good_permille", "read", to=True),
]
# Faults that only the reader of the documents sees.
OF_MEANING = [
    change("rule", to="cuffs"),
    drop("sources", PUBLISHED),
    drop("sources", "/choices/of_equal_fit"),
    change("numbers", "brand_new", to=3),
    change("sources", "/numbers/nothing_here", to={"kind": "project", "why": "a source of nothing"}),
    change("may_change", "/numbers/target_permille/cow", to=[1, 2]),
    change("may_change", "/numbers/target_permille", to=[1, 2]),
    change("may_change", "/numbers/target_permille/dog", to=[401, 420]),
    change("may_change", "/numbers/target_permille/dog", to=[380, 399]),
]


@pytest.mark.parametrize("plant", OF_STRUCTURE + OF_MEANING)
def test_planted_faults_are_refused(plant: Callable[[dict[str, Any]], None]) -> None:
    document = copy.deepcopy(V1["cuff"])
    plant(document)
    with pytest.raises(RuleDocumentError, match="rule document cuff"):
        check_rule_document("cuff", document)


@pytest.mark.parametrize("plant", OF_STRUCTURE)
def test_the_schema_sees_the_faults_of_structure_too(plant: Callable[[dict[str, Any]], None]) -> None:
    document = copy.deepcopy(V1["cuff"])
    plant(document)
    assert not SHAPE.is_valid(document)


@pytest.mark.parametrize("document", [None, [], "cuff", {}])
def test_what_is_no_document_is_refused(document: Any) -> None:
    with pytest.raises(RuleDocumentError):
        check_rule_document("cuff", document)


def test_a_source_of_a_whole_branch_covers_its_leaves() -> None:
    document = copy.deepcopy(V1["cuff"])
    ours = {"kind": "project", "why": "all of these are ours"}
    document["sources"] = {"/numbers": ours, "/choices": ours}
    check_rule_document("cuff", document)
