"""Whether one entry of a push may be filed, and with which remarks: checks it and works its result out again.

Touches no database and remembers nothing, so that all of it happens before a practice's journal is locked.
A poor measurement is never a reason to refuse; only what cannot be read or understood is.
"""

from __future__ import annotations

import hashlib
import logging
import re
from dataclasses import dataclass
from functools import cache
from typing import Any

from quietcuff.contract.read_json import Unreadable, read_json
from quietcuff.contract.rule_documents import rule_set
from quietcuff.contract.wire import check, check_measurement, is_known
from quietcuff.record.entries import Document, NewEntry, as_text, without_nul
from quietcuff.record.tray import Aside
from quietcuff.rules.assess import assess
from quietcuff.sync.bundle import PUSH, Pair

CLOCK_SUSPECT_MS = 2 * 60 * 1000
NEWEST_RULES = "v1"
_UUID = re.compile(r"[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}\Z")
_log = logging.getLogger(__name__)


class _NotFiled(Exception):
    """Ends the judging of one entry; `state` is held when a later build or a person may still file it."""

    def __init__(self, state: str, code: str, path: str = "") -> None:
        super().__init__(state, code, path)
        self.state, self.code, self.path = state, code, path


@dataclass
class _Seen:
    """What is known of an entry so far, for the tray when it goes no further."""

    sha: str
    envelope: Document
    letter: Document


def judge(pair: Pair, now_ms: int) -> NewEntry | Aside:
    """Judges one entry; never raises for anything that a phone sent."""
    seen = _Seen(hashlib.sha256(pair.letter).hexdigest(), {}, {})
    try:
        return _entry(pair, seen, now_ms)
    except _NotFiled as reason:
        return _aside(pair, seen, reason)
    except Exception:  # a bug of ours in one letter must not keep the others out; the letter waits for a better build
        _log.exception("judging %s failed", seen.sha)
        return _aside(pair, seen, _NotFiled("held", "judging_failed"))


def _entry(pair: Pair, seen: _Seen, now_ms: int) -> NewEntry:
    seen.envelope = _read(pair.envelope, "envelope.1", "envelope_unparsable", "envelope_invalid")
    if len(pair.letter) > PUSH.letter_bytes:
        raise _NotFiled("refused", "too_large")
    if seen.envelope["sha"] != seen.sha:
        raise _NotFiled("refused", "sha_differs")
    if "box" in seen.envelope:
        raise _NotFiled("held", "box_unknown")
    seen.letter = letter = _object(pair.letter, "unparsable")
    _check_letter(letter)
    _check_body(letter)
    servers = _servers_assessment(letter) if letter["kind"] == "measurement" else None
    differing = servers if servers is not None and _differs(servers, letter.get("assessment")) else None
    return NewEntry(
        id=letter["id"],
        kind=letter["kind"],
        amends=letter.get("amends"),
        sha=seen.sha,
        letter=pair.letter,
        device=seen.envelope["device"],
        number=seen.envelope["number"],
        document=letter,
        flags=_flags(letter, differing, now_ms),
        assessment=None if differing is None else as_text(differing),
    )


def _object(line: bytes, code: str) -> Document:
    try:
        document = read_json(line)
    except Unreadable as error:
        raise _NotFiled("refused", code) from error
    if not isinstance(document, dict):
        raise _NotFiled("refused", code)
    return document


def _read(line: bytes, schema: str, unparsable: str, invalid: str) -> Document:
    document = _object(line, unparsable)
    problem = check(schema, document)
    if problem is not None:
        raise _NotFiled("refused", invalid, problem.path)
    return document


def _check_letter(letter: Document) -> None:
    problem = check("letter.1", letter)
    if problem is None:
        return
    unknown_kind = problem.path == "/kind" and problem.why == "not_in_list"
    raise _NotFiled("refused", "kind_unknown" if unknown_kind else "schema_invalid", problem.path)


def _check_body(letter: Document) -> None:
    """Checks the body by the schema that its letter names; a number we do not know yet is a newer build's."""
    name = f"{letter['kind']}.{letter['schema']}"
    if not _is_known(name):
        raise _NotFiled("held", "schema_unknown", "/schema")
    measured = letter["kind"] == "measurement"
    problem = check_measurement(letter["body"]) if measured else check(name, letter["body"])
    if problem is not None:
        raise _NotFiled("refused", "schema_invalid", f"/body{problem.path}")
    if measured and "patient" not in letter["body"]:
        raise _NotFiled("refused", "patient_missing", "/body/patient")


@cache
def _is_known(name: str) -> bool:
    """Asked of the disk once for each of the few thousand names that pass the check of a letter."""
    return is_known(name)


def _servers_assessment(letter: Document) -> Document:
    """The server's own result, by the very rule set that the phone used."""
    try:
        rules = rule_set(letter.get("rules", NEWEST_RULES))
    except KeyError as error:
        raise _NotFiled("held", "rules_unknown", "/rules") from error
    return dict(assess(letter["body"], rules))


def _differs(servers: Document, phones: Any) -> bool:
    return as_text(servers) != as_text(phones)


def _flags(letter: Document, differing: Document | None, now_ms: int) -> tuple[str, ...]:
    """Remarks that never keep a letter out. Only a clock ahead can be told: a letter may be weeks old."""
    made_at_ms = letter["made_at_ms"] + letter.get("clock_offset_ms", 0)
    suspect = made_at_ms > now_ms + CLOCK_SUSPECT_MS
    remarks = (("clock_suspect", suspect), ("computation_differs", differing is not None))
    return tuple(word for word, is_so in remarks if is_so)


def _aside(pair: Pair, seen: _Seen, reason: _NotFiled) -> Aside:
    """For the tray; of a letter that broke the rules only what has the right form is taken over."""
    letter_id, kind, box = seen.letter.get("id"), seen.letter.get("kind"), seen.envelope.get("box")
    return Aside(
        state=reason.state,
        code=reason.code,
        path=without_nul(reason.path[:200]),
        sha=seen.sha,
        letter=pair.letter,
        id=letter_id if isinstance(letter_id, str) and _UUID.match(letter_id) else None,
        kind=without_nul(kind[:40]) if isinstance(kind, str) else None,
        number=seen.envelope.get("number"),
        box=None if box is None else without_nul(box),
    )
