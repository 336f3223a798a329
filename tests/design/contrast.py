"""Contrast of two colours, and which pairs of ink and ground our style sheets can put together.

Formula: "relative luminance" and "contrast ratio" as defined in WCAG 2.2 (W3C Recommendation, 2023). Limits: 7:1 for text is its
1.4.6, 3:1 for outlines and drawings its 1.4.11; 10:1 for what is read at arm's length is the project's own.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from tests.design.style_sheets import Rule, variables

TEXT, READ_AT_ARMS_LENGTH, DRAWN = 7.0, 10.0, 3.0
# what a screen, a card and a training screen stand on: ink without a ground of its own may lie on each of them
GROUNDS = ("ground", "raised", "training-ground")
# readings, digits, keys, risk phrase, and what is typed
STRONG = re.compile(r"\.(value|key|phrase|unkept-text|mean-line|verdict|pad-field|series text|band text)\b")
_DRAWN_BY = re.compile(r"^(border(-.+)?|outline(-color)?|box-shadow|stroke|fill|text-decoration-color|caret-color|accent-color)$")
_COLOURED = re.compile(r"^(color|background(-color)?|border(-.+)?|outline(-color)?|box-shadow|stroke|fill|text-decoration-color)$")
NO_COLOURS = {"stroke", "weight", "drawn", "gap", "edge", "target", "key", "face"}


def luminance(colour: str) -> float:
    """Relative luminance of `#rrggbb`, 0 for black to 1 for white."""
    shares = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = [share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4 for share in shares]
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """1 for the same colour to 21 for black and white."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


@dataclass(frozen=True, order=True)
class Pair:
    """Two tokens that can meet on the screen, and how far apart they must be."""

    ink: str
    ground: str
    least: float


def colour_names(rule: Rule) -> set[str]:
    """Every colour token this rule uses."""
    used = {name for key, value in rule.declarations if _COLOURED.match(key) for name in variables(value)}
    return used - NO_COLOURS


def pairs(rules: Iterable[Rule]) -> set[Pair]:
    """Every pair these rules can put on the screen. In training `ground` is the other ground, wherever a rule names it."""
    found = {pair for rule in rules for pair in (*_of_text(rule), *_of_drawing(rule))}
    swapped = {"ground": "training-ground"}
    return found | {Pair(swapped.get(pair.ink, pair.ink), swapped.get(pair.ground, pair.ground), pair.least) for pair in found}


def _of_text(rule: Rule) -> Iterator[Pair]:
    """Text by `color`, or by `fill` inside a drawing. Without a ground of its own it may stand on each ground of a page."""
    is_drawn = re.search(r"\btext\b", rule.selector) is not None
    inks = variables(rule.value("fill" if is_drawn else "color") or "")
    grounds = [name for name in variables(rule.value("background", "background-color") or "") if name not in NO_COLOURS]
    for ink in inks or (["ink"] if grounds and set(grounds) <= set(GROUNDS) else []):
        for ground in grounds or GROUNDS:
            is_key_in_accent = ink == "on-act"
            yield Pair(ink, ground, READ_AT_ARMS_LENGTH if STRONG.search(rule.selector) or is_key_in_accent else TEXT)
    if grounds and not inks and not set(grounds) <= set(GROUNDS):
        yield from (Pair("ink", ground, TEXT) for ground in grounds)


def _of_drawing(rule: Rule) -> Iterator[Pair]:
    """Outlines, strokes and filled shapes against each ground of a page; a shape filled with a ground carries no meaning by it."""
    if re.search(r"\btext\b", rule.selector):
        return
    used = {name for key, value in rule.declarations if _DRAWN_BY.match(key) for name in variables(value)}
    for name in used - NO_COLOURS - set(GROUNDS):
        yield from (Pair(name, ground, DRAWN) for ground in GROUNDS)


def too_close(wanted: Iterable[Pair], colours: dict[str, str]) -> list[str]:
    """The pairs that are nearer than they must be, each with its ratio."""
    found = [(pair, contrast(colours[pair.ink], colours[pair.ground])) for pair in sorted(wanted)]
    return [f"{pair.ink} on {pair.ground}: {ratio:.2f}, not {pair.least:g}" for pair, ratio in found if ratio < pair.least]
