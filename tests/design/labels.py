"""Every label there is: the short messages of the word files, the icons and drawings, the colour tokens and the coded shapes.

A label is what stands on a control, a heading, a state or a category: at most six words and no end of a sentence. It must not judge
where one comes from; that stands in origins.json.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tests.architecture.tree import CLIENT_SOURCE, SHARED
from tests.design.style_sheets import tokens

WORDS = SHARED / "words"
MOST_WORDS = 6
SHAPES = ("counts", "not", "mean", "interval", "edge", "reach", "here", "off", "dashed", "verdict-shape", "found-mark")
_MESSAGE = re.compile(r"^([a-z][\w-]*) = *(.*(?:\n[ }].*)*)", re.MULTILINE)
_VARIANT = re.compile(r"^\s*\*?\[[\w-]+\]\s*(.*)$", re.MULTILINE)
_PLACEABLE = re.compile(r"\{[^{}]*\}")
# a state or a category is a label however many words it takes
ALWAYS = re.compile(r"^(category|firmness|withheld|verdict|leaning|beyond|sync)-")
# what only commands, wire checks and problem answers say: no screen has it as a label
NOT_ON_A_SCREEN = re.compile(r"^(why|error)-")


def messages() -> Iterator[tuple[str, str]]:
    """Id and text of each message of each word file."""
    for file in sorted(WORDS.glob("*.ftl")):
        yield from _MESSAGE.findall(file.read_text(encoding="utf-8"))


def is_label(text: str) -> bool:
    """Short, and in none of its variants a sentence."""
    variants = _VARIANT.findall(text) or [text]
    plain = [_PLACEABLE.sub(" ", variant).strip() for variant in variants]
    return all(len(one.split()) <= MOST_WORDS and not re.search(r"[.!…]$", one) for one in plain) and any(
        re.search(r"[^\W\d_]", one) for one in plain)


def labels() -> set[str]:
    """Ids of the messages that are labels."""
    return {name for name, text in messages() if (is_label(text) or ALWAYS.match(name)) and not NOT_ON_A_SCREEN.match(name)}


def icons() -> set[str]:
    """Names of the icons, and each file of drawings; the icon of the app as well."""
    names = (CLIENT_SOURCE / "parts" / "drawings" / "icons.tsx").read_text(encoding="utf-8").split("const LINES", 1)[1]
    drawn = {file.stem for file in (CLIENT_SOURCE / "parts" / "drawings").glob("*.tsx")} - {"drawing", "icons"}
    icon = {f"icon {name}" for name in re.findall(r"^  (\w+):", names, re.MULTILINE)}
    return icon | {f"drawing {name}" for name in drawn} | {"icon of the app"}


def colours() -> set[str]:
    """Colour tokens; a look gives each its own value."""
    return set(tokens("day"))


def shapes() -> set[str]:
    """Shapes that say a state: each class or mark a sheet draws for one, by its name in the sheets."""
    sheets = " ".join(file.read_text(encoding="utf-8") for file in sorted((CLIENT_SOURCE / "look").glob("*.css")))
    marks = {f"mark {mark}" for mark in re.findall(r'content: "([^\w\s"]+) ?"', sheets)}
    drawn = {f"class {name}" for name in SHAPES if re.search(rf"\.{name}\b", sheets)}
    return marks | drawn
