"""The page that shows every picture of the gallery, the looks side by side. Plain HTML in one string; it loads nothing but the pictures."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from html import escape

STYLE = """body { font: 1rem/1.5 system-ui, sans-serif; margin: 1rem; background: #fff; color: #111; }
.looks { display: flex; gap: 1rem; align-items: start; flex-wrap: wrap; } img { inline-size: 22.5rem; border: 1px solid #777; }
figure { margin: 0; } nav { columns: 16rem; }"""


@dataclass(frozen=True)
class Shown:
    """A place as it was taken: its height in CSS px, or why there is no picture."""

    name: str
    tall_px: int
    trouble: str = ""


def page_of(shown: Sequence[Shown], looks: Sequence[str], screen_px: int) -> str:
    """The whole page, in the order of the walk."""
    links = "\n".join(f'<li><a href="#{escape(one.name)}">{escape(one.name)}</a></li>' for one in shown)
    places = "\n".join(_place(one, looks, screen_px) for one in shown)
    return (f'<!doctype html>\n<html lang="en"><meta charset="utf-8"><title>quietcuff, every screen</title>\n<style>{STYLE}</style>\n'
            f"<h1>Every screen in each look</h1>\n<nav><ul>\n{links}\n</ul></nav>\n{places}\n</html>\n")


def _place(one: Shown, looks: Sequence[str], screen_px: int) -> str:
    name = escape(one.name)
    if one.trouble:
        return f'<h2 id="{name}">{name}</h2>\n<p>Not reached: {escape(one.trouble)}</p>'
    pictures = "\n".join(
        f'<figure><img loading="lazy" src="{name}-{look}.png" alt="{name}, {look}"><figcaption>{look}</figcaption></figure>' for look in looks)
    return (f'<h2 id="{name}">{name}</h2>\n<p>{one.tall_px} px, {one.tall_px / screen_px:.1f} screens</p>\n'
            f'<div class="looks">\n{pictures}\n</div>')
