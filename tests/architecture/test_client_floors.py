"""Who may import whom on the phone: screens → (parts, offline) → (contract | rules); sw.ts imports nothing of ours.

It reads the import lines of client/src. A room may also take from the few packages named here, and no other.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.architecture.tree import CLIENT_SOURCE, SHARED, client_files, shown
from tests.architecture.typescript_text import imports

PREACT = {"preact", "@preact/signals"}
# room → (rooms of ours it may import beside itself, packages it may import)
ROOMS: dict[str, tuple[set[str], set[str]]] = {
    "rules": (set(), set()),
    "contract": (set(), {"@fluent/bundle"}),
    "offline": ({"contract", "rules"}, {"idb", "@preact/signals"}),
    "parts": ({"contract", "rules", "look"}, PREACT),
    "screens": ({"parts", "offline", "contract", "rules", "look"}, PREACT),
    "look": (set(), set()),
    # files directly in client/src are rooms of their own
    "sw": (set(), {"workbox-precaching", "workbox-routing"}),
    "engine": ({"contract", "rules"}, set()),
    "worker": ({"screens"}, set()),
    # for whoever makes the parts; no room may import it, so that nothing of it reaches the app
    "all_parts": ({"screens", "parts", "offline", "contract", "rules", "look"}, PREACT),
    "main": ({"worker", "screens", "parts", "offline", "contract", "rules", "look"}, PREACT),
}


def room_of(path: Path) -> str:
    """The first folder below client/src, or the file's own name, without its ending, where it lies directly there."""
    return path.relative_to(CLIENT_SOURCE).parts[0].split(".")[0]


def package_of(module: str) -> str:
    """`@preact/signals/x` → `@preact/signals`, `preact/hooks` → `preact`."""
    return "/".join(module.split("/")[: 2 if module.startswith("@") else 1])


def offence(file: Path, module: str) -> str | None:
    """Why this import is not allowed in this file, or None."""
    room = room_of(file)
    if room not in ROOMS:
        return f"{shown(file)}: {room} is no room of the client"
    rooms, packages = ROOMS[room]
    name, query = (module.split("?") + [""])[:2]
    if not name.startswith("."):
        return None if package_of(name) in packages else f"{shown(file)} takes from {module}"
    target = (file.parent / name).resolve()
    if target.is_relative_to(SHARED):
        # only the contract reads shared files; the rules are handed their documents
        return None if room == "contract" else f"{shown(file)} reads {module}"
    if not target.is_relative_to(CLIENT_SOURCE):
        return f"{shown(file)} reaches out of client/src: {module}{query}"
    return None if room_of(target) in {room, *rooms} else f"{shown(file)} imports upward or sideways: {module}"


@pytest.mark.parametrize("file", client_files(), ids=shown)
def test_imports_go_downward(file: Path) -> None:
    """Each import of each file stays on its floor or goes down."""
    assert [found for module in imports(file) if (found := offence(file, module))] == []


def test_the_reader_of_imports_sees_every_kind(tmp_path: Path) -> None:
    """Several lines, for the side effect alone, at run time, re-exported; none in comments."""
    file = tmp_path / "x.ts"
    file.write_text(
        'import {\n  a,\n  b,\n} from "./one";\nimport "./two.css";\nconst c = await import("./three");\n'
        'export { d } from "./four";\nimport type { E } from \'../five\';\n// import f from "./no"\n/* import "./not" */\n'
    )
    assert list(imports(file)) == ["./one", "./two.css", "./three", "./four", "../five"]


def test_every_file_lies_in_a_room() -> None:
    """A file beside the rooms would stand on no floor."""
    assert [shown(file) for file in client_files() if room_of(file) not in ROOMS] == []
