"""The command line: answers on stdout for programs, sentences on stderr for people, exit code 2 for bad input."""

import io
import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from quietcuff import cli
from quietcuff.contract import words
from quietcuff.contract.rule_documents import rule_set
from quietcuff.rules.assess import assess

DOG = {
    "species": "dog",
    "rest_s": 700,
    "sets": [{"method": "doppler", "readings": [{"id": "a", "systolic_mmhg": 140}]}],
}


@pytest.fixture
def run(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Any:
    """Run a command in this process: (exit code, answers as JSON values, what the person reads)."""
    monkeypatch.setattr(words, "is_strict", True)

    def run_command(*arguments: str, given: str | bytes = b"") -> tuple[int, list[Any], str]:
        text = given.encode() if isinstance(given, str) else given
        monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(text), encoding="utf-8"))
        code = cli.main(arguments)
        printed = capsys.readouterr()
        return code, [json.loads(line) for line in printed.out.splitlines()], printed.err

    return run_command


def test_assess(run: Any) -> None:
    code, answers, told = run("assess", given=json.dumps(DOG, indent=1))
    assert (code, told) == (0, "")
    assert answers == [assess(DOG, rule_set("v1"))]


@pytest.mark.parametrize(
    ("given", "path", "why", "told"),
    [
        ("{", "", "unreadable_not_json", "the whole document: this cannot be read: it is not one JSON document."),
        ('{"species": "dog"}', "/sets", "missing", "/sets: this is needed and was left out."),
        ('{"species": "dog", "species": "dog"}', "", "unreadable_key_twice", "stands twice"),
        (json.dumps(DOG | {"rest_s": True}), "/rest_s", "not_a_whole_number", "/rest_s: this must be a whole number"),
        (json.dumps(DOG | {"rest": 3}), "/rest", "unknown_key", "/rest: no field of this name"),
    ],
)
def test_bad_input_names_the_field(run: Any, given: str, path: str, why: str, told: str) -> None:
    code, answers, said = run("assess", given=given)
    assert code == 2
    assert answers == [{"error": {"path": path, "why": why}}]
    assert told in said


def test_lines_answers_each_line_in_its_place(run: Any) -> None:
    good = json.dumps(DOG)
    given = "\n".join([good, "", "[1,", '{"a": 1, "a": 1}', "3", good.replace("140", "140.0")])
    code, answers, told = run("assess", "--lines", given=given)
    whole = assess(DOG, rule_set("v1"))
    assert (code, told) == (0, "")
    assert answers == [
        whole,
        {"error": {"path": "", "why": "unreadable_not_json"}},
        {"error": {"path": "", "why": "unreadable_not_json"}},
        {"error": {"path": "", "why": "unreadable_key_twice"}},
        {"error": {"path": "", "why": "not_an_object"}},
        whole,
    ]


def cuff_words(species: str = "dog", circumference_mm: str = "130", bag_mm: str = "20,25,30,35,40,50,60") -> list[str]:
    return ["cuff", "--species", species, "--circumference-mm", circumference_mm, f"--bag-mm={bag_mm}"]


def test_cuff(run: Any) -> None:
    """By hand: 130 · 0.4 = 52.0; 50 below and 60 above; 50/130 = 384.6 ‰ is good, 60/130 = 461.5 ‰ only usable."""
    expected = {"target_tenths_mm": 520, "choice_mm": 50, "share_permille": 385, "fit": "good"}
    assert run(*cuff_words()) == (0, [expected], "")


def test_no_cuff_fits_is_an_answer(run: Any) -> None:
    assert run(*cuff_words(bag_mm="20")) == (0, [{"target_tenths_mm": 520, "no_fit": True}], "")


@pytest.mark.parametrize(
    ("arguments", "path", "why"),
    [
        (cuff_words(species="cow"), "/species", "not_in_list"),
        (cuff_words(circumference_mm="13cm"), "/limb_circumference_mm", "not_a_whole_number"),
        (cuff_words(circumference_mm="0"), "/limb_circumference_mm", "below_minimum"),
        (cuff_words(circumference_mm="1001"), "/limb_circumference_mm", "above_maximum"),
        (cuff_words(bag_mm=""), "/bag_mm", "too_few_items"),
        (cuff_words(bag_mm="20,"), "/bag_mm/1", "not_a_whole_number"),
        (cuff_words(bag_mm="20,2.5"), "/bag_mm/1", "not_a_whole_number"),
        (cuff_words(bag_mm="20,30,501"), "/bag_mm/2", "above_maximum"),
        (cuff_words(bag_mm="-20"), "/bag_mm/0", "below_minimum"),
    ],
)
def test_bad_cuff_arguments(run: Any, arguments: list[str], path: str, why: str) -> None:
    code, answers, told = run(*arguments)
    assert code == 2
    assert answers == [{"error": {"path": path, "why": why}}]
    assert told.startswith(path + ": ")


@pytest.mark.parametrize("arguments", [[], ["bake"], ["cuff"], ["assess", "--engine", "steam"], ["assess", "more"]])
def test_a_command_line_that_is_not_understood(run: Any, arguments: list[str]) -> None:
    with pytest.raises(SystemExit) as left:
        run(*arguments)
    assert left.value.code == 2


def test_it_starts_without_the_web_and_the_database() -> None:
    """A nurse's terminal should not wait for a web framework: looked at in a process of its own."""
    program = (
        "import sys; from quietcuff.cli import main; main(); "
        "print(sorted(set(sys.modules) & {'flask', 'sqlalchemy', 'marshmallow'}), file=sys.stderr)"
    )
    server = Path(cli.__file__).resolve().parent.parent
    words_given = [sys.executable, "-c", program, "assess"]
    done = subprocess.run(
        words_given, input=json.dumps(DOG), capture_output=True, text=True, cwd=server, check=True
    )
    assert json.loads(done.stdout)["result_set"] == 0
    assert done.stderr.strip() == "[]"


def test_a_reader_that_has_had_enough_is_no_error() -> None:
    """`quietcuff assess --lines | head -1`: the pipe is closed before all is printed."""
    words_given = [sys.executable, "-m", "quietcuff.cli", "assess", "--lines"]
    with subprocess.Popen(words_given, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as process:
        assert process.stdin is not None and process.stdout is not None and process.stderr is not None
        process.stdin.write((json.dumps(DOG) + "\n").encode())
        process.stdin.flush()
        assert json.loads(process.stdout.readline())["result_set"] == 0
        process.stdout.close()
        process.stdin.write((json.dumps(DOG) + "\n").encode() * 50)
        process.stdin.close()
        assert process.stderr.read() == b""
        assert process.wait(30) == 0
