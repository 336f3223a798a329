"""TypeScript read as text: code without comments and strings, imports, functions by their indentation.

Good for files formatted like ours, and no parser: it must not be asked what an expression means.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

_QUIET = re.compile(
    r"""//[^\n]*
      | /\*.*?\*/
      | "(?:\\.|[^"\\\n])*"
      | '(?:\\.|[^'\\\n])*'
      | (?<=[(,=:\[!&|?{};])\s*/(?![*/])(?:\\.|\[(?:\\.|[^\]\\\n])*\]|[^/\\\n\[])+/[a-z]*
      | `(?:\\.|\$\{[^{}]*\}|[^`\\])*`""",
    re.VERBOSE | re.DOTALL,
)
_IN_TEMPLATE = re.compile(r"\$\{([^{}]*)\}")
_IMPORT = re.compile(r"""(?:^|\n)\s*(?:import|export)\s(?:[^"';]*?\sfrom\s*)?["']([^"'\n]+)["']|\bimport\(\s*["']([^"'\n]+)""")
_WORDS_BEFORE = r"^(?P<indent>\s*)(?:(?:export|default|async|public|private|static|readonly)\s+)*"
# the head on one line, or a head whose parameters follow on lines of their own
_BEGINS = re.compile(
    _WORDS_BEFORE + r"(?:function\b.*[{(]|(?:(?:const|let)\s+)?[\w$]+\s.*=.*(?:=>\s*[{(]|\()"
    r"|(?!(?:if|for|while|switch|catch|return)\b)[\w$#]+\s*\((?:[^;=]*\)[^;=]*\{)?)\s*$"
)


def code_only(text: str) -> str:
    """The text with comments, strings and regular expressions blanked; what a template computes is kept. Lines stay."""
    return _QUIET.sub(lambda found: _blank(found.group()), text)


def _blank(quiet: str) -> str:
    kept = " ".join(_IN_TEMPLATE.findall(quiet)) if quiet.startswith("`") else ""
    return f" {kept} " + "\n" * (quiet.count("\n") - kept.count("\n"))


def imports(path: Path) -> Iterator[str]:
    """Each module named by an import, a re-export or a call of import(), as it is written."""
    without_comments = re.sub(r"/\*.*?\*/|(?<!:)//[^\n]*", "", path.read_text(encoding="utf-8"), flags=re.DOTALL)
    for found in _IMPORT.finditer(without_comments):
        yield found.group(1) or found.group(2)


def function_lengths(text: str) -> Iterator[tuple[int, int]]:
    """(line, number of lines) of each function that spans lines: from its head to the bracket at the same indentation."""
    lines = text.splitlines()
    for start, line in enumerate(lines):
        begins = _BEGINS.match(line)
        end = _end_of(lines, start, begins.group("indent")) if begins else None
        if end is not None:
            yield start + 1, end - start + 1


def _end_of(lines: list[str], start: int, indent: str) -> int | None:
    """The line that closes what begins at `start`; None where parameters were opened and no body followed (a call)."""
    waits_for_body = lines[start].rstrip().endswith("(") and not lines[start].rstrip().endswith("=> (")
    for at in range(start + 1, len(lines)):
        if not re.match(rf"{indent}[}})]", lines[at]):
            continue
        if not waits_for_body:
            return at
        if not re.search(r"[{(]\s*$", lines[at]):
            return None
        waits_for_body = False
    return None
