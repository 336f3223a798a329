"""Takes a push: judges every entry, files the good ones in one transaction, answers each.

The answer is worked out from what the journal holds, so a lost answer costs a phone one more push and nothing else.
Must not refuse a push because of who the author is or how old the app is; that is no question of this file.
"""

from __future__ import annotations

import json
from typing import Any

from quietcuff.record import journal
from quietcuff.record.database import Room, practice_room
from quietcuff.record.entries import NewEntry
from quietcuff.record.tray import Aside, lay_in_tray, take_from_tray
from quietcuff.sync.bundle import BundleUnreadable, as_line, read_bundle
from quietcuff.sync.judge import judge

Judged = NewEntry | Aside
Answer = dict[str, Any]


def receive(
    practice: str, device: str, body: bytes, content_encoding: str | None, now_ms: int, hold: str | None = None
) -> bytes:
    """Files what can be filed of a pushed bundle and returns the lines of the answer.

    `device` is the phone that hands in (for its share of the tray), `now_ms` the server's time, ms UTC. With `hold`, a
    code (the phone was revoked), nothing new is filed: it waits in the tray for a person. Raises
    BundleUnreadable, PracticeUnknown, RecordBusy: in each case nothing was written.
    """
    # 1 open the bundle within its limits
    bundle = read_bundle(body, content_encoding)
    if bundle.header.get("practice", practice) != practice:
        raise BundleUnreadable("practice_differs", path="/practice")
    # 2 judge every entry by itself: letter, body, rules worked out again; no lock is held yet
    judged = [judge(pair, now_ms) for pair in bundle.pairs]
    # 3 lock the head of the practice
    with practice_room(practice) as room:
        # 4 to 7, below
        answers = _file(room, device, judged, now_ms, hold)
        epoch, head = room.epoch, room.position
    # 8 committed, durably: only now is anything answered
    first = {"answers": 1, "count": len(answers), "epoch": epoch, "head": head, "server_time_ms": now_ms}
    return as_line(first) + b"".join(map(as_line, answers))


def _file(room: Room, device: str, judged: list[Judged], now_ms: int, hold: str | None) -> list[Answer]:
    # 4 set apart what the journal holds already, by id and bytes
    known = journal.known_ids(room, [one.id for one in judged if isinstance(one, NewEntry)])
    if hold is not None:
        judged = [_held_back(one, hold, known) for one in judged]
    new, asides, by_line = _sort_out(judged, known)
    # 5 journal rows, chain, projections, head
    filed = journal.file_entries(room, new, now_ms)
    known |= {entry.id: journal.Known(entry.sha, entry.position, entry.assessment) for entry in filed}
    # 6 what was not filed goes to the tray; what is filed now leaves it
    lay_in_tray(room, device, asides, now_ms)
    take_from_tray(room, [entry.sha for entry in filed])
    # 7 one answer an entry, from what the journal holds
    return [_answer(line, one, word, known) for line, (one, word) in enumerate(by_line, start=1)]


def _sort_out(
    judged: list[Judged], known: dict[str, journal.Known]
) -> tuple[list[NewEntry], list[Aside], list[tuple[Judged, str]]]:
    """Parts the entries into new ones and those for the tray, and says the word of the answer to each."""
    new: list[NewEntry] = []
    asides: list[Aside] = []
    by_line: list[tuple[Judged, str]] = []
    shas = {letter_id: one.sha for letter_id, one in known.items()}
    for one in judged:
        if isinstance(one, NewEntry) and shas.setdefault(one.id, one.sha) != one.sha:
            one = _aside(one, "refused", "id_conflict", "/id")
        if isinstance(one, Aside):
            asides.append(one)
            by_line.append((one, one.state))
        elif _is_duplicate(one, known, new):
            by_line.append((one, "duplicate"))
        else:
            new.append(one)
            by_line.append((one, "stored"))
    return new, asides, by_line


def _is_duplicate(one: NewEntry, known: dict[str, journal.Known], new: list[NewEntry]) -> bool:
    """Already in the journal, or earlier in this very push; that its bytes are the same was settled before."""
    return one.id in known or any(other.id == one.id for other in new)


def _held_back(one: Judged, code: str, known: dict[str, journal.Known]) -> Judged:
    """A good entry becomes a held one; what the journal has already stays answered as before."""
    return _aside(one, "held", code, "") if isinstance(one, NewEntry) and one.id not in known else one


def _aside(one: NewEntry, state: str, code: str, path: str) -> Aside:
    return Aside(state, code, path, one.sha, one.letter, id=one.id, kind=one.kind, number=one.number, box=one.box)


def _answer(line: int, one: Judged, word: str, known: dict[str, journal.Known]) -> Answer:
    answer: Answer = {"line": line, "answer": word}
    if one.id is not None:
        answer["id"] = one.id
    if isinstance(one, Aside):
        return {**answer, "code": one.code, "path": one.path}
    here = known[one.id]
    answer["position"] = here.position
    if here.assessment is not None:
        answer["assessment"] = json.loads(here.assessment)
    return answer
