"""Makes letters out of the invented animals and visits, and one bundle out of the letters.

The same practice and person give the same bytes every time: ids are derived from what they name, times are fixed. The
assessment in each letter is worked out by the rules, never written by hand.
"""

from __future__ import annotations

import hashlib
import json
from datetime import UTC, datetime
from typing import Any

from demo.animals import ANIMALS, Animal, Visit
from quietcuff.contract.rule_documents import rule_set
from quietcuff.rules.assess import assess
from quietcuff.sync.bundle import write_bundle

RULES = "v1"
ZONE, OFFSET_MIN = "UTC", 0
ADMITTED_AT = "2025-03-01T08:00"  # when all animals were written down


def ms_of(moment: str) -> int:
    """`2025-03-01T08:00` (UTC) as whole milliseconds."""
    return int(datetime.fromisoformat(moment).replace(tzinfo=UTC).timestamp()) * 1000


def id_of(name: str, at_ms: int) -> str:
    """A version 7 UUID (RFC 9562) whose random part is derived from a name."""
    chance = int.from_bytes(hashlib.sha256(name.encode()).digest()[:10])
    whole = at_ms << 80 | 0x7 << 76 | (chance >> 64 & 0xFFF) << 64 | 0b10 << 62 | (chance & (1 << 62) - 1)
    text = f"{whole:032x}"
    return "-".join((text[:8], text[8:12], text[12:16], text[16:20], text[20:]))


PHONE = id_of("the demo's phone", ms_of(ADMITTED_AT))


def bundle_of(practice: str, author: str) -> bytes:
    """Every letter of the demo as one bundle for `practice`, stated by the person `author`."""
    entries = []
    for number, letter in enumerate(letters(author), start=1):
        line = json.dumps(letter, ensure_ascii=False, separators=(",", ":")).encode()
        entries.append(({"device": PHONE, "number": number, "sha": hashlib.sha256(line).hexdigest()}, line))
    return write_bundle({"practice": practice, "device": PHONE, "build": "demo"}, entries)


def letters(author: str) -> list[dict[str, Any]]:
    """What the person `author` states: animals first, as a phone would file them, then the visits in the order of time."""
    visits = sorted(((visit, animal) for animal in ANIMALS for visit in animal.visits), key=lambda pair: pair[0].began)
    return [*(_patient(animal, author) for animal in ANIMALS), *(_measurement(visit, animal, author) for visit, animal in visits)]


def _patient_id(animal: Animal) -> str:
    return id_of(animal.patient["name"], ms_of(ADMITTED_AT))


def _patient(animal: Animal, author: str) -> dict[str, Any]:
    return {**_head(_patient_id(animal), "patient", author, ms_of(ADMITTED_AT)), "body": animal.patient}


def _measurement(visit: Visit, animal: Animal, author: str) -> dict[str, Any]:
    began_ms = ms_of(visit.began)
    body = {"patient": _patient_id(animal), "started_at_ms": began_ms, "species": animal.patient["species"], **visit.measured}
    if "born_on_day" in animal.patient:
        born = animal.patient["born_on_day"]
        body["age_months"] = (began_ms // 86_400_000 - born) * 12 // 365
    made_at_ms = began_ms + 1000 * (visit.last_reading_s + 90)  # filed a minute and a half after the last reading
    head = _head(id_of(f"{animal.patient['name']} {visit.began}", made_at_ms), "measurement", author, made_at_ms)
    return {**head, "rules": RULES, "assessment": assess(body, rule_set(RULES)), "body": body}


def _head(letter_id: str, kind: str, author: str, made_at_ms: int) -> dict[str, Any]:
    return {"id": letter_id, "kind": kind, "schema": 1, "author": author, "basis": 0, "made_at_ms": made_at_ms,
            "zone": ZONE, "offset_min": OFFSET_MIN}
