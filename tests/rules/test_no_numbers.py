"""No engine file carries a number of a rule document: only numbers of pure arithmetic may stand in the source.

Without this, a figure could be changed in its document and change nothing.
"""

import ast
from pathlib import Path

import pytest

import quietcuff.rules

# 400 = 20², for a square root in half-tenths; 10, 100 and 1000 turn units into each other.
ARITHMETIC = {0, 1, 2, 10, 100, 400, 1000}
FILES = sorted(Path(quietcuff.rules.__file__).parent.glob("*.py"))


def numbers_of(source: str) -> set[object]:
    """Every number written in a Python source; True and False are no numbers."""
    constants = [node.value for node in ast.walk(ast.parse(source)) if isinstance(node, ast.Constant)]
    return {value for value in constants if isinstance(value, (int, float, complex)) and not isinstance(value, bool)}


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_only_numbers_of_arithmetic(file: Path) -> None:
    found = numbers_of(file.read_text(encoding="utf-8"))
    assert found <= ARITHMETIC
    assert not any(isinstance(number, float) for number in found)


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_no_floating_arithmetic(file: Path) -> None:
    """`/`, `**`, `round`, `float` and `pow` would bring in what the phone cannot repeat to the last digit."""
    for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
        assert not isinstance(node, (ast.Div, ast.Pow))
        assert not (isinstance(node, ast.Name) and node.id in {"round", "float", "pow", "divmod"})


def test_a_planted_number_is_seen() -> None:
    assert numbers_of("limit = 140 if x > 1 else -0.5") == {140, 1, 0.5}
