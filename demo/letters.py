"""Makes letters out of the invented practice, and bundles out of the letters, as small as a push may be.

The same practice, person and day give the same bytes every time: ids are derived from what they name, chance has a seed, and every
time hangs on that day. The assessment in each letter is worked out by the rules, never written by hand.
"""

from __future__ import annotations

import hashlib
import json
from datetime import date, timedelta
from typing import Any

from demo.animals import Animal, Facts
from demo.practice import ANIMALS
from demo.practice.bags import BAGS
from demo.visits import DAY_MS, EPOCH, OFFSET_MIN, RULES, ZONE, began_ms, born_on_day, measured, monday_of
from quietcuff.sync.bundle import PUSH, write_bundle

Letter = dict[str, Any]
BAGS_WEEKS_AGO = 105
WRITTEN_DOWN_MS, FILED_MS = 600_000, 90_000  # before an animal's first visit; after a visit's last reading


def id_of(name: str, at_ms: int) -> str:
    """A version 7 UUID (RFC 9562) whose random part is derived from a name."""
    chance = int.from_bytes(hashlib.sha256(name.encode()).digest()[:10])
    whole = at_ms << 80 | 0x7 << 76 | (chance >> 64 & 0xFFF) << 64 | 0b10 << 62 | (chance & (1 << 62) - 1)
    text = f"{whole:032x}"
    return "-".join((text[:8], text[8:12], text[12:16], text[16:20], text[20:]))


PHONE = id_of("the demo's phone", 1_740_816_000_000)


def bundles_of(practice: str, author: str, today: date) -> list[bytes]:
    """Every letter of the demo for `practice`, stated by the person `author`, in bundles of one push each, in order."""
    entries = []
    for number, letter in enumerate(letters(author, today), start=1):
        line = json.dumps(letter, ensure_ascii=False, separators=(",", ":")).encode()
        entries.append(({"device": PHONE, "number": number, "sha": hashlib.sha256(line).hexdigest()}, line))
    header = {"practice": practice, "device": PHONE, "build": "demo"}
    return [write_bundle(header, entries[at : at + PUSH.entries]) for at in range(0, len(entries), PUSH.entries)]


def letters(author: str, today: date) -> list[Letter]:
    """What `author` states, in the order of time, in a practice whose last visits lie in the week before `today`'s."""
    base = monday_of(today)
    made = [_bag(bag, base) for bag in BAGS]
    for place, animal in enumerate(ANIMALS):
        made += _of(animal, place, base)
    made.sort(key=lambda letter: (letter["made_at_ms"], letter["id"]))
    # a phone that was in reach each time: it had seen all that was filed before
    stated = {"author": author, "zone": ZONE, "offset_min": OFFSET_MIN, "schema": 1}
    return [{**letter, **stated, "basis": basis} for basis, letter in enumerate(made)]


def _of(animal: Animal, place: int, base: date) -> list[Letter]:
    """The animal as it was first written down, its visits, and what was written anew about it."""
    first_ms = began_ms(animal, animal.visits[0].weeks_ago, base, place) - WRITTEN_DOWN_MS
    patient = id_of(animal.name, first_ms)
    body = _patient(animal, base)
    made: list[Letter] = [{"id": patient, "kind": "patient", "made_at_ms": first_ms, "body": body}]
    for visit, measurement, assessment in measured(animal, place, base):
        at_ms = measurement["started_at_ms"] + 1000 * _last_s(measurement) + FILED_MS
        made.append({"id": id_of(f"{animal.name}, {visit.weeks_ago}", at_ms), "kind": "measurement", "made_at_ms": at_ms, "rules": RULES,
                     "assessment": assessment, "body": {"patient": patient, **measurement}})
    for later in animal.later:
        at_ms = began_ms(animal, later.weeks_ago, base, place)
        made.append({"id": id_of(f"{animal.name} anew, {later.weeks_ago}", at_ms), "kind": "patient", "made_at_ms": at_ms,
                     "amends": patient, "reason": later.reason, "body": {**body, **later.patient}})
    return made


def _last_s(measurement: Facts) -> int:
    """Seconds from its beginning to its last reading; 0 where there is none."""
    return max((one["taken_s"] for placed in measurement["sets"] for one in placed["readings"]), default=0)


def _patient(animal: Animal, base: date) -> Facts:
    body = dict(animal.patient)
    born = born_on_day(animal, base)
    if born is not None:
        body["born_on_day"] = born
    if "sites_not_used" in body:
        body["sites_not_used"] = [_dated(site, "until_days", "until_day", base, 1) for site in body["sites_not_used"]]
    return body


def _bag(bag: Facts, base: date) -> Letter:
    made_at_ms = (base - EPOCH - timedelta(weeks=BAGS_WEEKS_AGO)).days * DAY_MS
    body = {name: [_dated(thing, "checked_days_ago", "checked_on_day", base, -1) for thing in value] if name != "name" else value
            for name, value in bag.items()}
    return {"id": id_of(bag["name"], made_at_ms), "kind": "bag", "made_at_ms": made_at_ms, "body": body}


def _dated(thing: Facts, days: str, day: str, base: date, sign: int) -> Facts:
    """The thing with a day instead of a number of days from the base."""
    rest = {name: value for name, value in thing.items() if name != days}
    return {**rest, day: (base - EPOCH).days + sign * thing[days]} if days in thing else rest
