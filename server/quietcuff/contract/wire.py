"""Is a document what the wire schema says? The first problem, the same on the server and on the phone.

Answers a JSON Pointer and a code. Must never change the document, nor judge it by what a rule would say.
"""

import re
from functools import cache
from typing import Any, NamedTuple

from quietcuff.contract.compile_schema import Check, compile_schema
from quietcuff.contract.shared_files import read_shared_json, shared_folder


class Problem(NamedTuple):
    """`path` is a JSON Pointer ("" is the whole document), `why` a code with a sentence `why-…` in words/en.ftl."""

    path: str
    why: str


def is_known(name: str) -> bool:
    """Whether there is a wire schema of this name, such as `measurement.1`; any text may be asked."""
    has_form = re.fullmatch(r"[a-z_]+\.[1-9][0-9]*", name, re.ASCII) is not None
    return has_form and (shared_folder() / "wire" / (name + ".json")).is_file()


def wire_schema(name: str) -> dict[str, Any]:
    """The schema as it stands in the file. Raises KeyError for an unknown name."""
    if not is_known(name):
        raise KeyError(f"no wire schema {name!r}")
    return read_shared_json(f"wire/{name}.json")


@cache
def compiled(name: str) -> Check:
    """The one check of a named schema, compiled once. Raises KeyError (unknown) or SchemaError (not of our kind)."""
    return compile_schema(wire_schema(name), lambda file_name: compiled(file_name.removesuffix(".json")))


def check(name: str, document: Any) -> Problem | None:
    """The first problem of a document, or None.

    Order: the type; unknown keys (the smallest by code point); required keys; then the properties, each in the
    schema's order, depth first. Raises KeyError for an unknown schema name.
    """
    found = compiled(name)(document)
    return Problem(*found) if found else None


def check_measurement(document: Any) -> Problem | None:
    """`check` of a measurement.1, then what no schema can say: ids unique, then numbers or `beyond` in each reading."""
    return check("measurement.1", document) or _check_readings(document)


# A reading that carries `beyond` is an attempt without a number; any of these would contradict it.
_NUMBERS = frozenset({"systolic_mmhg", "mean_mmhg", "diastolic_mmhg", "pulse_bpm", "palpated_bpm"})


def _check_readings(document: dict[str, Any]) -> Problem | None:
    """Ids of the whole measurement first, as the phone does: of two faults both must name the same one."""
    readings = [
        (f"/sets/{set_index}/readings/{index}", reading)
        for set_index, one_set in enumerate(document["sets"])
        for index, reading in enumerate(one_set["readings"])
    ]
    seen: set[str] = set()
    for path, reading in readings:
        if reading["id"] in seen:
            return Problem(f"{path}/id", "id_twice")
        seen.add(reading["id"])
    found = ((path, _numbers_xor_beyond(reading)) for path, reading in readings)
    return next((Problem(path, why) for path, why in found if why), None)


def _numbers_xor_beyond(reading: dict[str, Any]) -> str | None:
    if "beyond" in reading:
        return None if reading.keys().isdisjoint(_NUMBERS) else "numbers_and_beyond"
    return None if "systolic_mmhg" in reading else "neither_numbers_nor_beyond"
