"""One law above all: a rule has one name, and it is the same in four places. And the top of the house is fixed.

So a newcomer finds anything in one guess. A rule that stands in three places is not yet one; a fifth file has no rule.
"""

from __future__ import annotations

import json

from tests.architecture.tree import CLIENT_SOURCE, PACKAGE, ROOT, SHARED, client_files, ours, python_files, shown

TOP_LEVEL = {"README.md", "DEVELOPERS.md", "pyproject.toml", "server", "client", "shared_schemas", "tests", "demo"}
# Files of the engines that are no rule: the order of the rules, their arithmetic, one set on its way through them, and in
# TypeScript the shapes of what goes in and out, the look-up of a choice, and the gaps that two cautions read.
NO_RULE_PYTHON = {"__init__", "assess", "whole_numbers", "judged_set"}
NO_RULE_TYPESCRIPT = {"assess", "whole_numbers", "judged_set", "assessment", "choices", "documents", "measurement", "gaps"}
NO_RULE_VECTORS = {"assess"}  # whole measurements, through all rules at once
WORDS_THAT_SAY_NOTHING = {"manager", "handler", "service", "helper", "helpers", "util", "utils", "core", "common", "misc"}


def stems(files: list) -> set[str]:
    """File names without their endings."""
    return {file.name.split(".")[0] for file in files}


def test_each_rule_has_its_name_in_four_places() -> None:
    """Document, Python, TypeScript, vectors: the same names, none missing, none more."""
    rules = stems(list((SHARED / "rules" / "v1").glob("*.json")))
    assert rules, "there are no rule documents"
    assert stems(ours(PACKAGE / "rules", ".py")) - NO_RULE_PYTHON == rules
    assert stems(ours(CLIENT_SOURCE / "rules", ".ts")) - NO_RULE_TYPESCRIPT == rules
    assert stems(ours(ROOT / "tests" / "vectors" / "v1", ".json")) - NO_RULE_VECTORS == rules


def test_a_rule_document_carries_its_own_name() -> None:
    """The key `rule` says what the file is called."""
    for file in (SHARED / "rules" / "v1").glob("*.json"):
        assert json.loads(file.read_text(encoding="utf-8"))["rule"] == file.stem, shown(file)


def test_the_top_level_is_fixed() -> None:
    """Nothing else lies at the top but dotfiles."""
    there = {path.name for path in ROOT.iterdir() if not path.name.startswith(".") and path.name != "__pycache__"}
    assert there == TOP_LEVEL


def test_no_file_is_named_after_nothing() -> None:
    """A file is named for what it answers, never for being useful."""
    named = {shown(file): set(file.name.lower().replace("-", "_").split(".")[0].split("_"))
             for file in [*python_files(), *client_files()]}
    assert [name for name, words in named.items() if words & WORDS_THAT_SAY_NOTHING] == []


def test_no_index_file_re_exports() -> None:
    """No barrels: they pull everything in and hide where a thing is. A package's __init__ imports nothing either."""
    barrels = [shown(file) for file in client_files() if file.stem == "index"]
    packages = [shown(file) for file in ours(PACKAGE, "__init__.py") if "import " in _code(file.read_text(encoding="utf-8"))]
    assert barrels + packages == []


def _code(text: str) -> str:
    """The text after a leading docstring."""
    return text.split('"""', 2)[-1]
