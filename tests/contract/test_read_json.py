"""The strict reader: what has no one right reading is refused, and whole floats become whole numbers.

Sources: RFC 8259 (JSON; section 4 on names written twice, section 6 on numbers, section 8.2 on half surrogate pairs,
section 8.1 on the byte order mark) and RFC 3629 (UTF-8). Depth and length limits are the project's.
"""

import json

import pytest

from quietcuff.contract.read_json import Unreadable, read_json


def nested(depth: int) -> str:
    """Lists within lists; `nested(1)` is `[]`."""
    return "[" * depth + "]" * depth


REFUSED = [
    ("key_twice", b'{"a": 1, "a": 1}'),
    ("key_twice", b'[{"b": {"a": 1, "\\u0061": 2}}]'),  # the same name, once written as an escape
    ("not_finite", b"NaN"),
    ("not_finite", b'{"a": Infinity}'),
    ("not_finite", b"[-Infinity]"),
    ("not_finite", b"1e400"),  # legal JSON, but no double holds it
    ("not_finite", b"-1e400"),
    ("not_finite", b"9" * 301),
    ("not_finite", b"9" * 100_000),
    ("too_deep", nested(17).encode()),
    ("too_deep", b'{"a":' * 17 + b"1" + b"}" * 17),
    ("too_deep", nested(100_000).encode()),
    ("lone_surrogate", b'"\\ud800"'),
    ("lone_surrogate", b'{"\\uDFFF": 1}'),
    ("lone_surrogate", b'[{"a": ["\\uDE00\\uD83D"]}]'),  # the two halves in the wrong order
    ("lone_surrogate", '"\ud800"'),
    ("not_utf8", b'"\xff"'),
    ("not_utf8", b'"\xed\xa0\x80"'),  # a surrogate in UTF-8, forbidden by RFC 3629 section 3
    ("not_utf8", b'"\xc0\xaf"'),  # an overlong form
    ("not_json", b""),
    ("not_json", b" \n"),
    ("not_json", b"{'a': 1}"),
    ("not_json", b"[1,]"),
    ("not_json", b"01"),
    ("not_json", b"+1"),
    ("not_json", b".5"),
    ("not_json", b'"\x01"'),  # a control character that is not escaped
    ("not_json", b"1 2"),
    ("not_json", b"\xef\xbb\xbf1"),  # a byte order mark
    ("not_json", b"undefined"),
]


@pytest.mark.parametrize(("code", "text"), REFUSED)
def test_refuses(code: str, text: bytes | str) -> None:
    with pytest.raises(Unreadable) as refused:
        read_json(text)
    assert refused.value.code == code


@pytest.mark.parametrize(
    ("text", "value"),
    [
        (b"120.0", 120),
        (b"1.2e2", 120),
        (b"-0.0", 0),
        (b"-0", 0),
        (b"1e22", 10**22),
        (b"9007199254740993", 9007199254740993),
        (b'[true, false, null, "a"]', [True, False, None, "a"]),
        (b'{"a": {"b": 1}, "c": {"b": 1}}', {"a": {"b": 1}, "c": {"b": 1}}),
        (b'"\\ud83d\\ude00"', "\N{GRINNING FACE}"),  # a whole pair is one character
        ('"\N{GRINNING FACE}"'.encode(), "\N{GRINNING FACE}"),
        (b'"\\\\ud800"', "\\ud800"),  # a backslash and five letters, not an escape
        ('"\u00e4"', "\u00e4"),
        (b" 1 \r\n", 1),
    ],
)
def test_reads(text: bytes | str, value: object) -> None:
    read = read_json(text)
    assert read == value
    assert type(read) is type(value)


def test_a_fraction_stays_a_fraction() -> None:
    assert read_json(b"120.5") == 120.5


def test_sixteen_levels_are_read_and_many_brackets_side_by_side_are_not_depth() -> None:
    assert read_json(nested(16)) == json.loads(nested(16))
    with_neighbours = "[[], " + nested(15) + ", []]"
    assert read_json(with_neighbours) == json.loads(with_neighbours)
    assert read_json("[" + ",".join(["[]"] * 40) + "]") == [[]] * 40


def test_three_hundred_digits_are_read() -> None:
    assert read_json("9" * 300) == int("9" * 300)
