"""Every label, icon, colour and coded shape has a row that says where it comes from; no row speaks of what is not there.

Where each comes from is a person's judgement and stands in shared_schemas/words/origins.json. What fails here is printed ready to be
put into the row whose clause is true of it.
"""

from __future__ import annotations

import json
from collections import Counter
from typing import Any

import pytest

from tests.architecture.tree import SHARED
from tests.design import labels

ORIGINS = SHARED / "words" / "origins.json"
THERE = {"labels": labels.labels, "icons": labels.icons, "colours": labels.colours, "shapes": labels.shapes}


def origins() -> dict[str, Any]:
    """The list as it stands."""
    return json.loads(ORIGINS.read_text(encoding="utf-8"))


def without_a_row(kind: str, listed: dict[str, Any]) -> list[str]:
    """Ids of what is there and has no row."""
    return sorted(THERE[kind]() - {name for row in listed[kind] for name in row["ids"]})


def without_a_label(kind: str, listed: dict[str, Any]) -> list[str]:
    """Ids in rows of what is not there any more."""
    return sorted({name for row in listed[kind] for name in row["ids"]} - THERE[kind]())


@pytest.mark.parametrize("kind", THERE)
def test_each_has_a_row_and_each_row_has_one(kind: str) -> None:
    """Both ways, and none in two rows."""
    listed = origins()
    missing, gone = without_a_row(kind, listed), without_a_label(kind, listed)
    assert not missing, f"put these into a row of {kind}: " + ", ".join(f'"{name}"' for name in missing)
    assert not gone, f"take these out of the rows of {kind}: " + ", ".join(gone)
    twice = [name for name, count in Counter(name for row in listed[kind] for name in row["ids"]).items() if count > 1]
    assert twice == []


@pytest.mark.parametrize("kind", THERE)
def test_each_row_says_where_from_and_why(kind: str) -> None:
    """One of three origins and a clause that says something."""
    for row in origins()[kind]:
        assert row["from"] in {"trade", "standard", "ours"}
        assert len(row["why"].split()) >= 5 and row["ids"], row


def test_labels_are_seen() -> None:
    """Short messages are labels in each of their variants; sentences are none, and a category is one at any length."""
    assert labels.is_label("Add animal") and labels.is_label("{ $n ->\n    [one] 1 reading\n   *[other] { $n } readings\n }")
    assert not labels.is_label("Nothing waits on this phone.") and not labels.is_label("a b c d e f g") and not labels.is_label("{ $n }")
    found = labels.labels()
    assert {"set-aside", "category-low", "verdict-steady", "sync-stored", "firmness-firm", "demeanour-tense"} <= found
    assert not {"care-support", "why-missing", "error-not-found"} & found


def test_a_forgotten_label_and_an_empty_row_are_seen() -> None:
    """Taken out of the list, and put in without being there."""
    listed = origins()
    before = {*without_a_row("labels", listed), *without_a_label("labels", listed)}
    for row in listed["labels"]:
        row["ids"] = [name for name in row["ids"] if name != "category-low"]
    listed["labels"][0]["ids"].append("category-purple")
    assert set(without_a_row("labels", listed)) - before == {"category-low"}
    assert set(without_a_label("labels", listed)) - before == {"category-purple"}
