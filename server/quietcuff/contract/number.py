"""What number did a person type? Digits of five scripts, three decimal signs, a unit typed along with it.

It must not guess: what could be read in two ways is refused with a code. Twin of client/src/contract/number.ts;
both run tests/vectors/number.json.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import TypedDict


class Parsed(TypedDict, total=False):
    """`value_tenths`, in tenths of the field's unit, or `code`: why there is no number."""

    value_tenths: int
    code: str


# Zero of each script: ASCII, Arabic-Indic, Eastern Arabic-Indic, Devanagari, full width.
_ZEROS = (0x30, 0x660, 0x6F0, 0x966, 0xFF10)

# Listed, not left to strip(): the two languages disagree on what white space is. The last three are direction marks.
_BLANK = "[ \\t\\r\\n\u00a0\u2009\u202f\u3000\u200e\u200f\u061c]*"
_FORM = re.compile(f"{_BLANK}([0-9]+)(?:[.,\u066b]([0-9]+))?{_BLANK}(.*?){_BLANK}", re.DOTALL)
_ALL_BLANK = re.compile(_BLANK)
_LOOKS_LIKE_A_UNIT = re.compile("[A-Za-z\u00b5\u03bc\u00b0%/\"'\u2032\u2033]+")
_MOST_WHOLE_DIGITS = 6
_MOST_DECIMAL_DIGITS = 6
_GROUP_DIGITS = 3


def _with_ascii_digits(text: str) -> str | None:
    """The text with its digits in ASCII; None when digits of two scripts are mixed."""
    scripts = set()
    plain = []
    for sign in text:
        zero = next((first for first in _ZEROS if first <= ord(sign) <= first + 9), None)
        if zero is None:
            plain.append(sign)
        else:
            scripts.add(zero)
            plain.append(chr(0x30 + ord(sign) - zero))
    return "".join(plain) if len(scripts) <= 1 else None


def _lower_ascii(text: str) -> str:
    """Lower case of A to Z only, as the phone does it."""
    return re.sub("[A-Z]", lambda letter: letter.group().lower(), text)


def _factor_of(typed: str, units: Mapping[str, int]) -> int | None:
    """How many of the field's unit one of the typed unit is; nothing typed: 1."""
    if typed == "":
        return 1
    return next((factor for unit, factor in units.items() if _lower_ascii(unit) == _lower_ascii(typed)), None)


def _tenths_of(whole: str, fraction: str, factor: int, decimal: bool) -> Parsed:
    """The digits as tenths of the field's unit, exactly."""
    if len(whole) > _MOST_WHOLE_DIGITS:
        return {"code": "too_large"}
    if len(fraction) > _MOST_DECIMAL_DIGITS:
        return {"code": "too_fine"}
    scale = 10 ** len(fraction)
    tenths, rest = divmod((int(whole) * scale + int(fraction or "0")) * factor * 10, scale)
    if rest != 0:
        return {"code": "too_fine" if decimal else "not_whole"}
    return {"value_tenths": tenths} if decimal or tenths % 10 == 0 else {"code": "not_whole"}


def parse_number(text: str, units: Mapping[str, int] | None = None, decimal: bool = False) -> Parsed:
    """The number in `text` as whole tenths of the field's unit, or a code.

    `units` are those that may be typed, each as so many of the field's unit: for a field in mm {"mm": 1, "cm": 10}.
    Signs, exponents, hex, NaN and Infinity are no numbers; a separator followed by exactly three digits is
    `ambiguous` where no decimal is expected, since it may be meant to group thousands.
    """
    if _ALL_BLANK.fullmatch(text):
        return {"code": "empty"}
    form = _FORM.fullmatch(_with_ascii_digits(text) or "")
    if form is None:
        return {"code": "not_a_number"}
    digits, fraction, typed = form[1], form[2] or "", form[3]
    factor = _factor_of(typed, units or {})
    if factor is None:
        return {"code": "unknown_unit" if _LOOKS_LIKE_A_UNIT.fullmatch(typed) else "not_a_number"}
    if not decimal and len(fraction) == _GROUP_DIGITS:
        return {"code": "ambiguous"}
    return _tenths_of(re.sub("^0+(?=.)", "", digits), fraction.rstrip("0"), factor, decimal)
