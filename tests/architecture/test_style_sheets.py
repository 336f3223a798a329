"""Style sheets name no side of the screen: start and end, never left and right.

The same sheet has to serve a right-to-left language and the left-handed layout by turning a direction, not by a second copy.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tests.architecture.tree import CLIENT_SOURCE, ours, shown

_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
_PHYSICAL = re.compile(
    r"(?:^|[;{\s])((?:(?:margin|padding|border|inset|scroll-margin|scroll-padding)-)?(?:left|right)(?:-(?:width|style|color))?"
    r"|border-(?:top|bottom)-(?:left|right)-radius)\s*:|(?:text-align|float|clear)\s*:\s*(left|right)\b"
)


def physical_sides(text: str) -> list[str]:
    """Each declaration that names left or right."""
    return [first or second for first, second in _PHYSICAL.findall(_COMMENT.sub(" ", text))]


@pytest.mark.parametrize("file", ours(CLIENT_SOURCE, ".css"), ids=shown)
def test_sides_are_logical(file: Path) -> None:
    """No left or right in properties."""
    assert physical_sides(file.read_text(encoding="utf-8")) == []


def test_physical_sides_are_seen() -> None:
    """Properties and values, with or without space; words that only contain the letters are none."""
    text = "a{left:0;margin-right : 1px}/* left: 0 */b{text-align: left; --left-key: 1; background-position: 0 0; float:right}"
    assert physical_sides(text) == ["left", "margin-right", "left", "right"]
