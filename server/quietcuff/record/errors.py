"""The errors of the record: one base with a stable code; the words belong to the caller.

Must not know HTTP: `web/problems.py` alone turns a code into a status and a sentence.
"""

from __future__ import annotations


class RecordError(Exception):
    """Something the caller must act upon; `code` is stable, `facts` are plain values for a log or a problem body."""

    def __init__(self, code: str, **facts: str | int) -> None:
        super().__init__(code, facts)
        self.code = code
        self.facts = facts


class PracticeUnknown(RecordError):
    """There is no such practice; to the outside the same as a practice one may not see."""

    def __init__(self, practice: str) -> None:
        super().__init__("practice_unknown", practice=practice)


class RecordBusy(RecordError):
    """The practice's head stayed locked for too long; nothing was written, the same request may come again."""

    def __init__(self) -> None:
        super().__init__("record_busy")
