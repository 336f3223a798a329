"""The phone's engine for tests: one Node process for a whole run, asked by the batch.

Must never fall back to another engine, nor skip: without the built file it is built, and a failure is a failure.
"""

from __future__ import annotations

import json
import subprocess
import threading
from collections.abc import Iterable, Sequence
from types import TracebackType
from typing import Any, Self

from quietcuff.commands.phone_engine import NoEngine, engine_file, node_program
from server import set_up


class PhoneEngine:
    """`with PhoneEngine() as phone`: the process starts on entering and ends on leaving."""

    def __enter__(self) -> Self:
        words = [node_program(), str(built_engine())]
        self.process = subprocess.Popen(words, stdin=subprocess.PIPE, stdout=subprocess.PIPE)
        return self

    def __exit__(
        self, kind: type[BaseException] | None, value: BaseException | None, traceback: TracebackType | None
    ) -> None:
        self.process.communicate()  # closes its input, at which it ends

    def answers(self, calls: Iterable[Any]) -> list[dict[str, Any]]:
        """One answer a call, in order."""
        return [json.loads(line) for line in self.answer_lines([json.dumps(call) for call in calls])]

    def answer_lines(self, lines: Sequence[str]) -> list[bytes]:
        """As `answers`, but JSON text in and out. A thread writes: a pipe full both ways would wait for ever."""
        assert self.process.stdout is not None
        writer = threading.Thread(target=self._write, args=(lines,))
        writer.start()
        answered = [self.process.stdout.readline() for _ in lines]
        writer.join()
        if not all(answered):
            raise NoEngine("the phone's engine ended before it had answered every call")
        return answered

    def _write(self, lines: Sequence[str]) -> None:
        assert self.process.stdin is not None
        self.process.stdin.write(b"".join(line.encode() + b"\n" for line in lines))
        self.process.stdin.flush()


def built_engine() -> Any:
    """The built file; where there is none yet, the set-up builds it."""
    try:
        return engine_file()
    except NoEngine:
        set_up.make_ready(for_tests=True)
        return engine_file()
