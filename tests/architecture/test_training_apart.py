"""Training cannot send: nothing it imports, or they import in turn, knows the network, the hand-in or the record's own door.

Types do not run, so an import of types alone counts for nothing; everything else does, at any depth.
"""

from __future__ import annotations

import re
from pathlib import Path

from tests.architecture.tree import CLIENT_SOURCE, shown

OFFLINE = CLIENT_SOURCE / "offline"
FORBIDDEN = {"network", "sending", "sync", "journal", "triggers", "around"}
_VALUE_IMPORT = re.compile(r"""(?:^|\n)\s*(?:import|export)\s(?!type\b)[^"';]*?\sfrom\s*["'](\.[^"']+)["']|\bimport\(\s*["'](\.[^"']+)""")


def reached(file: Path, seen: set[Path] | None = None) -> set[Path]:
    """The file and all that runs with it."""
    seen = set() if seen is None else seen
    if file not in seen:
        seen.add(file)
        for first, second in _VALUE_IMPORT.findall(file.read_text(encoding="utf-8")):
            target = (file.parent / (first or second)).resolve()
            for one in (target, target.with_name(target.name + ".ts"), target.with_name(target.name + ".tsx")):
                if one.is_file() and one.suffix in {".ts", ".tsx"}:
                    reached(one, seen)
    return seen


def test_training_reaches_no_way_out() -> None:
    """From both files of training; and they do reach the pen, so the walk is one."""
    found = reached(OFFLINE / "training.ts") | reached(OFFLINE / "training_store.ts")
    assert OFFLINE / "writes.ts" in found
    assert sorted(shown(file) for file in found if file.stem in FORBIDDEN) == []


def test_the_walk_sees_a_way_out() -> None:
    """The record's door has them all."""
    assert FORBIDDEN - {file.stem for file in reached(OFFLINE / "journal.ts")} == set()
