"""Files of at most 300 lines and functions of at most 50: what a reader can hold in the head at once.

A longer one is two things under one name. The limit counts every line, comments and docstrings too.
"""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

from tests.architecture.tree import ROOT, client_files, ours, python_files, shown
from tests.architecture.typescript_text import code_only, function_lengths

FILE_LINES = 300
FUNCTION_LINES = 50
OTHER_SOURCES = [*ours(ROOT / "client", ".mjs", ".css"), *ours(ROOT / "tests", ".ts", ".mjs")]
PYTHON = python_files()
TYPESCRIPT = [*client_files(), *ours(ROOT / "tests", ".ts", ".tsx")]


def python_function_lengths(text: str) -> list[tuple[int, int]]:
    """(line, number of lines) of each function, nested ones too."""
    return [
        (node.lineno, (node.end_lineno or node.lineno) - node.lineno + 1)
        for node in ast.walk(ast.parse(text))
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)
    ]


@pytest.mark.parametrize("file", [*PYTHON, *client_files(), *OTHER_SOURCES], ids=shown)
def test_file_is_short(file: Path) -> None:
    """No file of more than 300 lines."""
    lines = len(file.read_text(encoding="utf-8").splitlines())
    assert lines <= FILE_LINES


@pytest.mark.parametrize("file", PYTHON, ids=shown)
def test_python_functions_are_short(file: Path) -> None:
    """No function of more than 50 lines."""
    lengths = python_function_lengths(file.read_text(encoding="utf-8"))
    assert [found for found in lengths if found[1] > FUNCTION_LINES] == []


@pytest.mark.parametrize("file", TYPESCRIPT, ids=shown)
def test_typescript_functions_are_short(file: Path) -> None:
    """No function of more than 50 lines, found by their indentation."""
    lengths = function_lengths(code_only(file.read_text(encoding="utf-8")))
    assert [found for found in lengths if found[1] > FUNCTION_LINES] == []


def test_functions_are_seen() -> None:
    """The reader of TypeScript finds functions, methods and arrows, with their length, and no `if`."""
    text = (
        "export function a(x: number): number {\n  if (x) {\n    return 1;\n  }\n  return 2;\n}\n"
        "const b = (x: number) => {\n  return x;\n};\n"
        "call(\n  x,\n);\n"
        "class C {\n  async d(\n    x: number,\n  ): Promise<void> {\n    x;\n  }\n  e(x: string): void {\n    x;\n  }\n}\n"
    )
    assert list(function_lengths(text)) == [(1, 6), (7, 3), (14, 5), (19, 3)]
