"""What the engines and the phone's sync must not carry: numbers of a document, clocks, chance, the world outside.

The same measurement has to give the same assessment on every phone and server, this year and in ten years.
"""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest

from tests.architecture.tree import CLIENT_SOURCE, PACKAGE, ours, shown
from tests.architecture.typescript_text import code_only

# Pure arithmetic: halves, tenths, hundredths, thousandths, and 400 = 20² of the square root in tenths. Anything else is a
# limit somebody may want to read in the paper, and belongs into a rule document.
ARITHMETIC = {0, 1, 2, 10, 100, 400, 1000}
INEXACT = {"round", "float", "pow", "divmod"}
PYTHON_RULES = ours(PACKAGE / "rules", ".py")
CLIENT_RULES = ours(CLIENT_SOURCE / "rules", ".ts")
HANDED_ITS_WORLD = [*CLIENT_RULES, CLIENT_SOURCE / "offline" / "sync.ts"]

GLOBALS = (
    "window document navigator location history self globalThis parent top fetch XMLHttpRequest WebSocket EventSource Request "
    "Date performance setTimeout setInterval clearTimeout clearInterval queueMicrotask requestAnimationFrame Intl "
    "crypto indexedDB localStorage sessionStorage caches console alert confirm prompt process Buffer require"
).split()
_GLOBAL = re.compile(rf"(?<![\w$.#])(?:{'|'.join(GLOBALS)})(?![\w$])(?!\s*\??:)|\bMath\s*\.\s*random\b")
_TOP_LEVEL = re.compile(r"\n(?=[^\s}\])])")
_NUMBER = re.compile(r"(?<![\w$.])(?:\d[\d_]*\.?\d*(?:[eE][+-]?\d+)?|\.\d+)n?")


def python_numbers(text: str) -> list[tuple[int, str]]:
    """(line, number) of every number in Python code that is not pure arithmetic; a float never is."""
    constants = [node for node in ast.walk(ast.parse(text)) if isinstance(node, ast.Constant)]
    return [
        (node.lineno, repr(node.value))
        for node in constants
        if isinstance(node.value, int | float | complex) and not isinstance(node.value, bool)
        and not (isinstance(node.value, int) and node.value in ARITHMETIC)
    ]


def typescript_numbers(text: str) -> list[tuple[int, str]]:
    """(line, number) of every number in TypeScript code that is not pure arithmetic."""
    allowed = {str(number) for number in ARITHMETIC} | {f"{number}n" for number in ARITHMETIC}
    return [
        (line, number)
        for line, code in enumerate(code_only(text).splitlines(), start=1)
        for number in _NUMBER.findall(code)
        if number not in allowed
    ]


def python_floats(text: str) -> list[tuple[int, str]]:
    """(line, what) of every operator or function in Python code that the phone cannot repeat to the last digit."""
    found = []
    for node in ast.walk(ast.parse(text)):
        operator = getattr(node, "op", None)
        if isinstance(operator, ast.Div | ast.Pow):
            found.append((node.lineno, type(operator).__name__))
        if isinstance(node, ast.Name) and node.id in INEXACT:
            found.append((node.lineno, node.id))
    return sorted(found)


def globals_used(text: str) -> list[tuple[int, str]]:
    """(line, name) of every global of the browser in TypeScript code; a property, a key or an own variable is none."""
    code, used, line = code_only(text), [], 1
    for part in _TOP_LEVEL.split(code):  # a name of one function excuses no other
        used += [
            (line + part.count("\n", 0, found.start()), found.group())
            for found in _GLOBAL.finditer(part)
            if not _is_bound(found.group(), part)
        ]
        line += part.count("\n") + 1
    return used


def _is_bound(name: str, part: str) -> bool:
    """Whether this part of the file declares the name itself: `document` and `window` are words of the rules, too."""
    ways = (
        rf"\b(?:const|let)\s+(?:[{{\[][^}}\]=]*)?\b{name}\b",  # const name, const { name }
        rf"[(,]\s*{name}\s*\??:",  # a parameter with its type
        rf"\b{name}\)?\s*=>",  # the one parameter of an arrow
        rf"\{{[^{{}}]*\b{name}\b[^{{}}]*\}}\s*:",  # a parameter taken apart, with its type
    )
    return any(re.search(way, part) for way in ways)


@pytest.mark.parametrize("file", PYTHON_RULES, ids=shown)
def test_python_rules_carry_no_number(file: Path) -> None:
    """Every limit comes from a document."""
    assert python_numbers(file.read_text(encoding="utf-8")) == []


@pytest.mark.parametrize("file", PYTHON_RULES, ids=shown)
def test_python_rules_stay_whole(file: Path) -> None:
    """`//` and comparison by multiplying only: a fraction in binary is another one on the phone."""
    assert python_floats(file.read_text(encoding="utf-8")) == []


@pytest.mark.parametrize("file", CLIENT_RULES, ids=shown)
def test_client_rules_carry_no_number(file: Path) -> None:
    """Every limit comes from a document."""
    assert typescript_numbers(file.read_text(encoding="utf-8")) == []


@pytest.mark.parametrize("file", HANDED_ITS_WORLD, ids=shown)
def test_no_globals(file: Path) -> None:
    """Clock, chance, store and network are handed in, so that a test can be all four."""
    assert globals_used(file.read_text(encoding="utf-8")) == []


def test_both_engines_are_there() -> None:
    """The checks above would be content with empty folders."""
    assert len(PYTHON_RULES) > 8 and len(CLIENT_RULES) > 8


def test_the_readers_see_what_they_look_for() -> None:
    """Each reader on lines that break its rule, and on lines that only look so."""
    assert python_numbers("a = 140\nb = -1\nc = 0.5\nd = True\n'''160'''") == [(1, "140"), (3, "0.5")]
    assert python_floats("a = b / c\na /= 2\na **= b\nround(a // 2)") == [(1, "Div"), (2, "Div"), (3, "Pow"), (4, "round")]
    assert typescript_numbers('const a = 140; // 160\nconst b = "180" + `${x2} 5`;\nc[0] + 1.5 + 1_000;') == [
        (1, "140"), (3, "1.5"), (3, "1_000")]
    assert globals_used('a.fetch(x); fetch: 1;\n// Date\nnew Date(); "window"; Math.max(1);\nMath.random(); `${crypto}`') == [
        (3, "Date"), (4, "Math.random"), (4, "crypto")]
    own = "function a({ x: document }: D, b: B) {\n  const window = f(document);\n  return window;\n}\n"
    assert globals_used(own) == []
    assert globals_used(own + "function c() {\n  return document;\n}") == [(6, "document")]
