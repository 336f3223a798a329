"""Sentences: every code of the checks has one, and a gap is seen."""

import ast
import inspect

import pytest

from quietcuff.contract import compile_schema, read_json, wire, words

CHECKS = {
    "not_an_object", "not_a_list", "not_text", "not_a_whole_number", "not_true_or_false", "unknown_key", "missing",
    "too_few_items", "too_many_items", "too_short", "too_long", "wrong_form", "not_in_list", "below_minimum",
    "above_maximum", "id_twice", "numbers_and_beyond", "neither_numbers_nor_beyond",
}  # fmt: skip
READER = {"not_utf8", "not_json", "key_twice", "not_finite", "too_deep", "lone_surrogate"}


def texts(module: object) -> set[str]:
    """Every text that stands in a module's source."""
    tree = ast.parse(inspect.getsource(module))
    return {node.value for node in ast.walk(tree) if isinstance(node, ast.Constant) and isinstance(node.value, str)}


def test_these_are_the_codes_the_modules_use() -> None:
    assert texts(compile_schema) | texts(wire) >= CHECKS
    raised = {
        node.args[0].value
        for node in ast.walk(ast.parse(inspect.getsource(read_json)))
        if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "Unreadable"
    }
    assert raised == READER


@pytest.mark.parametrize("code", sorted(CHECKS | {"unreadable_" + code for code in READER}))
def test_every_code_has_a_sentence(code: str) -> None:
    sentence = words.say("why-" + code.replace("_", "-"))
    assert sentence.endswith((".", "?"))
    assert "_" not in sentence


def test_facts_are_filled_in_without_invisible_marks() -> None:
    assert words.say("why-line", path="/rest_s", reason="too long.") == "/rest_s: too long."


def test_a_gap_raises_here_and_is_visible_in_production(monkeypatch: pytest.MonkeyPatch) -> None:
    with pytest.raises(words.MissingWords):
        words.say("no-such-sentence")
    with pytest.raises(words.MissingWords):
        words.say("why-line", path="/rest_s")
    monkeypatch.setattr(words, "is_strict", False)
    assert words.say("no-such-sentence") == "[no-such-sentence]"
    assert words.say("why-line", path="/rest_s").startswith("/rest_s: ")
