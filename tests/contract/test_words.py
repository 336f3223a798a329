"""Sentences: every code of the checks has one, and a gap is seen. Every words file is read, those of the lazily loaded screens too."""

import ast
import inspect
import re
from collections import Counter
from pathlib import Path

import pytest
from fluent.syntax import FluentParser
from fluent.syntax.ast import Junk, Message

from quietcuff.contract import compile_schema, read_json, wire, words
from quietcuff.contract.shared_files import shared_folder
from tests.architecture.tree import CLIENT_SOURCE

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


WORD_FILES = sorted((shared_folder() / "words").glob("*.ftl"))


def entries(path: Path) -> list[object]:
    """What the parser of Fluent makes of a file, what it could not read included."""
    return list(FluentParser().parse(path.read_text(encoding="utf-8")).body)


def ids(path: Path) -> list[str]:
    """Ids of the sentences of a file, in order."""
    return [entry.id.name for entry in entries(path) if isinstance(entry, Message)]


def test_every_words_file_the_phone_loads_is_read_here() -> None:
    """All of them and no other: a file nobody loads would hold sentences nobody sees."""
    sources = [file.read_text(encoding="utf-8") for file in (CLIENT_SOURCE / "contract").glob("*.ts")]
    loaded = {name for source in sources for name in re.findall(r"words/(\w+\.ftl)\?raw", source)}
    assert loaded == {"en.ftl", "en_calm.ftl", "en_cuff.ftl", "en_guide.ftl", "en_help.ftl"}
    assert {path.name for path in WORD_FILES} == loaded


@pytest.mark.parametrize("path", WORD_FILES, ids=lambda path: path.name)
def test_every_line_of_a_words_file_is_a_sentence_or_a_comment(path: Path) -> None:
    assert [entry.content for entry in entries(path) if isinstance(entry, Junk)] == []
    assert len(ids(path)) > 0


@pytest.mark.parametrize("path", WORD_FILES, ids=lambda path: path.name)
def test_words_are_plain(path: Path) -> None:
    """None of the words that blame, plead or belong to machines; the four sync words are ours."""
    text = "\n".join(line for line in path.read_text(encoding="utf-8").splitlines() if not line.startswith("#"))
    assert re.findall(r"\b(?:please|invalid|sorry|oops|synced|session|sessions)\b", text, re.IGNORECASE) == []


def test_an_id_stands_in_one_file_and_once() -> None:
    every = [message_id for path in WORD_FILES for message_id in ids(path)]
    assert [message_id for message_id, n in Counter(every).items() if n > 1] == []


def test_a_guide_holds_no_figure_and_no_dose() -> None:
    """Its figures come from the rule documents; drugs and amounts are none of its business."""
    path = shared_folder() / "words" / "en_guide.ftl"
    sentences = [line for line in path.read_text(encoding="utf-8").splitlines() if line and not line.startswith("#")]
    values = [line.split(" = ", 1)[1] for line in sentences]
    assert [value for value in values if re.search(r"\d", value)] == []
    assert [value for value in values if re.search(r"\b(?:mg|ml|dose|tablet|inject\w*|sedat\w*)\b", value, re.IGNORECASE)] == []
