"""Speaking to the phone's engine: one line a question, and a plain sentence where it cannot run.

The plumbing is tried with a stand-in of a few lines, which cannot compute anything; that the built engine gives the
server's answers is held by tests/both_engines, and once more here through the command line.
"""

import io
import json
import sys
from pathlib import Path

import pytest

from quietcuff import cli
from quietcuff.commands import phone_engine
from quietcuff.contract import words

# Answers each line with the line itself; at "stop" it ends without an answer, at "break" as when something broke.
STAND_IN = """
import { createInterface } from "node:readline";
for await (const line of createInterface({ input: process.stdin })) {
  if (line.includes("stop")) process.exit(3);
  const broke = { error: { path: "", why: "engine: no such word" } };
  console.log(line.includes("break") ? JSON.stringify(broke) : JSON.stringify({ asked: JSON.parse(line) }));
}
"""
DOG = '{"species": "dog", "sets": [{"method": "doppler", "readings": [{"id": "a", "systolic_mmhg": 140.0}]}]}'


@pytest.fixture
def stand_in(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """The stand-in in the place of the built engine."""
    file = tmp_path / "engine.mjs"
    file.write_text(STAND_IN, encoding="utf-8")
    monkeypatch.setattr(phone_engine, "engine_file", lambda: file)


@pytest.fixture(autouse=True)
def strict_words(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(words, "is_strict", True)


def give(monkeypatch: pytest.MonkeyPatch, text: str) -> None:
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(text.encode())))


@pytest.mark.usefixtures("stand_in")
def test_the_clean_value_is_handed_over(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    """Python's strict reader is first: what it refuses never reaches the engine, and 140.0 arrives as 140."""
    give(monkeypatch, f'{DOG}\n{{"a": 1, "a": 1}}\n"break"\n')
    assert cli.main(["assess", "--lines", "--engine", "phone"]) == 0
    first, second, third = [json.loads(line) for line in capsys.readouterr().out.splitlines()]
    assert first == {"asked": {"do": "assess", "measurement": json.loads(DOG)}}
    assert "140.0" not in json.dumps(first)
    assert second == {"error": {"path": "", "why": "unreadable_key_twice"}}
    assert third == {"error": {"path": "", "why": "engine: no such word"}}


@pytest.mark.usefixtures("stand_in")
def test_a_cuff_is_asked_for(capsys: pytest.CaptureFixture[str]) -> None:
    arguments = ["--species", "cat", "--circumference-mm", "80", "--bag-mm", "25,30", "--engine", "phone"]
    assert cli.main(["cuff", *arguments]) == 0
    asked = {"do": "cuff", "species": "cat", "limb_circumference_mm": 80, "bag_mm": [25, 30]}
    assert json.loads(capsys.readouterr().out) == {"asked": asked}


@pytest.mark.usefixtures("stand_in")
@pytest.mark.parametrize(("given", "told"), [('"break"', "(no such word)"), ('"stop"', "stopped without an answer")])
def test_a_broken_engine_is_told(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], given: str, told: str
) -> None:
    give(monkeypatch, given)
    assert cli.main(["assess", "--engine", "phone"]) == 2
    assert told in capsys.readouterr().err


def test_without_node_it_says_so(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    monkeypatch.setattr(phone_engine.shutil, "which", lambda *_arguments, **_settings: None)
    assert cli.main(["assess", "--engine", "phone"]) == 2
    assert capsys.readouterr().err.startswith("The phone's engine needs Node")


def test_without_a_build_it_says_so(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    monkeypatch.setattr(Path, "is_file", lambda _path: False)
    assert cli.main(["assess", "--engine", "phone"]) == 2
    assert capsys.readouterr().err.startswith("The phone's engine is not built")


def test_the_built_engine_answers_as_the_server_does(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """The built engine itself, through the command line: an assessment and a refusal."""
    answers = {}
    for engine in ("server", "phone"):
        give(monkeypatch, f'{DOG}\n{{"species": "cow"}}\n')
        assert cli.main(["assess", "--lines", "--engine", engine]) == 0
        answers[engine] = [json.loads(line) for line in capsys.readouterr().out.splitlines()]
    assert answers["phone"] == answers["server"]
    assert answers["server"][1] == {"error": {"path": "/sets", "why": "missing"}}
