"""Projections hold nothing of their own: replayed they are the same, and in any order; a planted difference is seen."""

from __future__ import annotations

from random import Random

import pytest
from flask import Flask
from sqlalchemy import text

from quietcuff.record import bags, journal, measurements, patients, projections
from quietcuff.record.database import found_practice, practice_room, reading, writing
from quietcuff.record.rebuild import rebuild_all, rebuild_practice, row_prints
from quietcuff.sync.receive import receive
from tests.sync.letters import NOW_MS, Phone, answers, bundle

PRACTICE = "01890000-0000-7000-8000-000000000001"
OTHER = "01890000-0000-7000-8000-000000000002"
NOTHING_DIFFERS = {"patients": 0, "measurements": 0, "bags": 0}


@pytest.fixture
def phone(record: Flask) -> Phone:
    """A phone that has filed, in two practices: animals, amendments, measurements before and after their animal."""
    phone = Phone()
    with writing() as orm:
        found_practice(orm, PRACTICE, "P", NOW_MS)
        found_practice(orm, OTHER, "Q", NOW_MS)
    late, early = phone.patient("Late"), phone.patient("Early")
    first = phone.measurement(early["id"])
    wrong = phone.measurement(early["id"])
    wrong["assessment"] = {**wrong["assessment"], "firmness": "other"}
    letters = [phone.measurement(late["id"]), early, first, wrong, phone.patient("Newer", amends=early["id"])]
    letters += [phone.measurement(early["id"], amends=first["id"]), late, phone.patient("Newest", amends=early["id"])]
    van = phone.bag("Van")
    letters += [phone.bag("Van, repacked", amends=van["id"]), van]
    for practice in (PRACTICE, OTHER):
        _, said = answers(receive(practice, phone.device, bundle(phone.pairs(*letters)), None, NOW_MS))
        assert [one["answer"] for one in said] == ["stored"] * len(letters)
    return phone


def prints(practice: str = PRACTICE) -> list[dict[str, str]]:
    with reading() as connection:
        return [row_prints(connection, table, practice) for table in projections.TABLES]


