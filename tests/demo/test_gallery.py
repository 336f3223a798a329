"""The gallery's own parts, without a browser: names that are files of their own, the page, and a small picture read back.

That every place is reached is tried by the walk of tests/design, which has most of the places in common.
"""

from __future__ import annotations

import struct
import zlib
from collections import Counter
from html.parser import HTMLParser

import numpy as np

from demo.gallery.palette import _png, _reduced
from demo.gallery.side_by_side import Shown, page_of
from demo.gallery.take import HERE, PLACES, README


class Pictures(HTMLParser):
    """The pictures and the anchors of a page."""

    def __init__(self) -> None:
        super().__init__()
        self.seen: list[str] = []
        self.ids: list[str] = []
        self.links: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        known = dict(attrs)
        if tag == "img":
            assert known.get("alt")
            self.seen.append(str(known["src"]))
        self.ids += [known["id"]] if known.get("id") else []
        self.links += [str(known["href"])] if tag == "a" else []


def test_each_place_has_a_picture_of_its_own() -> None:
    """Two places of one name would write over each other's file."""
    twice = [name for name, count in Counter(place.name for place in PLACES).items() if count > 1]
    assert twice == []
    assert all(place.name.replace("-", "").isalnum() and place.name.islower() for place in PLACES)
    assert set(README) <= {place.name for place in PLACES}


def test_the_page_shows_each_look_once_and_says_what_is_missing() -> None:
    page = Pictures()
    text = page_of([Shown("round", 1480), Shown("bag", 0, "<no> bag")], ("day", "dim"), 740)
    page.feed(text)
    assert page.seen == ["round-day.png", "round-dim.png"]
    assert page.ids == ["round", "bag"] and page.links == ["#round", "#bag"]
    assert "1480 px, 2.0 screens" in text
    assert "Not reached: &lt;no&gt; bag" in text


def test_a_small_picture_keeps_its_shape_and_its_frequent_colours() -> None:
    """PNG (W3C, third edition): signature, IHDR with colour type 3, PLTE, IDAT of filtered lines; each checksum over type and data."""
    pixels = np.array([[10, 10, 10]] * 6 + [[200, 0, 0]] * 5 + [[12, 10, 10]], np.uint8)  # the last stands beside the first
    palette, places = _reduced(pixels, 2)
    assert palette.tolist() == [[10, 10, 10], [200, 0, 0]]
    made = _png(4, 3, palette, places.reshape(3, 4))
    assert made[:8] == b"\x89PNG\r\n\x1a\n"
    found, at = {}, 8
    while at < len(made):
        (length,) = struct.unpack(">I", made[at : at + 4])
        kind, data = made[at + 4 : at + 8], made[at + 8 : at + 8 + length]
        assert struct.unpack(">I", made[at + 8 + length : at + 12 + length])[0] == zlib.crc32(kind + data)
        found[kind], at = data, at + 12 + length
    assert struct.unpack(">IIBBBBB", found[b"IHDR"]) == (4, 3, 8, 3, 0, 0, 0)
    assert zlib.decompress(found[b"IDAT"]) == bytes([0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 0, 1, 1, 1, 0])


def test_the_pictures_of_readme_are_small_and_of_a_phone() -> None:
    """Each at most 60 kB, 360 × 740 at two dots a pixel."""
    for name in README.values():
        picture = (HERE / f"{name}.png").read_bytes()
        assert len(picture) <= 60_000
        assert struct.unpack(">II", picture[16:24]) == (720, 1480)
