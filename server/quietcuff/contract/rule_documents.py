"""The rule documents: read once, and refused unless each has the one shape of shared_schemas/rule.schema.json.

Answers a rule set as the engines take it. Must never carry a number, nor know what a rule does with one.
"""

import re
from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any

from quietcuff.contract.shared_files import read_shared_json, shared_folder

KEYS = ("rule", "numbers", "choices", "may_change", "sources")
SOURCE_KINDS = ("published", "common practice", "from memory", "project")
_NAME = re.compile(r"[a-z][a-z0-9_]*", re.ASCII)


class RuleDocumentError(ValueError):
    """A rule document is not in the one shape; the message says where and why, for whoever edits it."""


@cache
def rule_set(name: str = "v1") -> dict[str, Any]:
    """`{"name": name, "documents": {rule: document}}`, every document checked.

    The same object on each call: it is to be read, not changed. Raises KeyError for an unknown name and
    RuleDocumentError for a document out of shape.
    """
    folder = shared_folder() / "rules" / name
    if re.fullmatch(r"v[1-9][0-9]*", name, re.ASCII) is None or not folder.is_dir():
        raise KeyError(f"no rule set {name!r}")
    documents = {}
    for path in sorted(folder.glob("*.json")):
        document = read_shared_json(f"rules/{name}/{path.name}")
        check_rule_document(path.stem, document)
        documents[path.stem] = document
    return {"name": name, "documents": documents}


def check_rule_document(rule: str, document: Any) -> None:
    """Raise RuleDocumentError unless the document of that rule is in shape."""
    _demand(isinstance(document, dict) and set(document) == set(KEYS), rule, f"has the five keys {KEYS}")
    _demand(document["rule"] == rule and _is_name(rule), rule, "`rule` is the name of its file")
    for key in ("numbers", "choices", "may_change", "sources"):
        _demand(isinstance(document[key], dict), rule, f"`{key}` is an object")
    _demand(bool(document["numbers"]) and bool(document["sources"]), rule, "`numbers` and `sources` hold something")
    for pointer, value in _groups_and_leaves("/numbers", document["numbers"]):
        _demand(_is_number_group(value), rule, f"{pointer}: a whole number, a list of them or a named group")
    for pointer, value in _groups_and_leaves("/choices", document["choices"]):
        _demand(_is_name(value) or _is_group(value), rule, f"{pointer}: a word or a named group")
    _check_may_change(rule, document)
    _check_sources(rule, document)


def leaves(document: Mapping[str, Any]) -> dict[str, int | str]:
    """Every number and every choice of a document by its JSON Pointer, list entries one by one."""
    found: dict[str, int | str] = {}
    for key in ("numbers", "choices"):
        for pointer, value in _groups_and_leaves("/" + key, document[key]):
            if isinstance(value, list):
                found |= {f"{pointer}/{index}": entry for index, entry in enumerate(value)}
            elif not isinstance(value, dict):
                found[pointer] = value
    return found


def _demand(condition: bool, rule: str, message: str) -> None:
    if not condition:
        raise RuleDocumentError(f"rule document {rule}: {message}")


def _is_name(value: Any) -> bool:
    return isinstance(value, str) and _NAME.fullmatch(value) is not None


def _is_whole(value: Any) -> bool:
    return isinstance(value, int) and not isinstance(value, bool)


def _is_group(value: Any) -> bool:
    return isinstance(value, dict) and len(value) > 0 and all(map(_is_name, value))


def _is_number_group(value: Any) -> bool:
    is_list = isinstance(value, list) and len(value) > 0 and all(map(_is_whole, value))
    return _is_whole(value) or is_list or _is_group(value)


def _groups_and_leaves(pointer: str, group: Mapping[str, Any]) -> Iterator[tuple[str, Any]]:
    """Everything below a group, the groups themselves included; a list is one leaf here."""
    for name, value in group.items():
        yield f"{pointer}/{name}", value
        if isinstance(value, dict):
            yield from _groups_and_leaves(f"{pointer}/{name}", value)


def _check_may_change(rule: str, document: Mapping[str, Any]) -> None:
    """A practice replaces single numbers, and the rule's own number lies within the limits it is given."""
    found = leaves(document)
    for pointer, limits in document["may_change"].items():
        is_number = pointer.startswith("/numbers/") and pointer in found
        _demand(is_number, rule, f"may_change {pointer}: names one number that is there")
        is_pair = isinstance(limits, list) and len(limits) == 2 and all(map(_is_whole, limits))
        _demand(is_pair, rule, f"may_change {pointer}: two whole numbers")
        _demand(limits[0] <= found[pointer] <= limits[1], rule, f"may_change {pointer}: its own number is within")


def _check_sources(rule: str, document: Mapping[str, Any]) -> None:
    """Each source names something that is there, and no leaf is left without one, its own or a parent's."""
    there = {"/numbers", "/choices", *leaves(document)}
    for key in ("numbers", "choices"):
        there |= {pointer for pointer, _ in _groups_and_leaves("/" + key, document[key])}
    for pointer, source in document["sources"].items():
        _demand(pointer in there, rule, f"sources {pointer}: names something that is there")
        _demand(_is_source(source), rule, f"sources {pointer}: kind, why, and `read` where published")
    for pointer in leaves(document):
        steps = pointer.split("/")
        covering = {"/".join(steps[:length]) for length in range(2, len(steps) + 1)}
        _demand(not covering.isdisjoint(document["sources"]), rule, f"{pointer} has no source")


def _is_source(source: Any) -> bool:
    if not isinstance(source, dict) or source.get("kind") not in SOURCE_KINDS:
        return False
    is_published = source["kind"] == "published"
    if set(source) != ({"kind", "read", "why"} if is_published else {"kind", "why"}):
        return False
    is_read_said = not is_published or isinstance(source["read"], bool)
    return is_read_said and isinstance(source["why"], str) and source["why"] != ""