def test_replaying_the_journal_gives_the_same_rows(phone: Phone, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("quietcuff.record.rebuild.PAGE_ENTRIES", 3)
    before = prints()
    assert [len(table) for table in before] == [2, 3, 1]
    said: list[str] = []
    assert rebuild_all(said.append) == 0
    assert prints() == before
    assert len(said) == 6


def test_a_letter_is_read_again_as_it_was_read_first(record: Flask) -> None:
    """Whole floats (140.0) are whole numbers in this format: a stranger's letter may write them so."""
    phone = Phone(7)
    with writing() as orm:
        found_practice(orm, PRACTICE, "P", NOW_MS)
    letter = phone.measurement(phone.uuid())
    letter |= {"made_at_ms": float(letter["made_at_ms"]), "assessment": {**letter["assessment"], "result_set": 0.0}}
    receive(PRACTICE, phone.device, bundle(phone.pairs(letter)), None, NOW_MS)
    before = prints()
    assert {one.table: len(one.differing) for one in rebuild_practice(PRACTICE)} == NOTHING_DIFFERS
    assert prints() == before


@pytest.mark.parametrize(
    ("table", "plant"),
    [
        ("patients", "UPDATE patients SET name = 'Planted' WHERE practice = :p AND name = 'Newest'"),
        ("patients", "DELETE FROM patients WHERE practice = :p AND name = 'Newest'"),
        ("bags", "UPDATE bags SET body = '{}' WHERE practice = :p"),
        ("bags", "DELETE FROM bags WHERE practice = :p"),
        ("measurements", "UPDATE measurements SET differs = 1 - differs WHERE practice = :p AND amended = 1"),
        (
            "measurements",
            "INSERT INTO measurements SELECT practice, 'planted', position, amended, author, patient, species, made_at_ms,"
            " started_at_ms, rules, phone_assessment, server_assessment, differs, category"
            " FROM measurements WHERE practice = :p AND amended = 1",
        ),
    ],
)
def test_a_planted_difference_is_seen_and_mended(phone: Phone, table: str, plant: str) -> None:
    before = prints()
    with writing() as orm:
        orm.execute(text(plant), {"p": PRACTICE})
    assert prints() != before
    differing = {one.table: len(one.differing) for one in rebuild_practice(PRACTICE)}
    assert differing == {**NOTHING_DIFFERS, table: 1}
    assert prints() == before
    assert rebuild_all(lambda line: None) == 0


def test_the_order_in_which_entries_are_told_makes_no_difference(phone: Phone) -> None:
    before = prints()
    for seed in range(20):
        with practice_room(PRACTICE) as room:
            for table in projections.TABLES:
                room.connection.execute(table.delete().where(table.c.practice == PRACTICE))
            told = journal.letters_read(journal.entries_between(room.connection, PRACTICE, 0, room.position))
            Random(seed).shuffle(told)
            for one in told:
                projections.apply_all(room.connection, PRACTICE, [one])
        assert prints() == before


def test_the_latest_amendment_stands(phone: Phone) -> None:
    with reading() as connection:
        names = [(one["name"], one["amended"]) for one in patients.all_patients(connection, PRACTICE)]
    assert names == [("Late", 0), ("Newest", 1)]


def test_a_bag_has_the_whole_body_of_its_latest_letter_and_no_other_practice_sees_it(record: Flask) -> None:
    phone = Phone(8)
    with writing() as orm:
        found_practice(orm, PRACTICE, "P", NOW_MS)
        found_practice(orm, OTHER, "Q", NOW_MS)
    van, attic = phone.bag("Van"), phone.bag("Attic \x00")
    repacked = phone.letter("bag", {"name": "Van", "cuffs": [{"width_mm": 30}]}, amends=van["id"], reason="one lost")
    receive(PRACTICE, phone.device, bundle(phone.pairs(van, attic, repacked)), None, NOW_MS)
    with reading() as connection:
        found = [(one["bag"], one["name"], one["body"], one["amended"]) for one in bags.all_bags(connection, PRACTICE)]
        assert bags.all_bags(connection, OTHER) == []
    kept_attic = (attic["id"], "Attic \ufffd", attic["body"], 0)
    assert found == [kept_attic, (van["id"], "Van", {"name": "Van", "cuffs": [{"width_mm": 30}]}, 1)]


def test_a_measurement_before_its_patient_dangles_until_the_patient_comes(record: Flask) -> None:
    phone = Phone(5)
    with writing() as orm:
        found_practice(orm, PRACTICE, "P", NOW_MS)
        found_practice(orm, OTHER, "Q", NOW_MS)
    cat = phone.patient()
    measured = phone.measurement(cat["id"])
    receive(PRACTICE, phone.device, bundle(phone.pairs(measured)), None, NOW_MS)
    receive(OTHER, phone.device, bundle(phone.pairs(cat)), None, NOW_MS)  # another practice's animal is not this one
    with reading() as connection:
        [waiting] = measurements.dangling_measurements(connection, PRACTICE)
        assert (waiting["measurement"], waiting["dangling"]) == (measured["id"], True)
        assert patients.all_patients(connection, PRACTICE) == []
    receive(PRACTICE, phone.device, bundle(phone.pairs(cat)), None, NOW_MS)
    with reading() as connection:
        assert measurements.dangling_measurements(connection, PRACTICE) == []
        [found] = measurements.measurements_of(connection, PRACTICE, cat["id"])
    assert found == {**waiting, "dangling": False}


def test_an_amendment_stands_over_its_original_even_when_that_arrives_after_it(record: Flask) -> None:
    """So it is when phones offer a restored server again what it had lost."""
    phone = Phone(6)
    with writing() as orm:
        found_practice(orm, PRACTICE, "P", NOW_MS)
    cat = phone.patient("Misheard")
    for letter in (phone.patient("Right", amends=cat["id"]), cat):
        receive(PRACTICE, phone.device, bundle(phone.pairs(letter)), None, NOW_MS)
    with reading() as connection:
        [seen] = patients.all_patients(connection, PRACTICE)
    assert (seen["patient"], seen["name"], seen["amended"], seen["position"]) == (cat["id"], "Right", 1, 1)
