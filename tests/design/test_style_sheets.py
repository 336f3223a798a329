"""Style sheets name no side of the screen, no colour and no sentence; what cannot read the tokens has the tokens' colours.

What they may not say, and why, stands in sheet_faults.py.
"""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from tests.architecture.tree import CLIENT_SOURCE, ROOT, client_files, ours, shown
from tests.design.sheet_faults import colours, physical, said
from tests.design.style_sheets import LOOKS, TOKENS, sheets, tokens

ALL = ours(CLIENT_SOURCE, ".css")
PUBLIC = ROOT / "client" / "public"


@pytest.mark.parametrize("file", ALL, ids=shown)
def test_sides_are_logical(file: Path) -> None:
    """No left, right, top, bottom, width or height, neither as a property nor as a value."""
    assert physical(file.read_text(encoding="utf-8")) == []


@pytest.mark.parametrize("file", sheets(), ids=shown)
def test_colours_are_tokens(file: Path) -> None:
    """No colour but by its token."""
    assert colours(file.read_text(encoding="utf-8")) == []


@pytest.mark.parametrize("file", ALL, ids=shown)
def test_sheets_say_nothing(file: Path) -> None:
    """Marks may be drawn by `content`, words may not."""
    assert said(file.read_text(encoding="utf-8")) == []


@pytest.mark.parametrize("file", client_files(), ids=shown)
def test_code_names_no_colour(file: Path) -> None:
    """Drawings and screens take their colours from the sheets."""
    text = file.read_text(encoding="utf-8")
    assert re.findall(r"[\"'`]#[0-9a-fA-F]{3,8}[\"'`;]", text) == []
    painted = re.findall(r"\b(?:fill|stroke|stopColor|color|background)(?:=|:\s*)[{\"']+([a-zA-Z#]\w*)", text)
    assert set(painted) - {"none", "currentColor"} == set()


def test_colours_outside_the_sheets_are_tokens() -> None:
    """The browser's bar, the start screen and the icons are shown before any sheet is read: their colours are tokens' all the same."""
    known = {colour for look in LOOKS for colour in tokens(look).values()}
    page = (ROOT / "client" / "index.html").read_text(encoding="utf-8")
    manifest = json.loads((PUBLIC / "manifest.webmanifest").read_text(encoding="utf-8"))
    day = tokens("day")["ground"]
    assert re.findall(r'name="theme-color" content="([^"]+)"', page) == [day]
    assert {manifest["theme_color"], manifest["background_color"]} == {day}
    drawn = {colour.lower() for icon in ours(PUBLIC, ".svg") for colour in re.findall(r"#[0-9a-fA-F]{3,8}", icon.read_text("utf-8"))}
    assert drawn - known == set()


def test_faults_are_seen() -> None:
    """Properties and values, with or without space; words that only contain the letters are none, nor is what media ask for."""
    sides = "a{left:0;margin-right : 1px}/* left: 0 */b{text-align: left; --left-key: 1; inline-size: 1px; float:right} c{max-width:1rem}"
    assert physical(sides) == ["left: 0", "margin-right: 1px", "text-align: left", "float: right", "max-width: 1rem"]
    assert physical("@media (max-width: 22rem) { a { inline-size: 100% } }") == []
    named = "a{color:red;background:var(--ground)} b{border:1px solid #123} c{box-shadow: inset 0 0 0 3px var(--ink)} d{color: rgb(0 0 0)}"
    assert colours(named) == ["color: red", "border: 1px solid #123", "color: rgb(0 0 0)"]
    assert said('a::before{content:"New"} b::before{content:"▲ " / ""}') == ['"New"']
    assert TOKENS in ALL
