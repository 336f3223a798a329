"""Runs the TypeScript tests beside this file, so that one command runs them all.

It says only whether they passed; what they check, and against what, stands in each of them.
"""

from __future__ import annotations

import re
import subprocess

from tests.architecture.tree import ROOT

LIMIT_S = 120


def test_typescript_tests_pass() -> None:
    """`npm test` in client/ ends well and ran every test file there is, none skipped."""
    done = subprocess.run(["npm", "test"], cwd=ROOT / "client", capture_output=True, text=True, check=False, timeout=LIMIT_S)
    printed = re.sub(r"\x1b\[[0-9;]*m", "", done.stdout + done.stderr)
    assert done.returncode == 0, printed
    files = [file for ending in ("ts", "tsx") for file in (ROOT / "tests" / "client").rglob(f"*.test.{ending}")]
    assert re.search(rf"Test Files\s+{len(files)} passed \({len(files)}\)", printed), printed
    assert "skipped" not in printed and "todo" not in printed, printed
