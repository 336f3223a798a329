"""The client's style sheets as rules: selector and declarations. It reads our own plain sheets, and is no parser of all CSS.

Nested at-rules are opened and their inner rules read like any other. It must not know what a colour is for.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from tests.architecture.tree import CLIENT_SOURCE, ours

TOKENS = CLIENT_SOURCE / "look" / "tokens.css"
LOOKS = ("day", "dim", "outdoor")
_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
_RULE = re.compile(r"([^{};]+)\{([^{}]*)\}")
_DECLARATION = re.compile(r"\s*([\w-]+)\s*:\s*([^;]+?)\s*(?:;|$)", re.DOTALL)
_VARIABLE = re.compile(r"var\(\s*--([\w-]+)")


@dataclass(frozen=True)
class Rule:
    """One rule of one sheet."""

    sheet: str
    selector: str
    declarations: tuple[tuple[str, str], ...]

    def value(self, *names: str) -> str | None:
        """What the last declaration of one of these properties says."""
        found = [value for name, value in self.declarations if name in names]
        return found[-1] if found else None


def sheets() -> list[Path]:
    """Every style sheet but the one of the tokens."""
    return [file for file in ours(CLIENT_SOURCE, ".css") if file != TOKENS]


def rules(text: str, sheet: str = "") -> Iterator[Rule]:
    """Each rule of a sheet, in order."""
    for selector, body in _RULE.findall(_COMMENT.sub(" ", text)):
        yield Rule(sheet, " ".join(selector.split()), tuple(_DECLARATION.findall(body)))


def all_rules() -> list[Rule]:
    """Each rule of each sheet but the tokens."""
    return [rule for file in sheets() for rule in rules(file.read_text(encoding="utf-8"), file.name)]


def variables(value: str) -> list[str]:
    """The names in `var(--name)`, in order."""
    return _VARIABLE.findall(value)


def tokens(look: str, text: str | None = None) -> dict[str, str]:
    """Colour tokens of one look: name without dashes → `#rrggbb`."""
    source = TOKENS.read_text(encoding="utf-8") if text is None else text
    found: dict[str, str] = {}
    for rule in rules(source):
        if f'data-look="{look}"' in rule.selector:
            found |= {name[2:]: value for name, value in rule.declarations if value.startswith("#")}
    return found
