"""No sentence for a person stands in code: each is in shared_schemas/words, where it can be read, judged and translated.

How text is found in TypeScript stands in texts_in_code.mjs; a sheet's `content` is held by test_style_sheets.py.
"""

from __future__ import annotations

import json
import subprocess
from collections.abc import Sequence
from pathlib import Path

from tests.architecture.tree import ROOT, client_files

FINDER = ROOT / "tests" / "design" / "texts_in_code.mjs"


def texts_in(files: Sequence[Path]) -> list[str]:
    """`file:line text` of each text for people in these files."""
    done = subprocess.run(["node", FINDER, *files], cwd=ROOT, capture_output=True, text=True, timeout=60, check=False)
    assert done.returncode == 0, done.stderr[-2000:]
    return [f"{Path(one['file']).name}:{one['line']} {one['text']}" for one in json.loads(done.stdout)]


def test_no_sentence_in_code() -> None:
    """Text between tags, in attributes that are read or heard, in the window's title; and whatever reads like a sentence."""
    files = client_files()
    assert len(files) > 50
    assert texts_in(files) == []


def test_texts_are_seen(tmp_path: Path) -> None:
    """Each way a sentence gets onto a screen past the words; ids, comparisons, marks and messages of errors are none."""
    bad = tmp_path / "bad.tsx"
    bad.write_text(
        "const a = <p>Choose the site</p>;\n"
        'const b = <button aria-label="Close" title={on ? `${n} left` : undefined} />;\n'
        "const c = <p>{open && \"Try again\"}</p>;\n"
        'document.title = "Round";\n'
        'const d = { sentence: "Enter the name" };\n'
        'const e = told("Enter the name of it");\n')
    assert texts_in([bad]) == [
        "bad.tsx:1 Choose the site", "bad.tsx:2 Close", "bad.tsx:2 left", "bad.tsx:3 Try again", "bad.tsx:4 Round",
        "bad.tsx:5 Enter the name", "bad.tsx:6 Enter the name of it"]
    good = tmp_path / "good.tsx"
    good.write_text(
        'import a from "./Some where";\n'
        'const b = <p title={say("a-word")} class="stack wide">{kind === "Some thing" ? say("x") : "·"} ‹</p>;\n'
        'throw new Error("A set has a place");\nconst c = limit < 3 && most > 2;\ntype D = "Two words";\n')
    assert texts_in([good]) == []
