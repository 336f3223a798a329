"""Letters, envelopes and bundles as a phone of these tests makes them: seeded, so that a run can be repeated.

The bundle is put together here by hand, not by `sync/bundle.py`: a mistake of the format's writer must not hide one of
its reader.
"""

from __future__ import annotations

import gzip
import hashlib
import json
from random import Random
from typing import Any
from uuid import UUID

from quietcuff.contract.rule_documents import rule_set
from quietcuff.rules.assess import assess

NOW_MS = 1_790_000_000_000
Letter = dict[str, Any]
Pair = tuple[bytes, bytes]


def json_line(document: Any) -> bytes:
    """A document as UTF-8 bytes on one line."""
    return json.dumps(document, separators=(",", ":"), ensure_ascii=False).encode()


def bundle(pairs: list[Pair], **header: Any) -> bytes:
    """A bundle of envelope and letter lines; header keys may be given to spoil it."""
    lines = [json_line({"bundle": 1, "count": len(pairs), **header})]
    lines += [line for pair in pairs for line in pair]
    return b"\n".join(lines) + b"\n"


class Phone:
    """Makes letters like one phone; `number` counts what it filed."""

    def __init__(self, seed: int = 1) -> None:
        self.random = Random(seed)
        self.device = self.uuid()
        self.author = self.uuid()
        self.number = 0

    def uuid(self) -> str:
        """A version 7 UUID in form; its time means nothing."""
        return str(UUID(int=(self.random.getrandbits(128) & ~(0xF << 76) & ~(0x3 << 62)) | (7 << 76) | (2 << 62)))

    def letter(self, kind: str, body: dict[str, Any], **more: Any) -> Letter:
        """A letter of any kind; `more` adds or replaces keys."""
        return {
            "id": self.uuid(),
            "kind": kind,
            "schema": 1,
            "author": self.author,
            "basis": 0,
            "made_at_ms": NOW_MS - 60_000,
            "zone": "Europe/Vienna",
            "offset_min": 60,
            **more,
            "body": body,
        }

    def patient(self, name: str = "Mira", species: str = "cat", **more: Any) -> Letter:
        """An animal."""
        return self.letter("patient", {"species": species, "name": name}, **more)

    def bag(self, name: str = "Van bag", **more: Any) -> Letter:
        """A bag with two cuffs, a gauge and a machine; invented."""
        gauge = {"name": "Gauge 1", "type": "aneroid", "checked_on_day": 20_000}
        machine = {"name": "Machine 1", "validated_in": ["dog"], "validated_by": "Somewhere"}
        cuffs = [{"width_mm": 25, "mark": "red"}, {"width_mm": 40}]
        return self.letter("bag", {"name": name, "cuffs": cuffs, "gauges": [gauge], "machines": [machine]}, **more)

    def body(self, patient: str, readings: int = 8) -> dict[str, Any]:
        """One visit's work: one set of Doppler readings that agree more often than not."""
        level = self.random.randint(115, 190)
        return {
            "patient": patient,
            "started_at_ms": NOW_MS - 600_000,
            "species": "cat",
            "age_months": 120,
            "rest_s": 600,
            "place": "home",
            "demeanour": "calm",
            "sets": [
                {
                    "method": "doppler",
                    "site": "forearm",
                    "posture": "sternal",
                    "limb_circumference_mm": 90,
                    "cuff_width_mm": 30,
                    "readings": [
                        {
                            "id": f"r{index}",
                            "taken_s": 40 * index,
                            "systolic_mmhg": level + self.random.randint(-4, 4),
                            "pulse_bpm": 180 + self.random.randint(-3, 3),
                        }
                        for index in range(1, readings + 1)
                    ],
                }
            ],
        }

    def measurement(self, patient: str, **more: Any) -> Letter:
        """A measurement with the phone's own assessment, worked out by the same rules."""
        body = self.body(patient)
        return self.letter("measurement", body, **{"rules": "v1", "assessment": assess(body, rule_set("v1")), **more})

    def pair(self, letter: Letter | bytes, **envelope: Any) -> Pair:
        """Envelope and letter lines of one entry; takes the next number."""
        self.number += 1
        line = letter if isinstance(letter, bytes) else json_line(letter)
        about = {"device": self.device, "number": self.number, "sha": hashlib.sha256(line).hexdigest()}
        return json_line({**about, **envelope}), line

    def pairs(self, *letters: Letter | bytes) -> list[Pair]:
        """Several entries."""
        return [self.pair(letter) for letter in letters]


def zipped(body: bytes) -> bytes:
    """One gzip member."""
    return gzip.compress(body, mtime=0)


def answers(lines: bytes) -> tuple[dict[str, Any], list[dict[str, Any]]]:
    """An answer to a push: its first line and one a line after."""
    first, *rest = [json.loads(line) for line in lines.splitlines()]
    return first, rest
