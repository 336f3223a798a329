"""Several phones at once, and one phone's push several times at once: dense positions, no entry missed by a reader.

Threads with a connection each; PostgreSQL and SQLite serialise them by the head row and by the write lock.
"""

from __future__ import annotations

import threading
import time
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from typing import Any

import pytest
from flask import Flask
from sqlalchemy import text

from quietcuff.record.database import found_practice, practice_room, reading, writing
from quietcuff.sync.receive import receive
from tests.sync.letters import NOW_MS, Pair, Phone, answers, bundle

PRACTICE = "01890000-0000-7000-8000-000000000001"
WRITERS = 4
WRITING_S = 3.0


@pytest.fixture(autouse=True)
def practice(record: Flask) -> None:
    with writing() as orm:
        found_practice(orm, PRACTICE, "P", NOW_MS)


def push(record: Flask, phone: Phone, pairs: list[Pair]) -> list[dict[str, Any]]:
    with record.app_context():
        return answers(receive(PRACTICE, phone.device, bundle(pairs), None, NOW_MS))[1]


def positions() -> list[int]:
    with reading() as connection:
        return list(connection.execute(text("SELECT position FROM journal ORDER BY position")).scalars())


def test_the_same_push_three_times_at_once_has_the_same_positions(record: Flask) -> None:
    for seed in range(5):
        phone = Phone(seed)
        pairs = phone.pairs(*[phone.patient(f"n{n}") for n in range(10)])
        together = threading.Barrier(3)

        def go(pairs: list[Pair] = pairs, phone: Phone = phone, together: threading.Barrier = together) -> list[Any]:
            together.wait(10)
            return push(record, phone, pairs)

        with ThreadPoolExecutor(3) as pool:
            said = [future.result(30) for future in [pool.submit(go) for _ in range(3)]]
        expected = list(range(10 * seed + 1, 10 * seed + 11))
        assert [[one["position"] for one in answer] for answer in said] == [expected] * 3
        words = sorted(answer[0]["answer"] for answer in said)
        assert words == ["duplicate", "duplicate", "stored"]
    assert positions() == list(range(1, 51))


class Reader:
    """Polls after the last position it saw, as a phone's cursor does; what it skipped it would never see again."""

    def __init__(self) -> None:
        self.seen: list[int] = []
        self.gaps = 0

    def poll(self) -> None:
        query = text("SELECT position FROM journal WHERE position > :last ORDER BY position")
        with reading() as connection:
            last = self.seen[-1] if self.seen else 0
            for position in connection.execute(query, {"last": last}).scalars():
                self.gaps += position != last + 1
                last = position
                self.seen.append(position)


def write_for_a_while(record: Flask, work: Callable[[Phone], None]) -> Reader:
    """Four writers until the time is over, one reader polling all along and once more at the end."""
    until, reader = time.monotonic() + WRITING_S, Reader()

    def write(seed: int) -> None:
        phone = Phone(100 + seed)
        with record.app_context():
            while time.monotonic() < until:
                work(phone)

    with ThreadPoolExecutor(WRITERS) as pool:
        writers = [pool.submit(write, seed) for seed in range(WRITERS)]
        while not all(writer.done() for writer in writers):
            reader.poll()
            time.sleep(0.005)
        for writer in writers:
            writer.result()
    reader.poll()
    return reader


def test_four_writers_and_a_reader_miss_nothing(record: Flask) -> None:
    def work(phone: Phone) -> None:
        said = push(record, phone, phone.pairs(*[phone.patient() for _ in range(5)]))
        assert [one["answer"] for one in said] == ["stored"] * 5

    reader = write_for_a_while(record, work)
    there = positions()
    assert len(there) > 50
    assert there == list(range(1, len(there) + 1))
    assert (reader.gaps, reader.seen) == (0, there)


def test_a_failed_transaction_leaves_no_hole(record: Flask) -> None:
    phone = Phone()
    first, second = phone.pairs(phone.patient()), phone.pairs(phone.patient())
    push(record, phone, first)
    with pytest.raises(RuntimeError), practice_room(PRACTICE) as room:
        room.connection.execute(text("UPDATE head SET position = 99"))
        raise RuntimeError
    assert push(record, phone, second)[0]["position"] == 2
