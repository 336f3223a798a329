"""Every pair of ink and ground that the style sheets can put together is far enough apart, in all three looks.

The pairs are derived from the sheets themselves, so that a new rule is held to the limits without being listed anywhere.
"""

from __future__ import annotations

import pytest

from tests.design.contrast import (
    GROUNDS, NO_COLOURS, READ_AT_ARMS_LENGTH, Pair, colour_names, contrast, luminance, pairs, too_close,
)
from tests.design.style_sheets import LOOKS, TOKENS, all_rules, rules, tokens

# what stands at arm's length always, whichever rule draws it: ink on each ground, and the accent's own ink on the accent
ALWAYS = {*(Pair("ink", ground, READ_AT_ARMS_LENGTH) for ground in GROUNDS), Pair("on-act", "act-ground", READ_AT_ARMS_LENGTH)}


# 21: black and white, as WCAG 2.2 says. The pure colours need no power: red (1 + 0.05) / (0.2126 + 0.05) = 3.998, green
# 1.05 / 0.7652 = 1.372, blue 1.05 / 0.1222 = 8.592. Below the bend: 10 / 255 / 12.92 = 0.003035, 1.05 / 0.053035 = 19.798. On the
# curve: 188 / 255 = 0.737255, ((0.737255 + 0.055) / 1.055) ^ 2.4 = 0.750953 ^ 2.4 = 0.502886, 1.05 / 0.552886 = 1.899.
@pytest.mark.parametrize(("colour", "on_white"), [
    ("#000000", 21), ("#ff0000", 3.998), ("#00ff00", 1.372), ("#0000ff", 8.592), ("#0a0a0a", 19.798), ("#bcbcbc", 1.899),
    ("#ffffff", 1)])
def test_formula(colour: str, on_white: float) -> None:
    """Worked by hand, to a thousandth; the order of the two does not matter."""
    assert contrast(colour, "#ffffff") == pytest.approx(on_white, abs=0.0006)
    assert contrast("#ffffff", colour) == contrast(colour, "#ffffff")


@pytest.mark.parametrize("look", LOOKS)
def test_pairs_are_far_enough_apart(look: str) -> None:
    """Text 7:1, readings, digits, keys and phrase 10:1, outlines and drawings 3:1."""
    assert too_close(pairs(all_rules()) | ALWAYS, tokens(look)) == []


@pytest.mark.parametrize("look", LOOKS)
def test_each_look_names_the_same_colours(look: str) -> None:
    """A colour missing from one look would silently be another look's."""
    assert set(tokens(look)) == set(tokens("day"))


def test_colours_used_are_colours_named() -> None:
    """Every token used is defined, every token defined stands in a pair: none is on the screen without being worked out."""
    used = {name for rule in all_rules() for name in colour_names(rule)}
    in_pairs = {name for pair in pairs(all_rules()) | ALWAYS for name in (pair.ink, pair.ground)}
    assert used - set(tokens("day")) == set()
    assert (used | set(tokens("day"))) - in_pairs == set()


def test_other_tokens_are_no_colours() -> None:
    """What the check leaves out of its pairs are lengths, weights and a face, never a colour."""
    declared = [pair for rule in rules(TOKENS.read_text(encoding="utf-8")) for pair in rule.declarations]
    assert [name for name, value in declared if name[2:] in NO_COLOURS and ("#" in value or "var(" in value)] == []


def test_nothing_thins_a_colour() -> None:
    """No half-transparent or mixed colour: its contrast would not be the pair's. Wholly invisible is allowed."""
    thin = [(rule.selector, value) for rule in all_rules() for name, value in rule.declarations
            if (name in {"opacity", "fill-opacity", "stroke-opacity"} and value != "0") or "color-mix" in value or name == "filter"]
    assert thin == []


def test_dim_look_has_no_bright_ground() -> None:
    """In a dim room nothing large shines: each ground of the dim look is darker than a twentieth of white."""
    dim = tokens("dim")
    assert {name: luminance(dim[name]) for name in (*GROUNDS, "act-ground") if luminance(dim[name]) > 0.05} == {}


def test_a_weak_pair_is_seen() -> None:
    """Text in the colour of lines, a key in quiet ink, a faint outline and a ground without an ink that stands on it."""
    sheet = ".a{color:var(--line)} .key{color:var(--quiet)} .b{border:1px solid var(--raised2)} .c{background:var(--act-ground)}"
    found = too_close(pairs(rules(sheet)), {**tokens("day"), "raised2": "#fffdf7"})
    assert [line.split(":")[0] for line in found] == [
        "ink on act-ground", "line on ground", "line on raised", "line on training-ground", "quiet on ground", "quiet on raised",
        "quiet on training-ground", "raised2 on ground", "raised2 on raised", "raised2 on training-ground"]
