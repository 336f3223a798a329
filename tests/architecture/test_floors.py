"""Who may import whom on the server. The layers are stated in pyproject.toml and read by import-linter; the rest is here.

Imports go downward only: a rule that could see the database, or a record that could see HTTP, would be tested and read
together with it for ever.
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from tests.architecture.tree import PACKAGE, ROOT, ours, python_files, python_imports, shown

# What arithmetic on whole numbers needs. No clock, no chance, no file, no environment: the phone has to agree to the digit.
PURE_MODULES = {"__future__", "collections", "dataclasses", "enum", "functools", "itertools", "math", "operator", "typing"}
# An application object to bind to, and no more of Flask, is what flask_sqlalchemy asks of the record.
FLASK_BELOW_WEB = {"Flask", "current_app", "has_app_context"}
WEB_LIBRARIES = ("flask", "werkzeug")


def outside(module: str) -> str:
    """The distribution a module belongs to."""
    return module.split(".")[0]


def test_layers_hold() -> None:
    """web → sync → record → (contract | rules), independent of each other; contracts in pyproject.toml."""
    linter = Path(sys.executable).with_name("lint-imports")
    done = subprocess.run([linter, "--no-cache"], cwd=ROOT, capture_output=True, text=True, check=False, timeout=60)
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.mark.parametrize("file", ours(PACKAGE / "rules", ".py"), ids=shown)
def test_rules_import_only_arithmetic(file: Path) -> None:
    """The rules import the pure part of the standard library and themselves."""
    strangers = [
        f"{shown(file)}:{line} {module}"
        for line, module, _ in python_imports(file)
        if outside(module) not in PURE_MODULES and not module.startswith("quietcuff.rules")
    ]
    assert strangers == []


def test_only_web_and_app_speak_http() -> None:
    """Below `web` nothing of Flask is imported but the application object, and nothing of Werkzeug."""
    offences = [
        f"{shown(file)}:{line} {module} {names}"
        for file in ours(PACKAGE, ".py")
        if file.name != "app.py" and PACKAGE / "web" not in file.parents
        for line, module, names in python_imports(file)
        if outside(module) in WEB_LIBRARIES and not (module == "flask" and set(names) <= FLASK_BELOW_WEB)
    ]
    assert offences == []


def test_nothing_imports_tests_or_demo() -> None:
    """What is delivered does not lean on what tries it; the demo may not lean on the tests either."""
    offences = [
        f"{shown(file)}:{line} {module}"
        for file in python_files()
        for line, module, _ in python_imports(file)
        if (outside(module) == "tests" and "tests" not in file.parts[len(ROOT.parts) :])
        or (outside(module) == "demo" and file.is_relative_to(ROOT / "server"))
    ]
    assert offences == []
