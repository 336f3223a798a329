"""When a step counts as up to date: its sources decide, what was made from them does not."""

from __future__ import annotations

from pathlib import Path

import pytest

from server import set_up


@pytest.fixture
def client(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A small client of its own, built; what `node.build` would do is only noted."""
    monkeypatch.setattr(set_up, "ROOT", tmp_path)
    monkeypatch.setattr(set_up, "CLIENT", tmp_path / "client")
    for name in ("src/main.tsx", "dist/index.html", "dist-engine/engine.mjs", "node_modules/x.js", "src/wire_types.ts"):
        file = tmp_path / "client" / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text("1")
    (tmp_path / "shared_schemas").mkdir()
    return tmp_path / "client"


@pytest.fixture
def builds(client: Path, monkeypatch: pytest.MonkeyPatch) -> list[Path]:
    """Each build that was asked for; one has been done."""
    done: list[Path] = []
    monkeypatch.setattr(set_up.node, "build", lambda folder, environment: done.append(folder))
    set_up._build_client()
    assert done == [client]
    return done


@pytest.mark.parametrize("name", ["src/main.tsx", "package.json", "../shared_schemas/rules.json"])
def test_a_source_that_changed_asks_for_a_build(client: Path, builds: list[Path], name: str) -> None:
    """Changed or new, in the client or in what is shared."""
    (client / name).write_text("2")
    set_up._build_client()
    assert len(builds) == 2


@pytest.mark.parametrize("name", ["dist/index.html", "node_modules/x.js", "src/wire_types.ts"])
def test_what_was_made_asks_for_none(client: Path, builds: list[Path], name: str) -> None:
    """Else every build would ask for the next."""
    (client / name).write_text("2")
    set_up._build_client()
    assert len(builds) == 1


@pytest.mark.parametrize("name", ["dist/index.html", "dist-engine/engine.mjs"])
def test_what_was_deleted_asks_for_a_build(client: Path, builds: list[Path], name: str) -> None:
    """A stamp proves nothing about files that are gone."""
    (client / name).unlink()
    set_up._build_client()
    assert len(builds) == 2


def test_a_moved_source_asks_for_a_build(client: Path, builds: list[Path]) -> None:
    """The same bytes under another name are another source."""
    (client / "src/main.tsx").rename(client / "src/other.tsx")
    set_up._build_client()
    assert len(builds) == 2
