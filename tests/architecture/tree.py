"""The source files of this repository, as the architecture tests read them.

Answers which files are ours and what they import. It must not know any rule about them: each rule stands in its test.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = ROOT / "server" / "quietcuff"
CLIENT_SOURCE = ROOT / "client" / "src"
SHARED = ROOT / "shared_schemas"
# fetched or made from the sources, so not written by anybody
NOT_OURS = {"node_modules", "dist", "dist-engine", "dist-parts", "__pycache__", ".venv", ".git", "wire_types.ts"}


def ours(folder: Path, *endings: str) -> list[Path]:
    """Files under `folder` with one of these endings, in a fixed order; a folder that is not there has none."""
    found = (path for ending in endings for path in folder.rglob(f"*{ending}"))
    return sorted(path for path in found if path.is_file() and not NOT_OURS & set(path.relative_to(ROOT).parts))


def python_files() -> list[Path]:
    """Every Python file of ours, tests and demo included."""
    return [file for room in ("server", "tests", "demo") for file in ours(ROOT / room, ".py")]


def client_files() -> list[Path]:
    """Every TypeScript file under client/src."""
    return ours(CLIENT_SOURCE, ".ts", ".tsx")


def shown(path: Path) -> str:
    """The path as a person names it, from the top of the repository."""
    return path.relative_to(ROOT).as_posix()


def python_imports(path: Path) -> Iterator[tuple[int, str, list[str]]]:
    """Each import as (line, module, names taken from it); a relative import keeps its leading dots."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from ((node.lineno, alias.name, []) for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            yield node.lineno, "." * node.level + (node.module or ""), [alias.name for alias in node.names]
