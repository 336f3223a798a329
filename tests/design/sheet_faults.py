"""What a style sheet of ours may not say: a side or an axis of the screen, and a colour that is not a token.

The same sheet has to serve a right-to-left language, an upright script and the left-handed layout, so it speaks of start and end,
inline and block. A colour outside tokens.css would be in no look and in no pair that was worked out.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tests.design.style_sheets import Rule, rules

_SIDES = "left|right|top|bottom"
_PHYSICAL_PROPERTY = re.compile(
    rf"^((?:(?:margin|padding|border|inset|scroll-margin|scroll-padding)-)?(?:{_SIDES})(?:-(?:width|style|color))?"
    rf"|border-(?:top|bottom)-(?:left|right)-radius|(?:min-|max-)?(?:width|height)|(?:overflow|overscroll-behavior)-[xy]"
    rf"|contain-intrinsic-(?:width|height))$"
)
_SIDE_IN_VALUE = re.compile(rf"\b(?:{_SIDES})\b")
_VALUES_OF_SIDES = {"text-align", "text-align-last", "float", "clear", "justify-content", "justify-items", "justify-self",
                    "caption-side", "transform-origin", "background-position", "object-position"}
_COLOURED = re.compile(r"^(color|background(-color|-image)?|border(-.+)?|outline(-color)?|box-shadow|text-shadow|stroke|fill"
                       r"|text-decoration(-color)?|caret-color|accent-color|scrollbar-color)$")
# words of those properties that are no colours, and the colours that forced-colors mode hands to the sheet itself
_NO_COLOUR = set("""var max min calc none inherit initial unset currentcolor transparent px rem em solid dashed dotted double inset
    underline from-font auto thin thick collapse separate e
    canvas canvastext buttontext buttonface highlight highlighttext linktext graytext""".split())
_ANY_COLOUR = re.compile(r"#[0-9a-fA-F]{3,8}\b|\b(?:rgba?|hsla?|hwb|lab|lch|oklab|oklch|color|color-mix|light-dark)\(|gradient\(")
_WORD = re.compile(r"(?<![\w-])[a-zA-Z][a-zA-Z-]*")


def physical(text: str) -> list[str]:
    """Each declaration that names a side or an axis of the screen, as `property: value`."""
    return [f"{name}: {value}" for rule in rules(text) for name, value in rule.declarations if _is_physical(name, value)]


def _is_physical(name: str, value: str) -> bool:
    return bool(_PHYSICAL_PROPERTY.match(name) or (name in _VALUES_OF_SIDES and _SIDE_IN_VALUE.search(value)))


def colours(text: str) -> list[str]:
    """Each declaration that names a colour instead of a token."""
    return [f"{name}: {value}" for rule in rules(text) for name, value in _coloured(rule)]


def _coloured(rule: Rule) -> Iterator[tuple[str, str]]:
    for name, value in rule.declarations:
        words = {word.lower() for word in _WORD.findall(re.sub(r"--[\w-]+|\"[^\"]*\"|\d[\w.%]*", " ", value))}
        if _ANY_COLOUR.search(value) or (_COLOURED.match(name) and words - _NO_COLOUR and not _is_width_or_style(name)):
            yield name, value


def _is_width_or_style(name: str) -> bool:
    return name.endswith(("-width", "-style", "-radius", "-collapse", "-spacing"))


def said(text: str) -> list[str]:
    """Each `content` that says something in letters: a sentence belongs to the words."""
    values = [value for rule in rules(text) for name, value in rule.declarations if name == "content"]
    return [value for value in values if re.search(r"\"[^\"]*[^\W\d_][^\"]*\"", value)]
