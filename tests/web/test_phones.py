"""How long a sign-in and a phone's own cookie hold, and whose phone it is: reading ends early, handing in hardly ever.

Twelve hours idle and thirty days at most are the project's choice within what NIST SP 800-63B allows (from memory).
"""

from __future__ import annotations

import re
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from threading import Barrier, BrokenBarrierError, get_ident

import pytest

from quietcuff.record import credentials, people
from quietcuff.record.database import writing
from tests.sync.letters import Phone as Letters
from tests.sync.letters import answers, bundle
from tests.web.house import PASSWORD, House

EMPTY = b'{"bundle":1,"count":0}\n'

# --- how long they hold -----------------------------------------------------------------------------------------------


def test_a_sign_in_ends_when_idle_for_twelve_hours(any_house: House) -> None:
    """Used in between it goes on; handing in goes on in any case."""
    phone = any_house.phone("nurse")
    for _ in range(3):
        any_house.clock.move(hours=11, minutes=59)
        assert phone.call("GET", "/api/1/me").status_code == 200
    any_house.clock.move(hours=12)
    ended = phone.call("GET", "/api/1/me")
    assert ended.status_code == 401 and ended.json is not None and ended.json["code"] == "sign_in_needed"
    assert phone.pull().status_code == 401
    assert phone.push(EMPTY).status_code == 200


def test_a_sign_in_ends_after_thirty_days(house: House) -> None:
    """However often it is used."""
    phone = house.phone("nurse")
    for _ in range(30 * 4 - 1):
        house.clock.move(hours=6)
        assert phone.call("GET", "/api/1/me").status_code == 200
    house.clock.move(hours=6)
    assert phone.call("GET", "/api/1/me").status_code == 401


def test_a_phone_hands_in_for_180_days_after_its_last_contact(any_house: House) -> None:
    """A contact begins the time anew, in the browser as well; later, signing in opens it again, as the same."""
    phone = any_house.phone("nurse")
    any_house.clock.move(days=179)
    contact = phone.push(EMPTY)
    assert contact.status_code == 200
    assert "Max-Age=34560000" in contact.headers["Set-Cookie"] and "__Host-device=" in contact.headers["Set-Cookie"]
    any_house.clock.move(days=179, hours=23)
    assert phone.push(EMPTY).status_code == 200
    any_house.clock.move(days=180)
    assert phone.call("GET", "/api/1/me").status_code == 401
    before = phone.id
    letters = Letters()
    late, later = letters.pairs(letters.patient("Late"), letters.patient("Later"))
    assert [one["code"] for one in answers(phone.push(bundle([late])).data)[1]] == ["device_expired"]
    phone.sign_in("nurse")
    assert phone.id == before
    assert [one["answer"] for one in answers(phone.push(bundle([late, later])).data)[1]] == ["stored", "stored"]


def test_signing_out(any_house: House) -> None:
    """Ends reading at once, for a copy of the cookie too; the phone goes on handing in."""
    phone = any_house.phone("nurse")
    token = phone.cookie("__Host-sign_in")
    answer = phone.call("POST", "/api/1/sign-out")
    assert answer.status_code == 204 and phone.cookie("__Host-sign_in") is None
    assert token is not None
    phone.client.set_cookie("__Host-sign_in", token)
    assert phone.call("GET", "/api/1/me").status_code == 401
    assert phone.push(EMPTY).status_code == 200
    assert any_house.phone().call("POST", "/api/1/sign-out").status_code == 204


def test_signing_in_anew_ends_the_earlier_sign_in_of_this_phone(house: House) -> None:
    """One phone, one person at a time."""
    phone = house.phone("nurse")
    phone.sign_in("student")
    assert house.rows("SELECT person FROM sign_ins") == [(house.people["student"],)]


def test_a_sign_in_counts_on_its_own_phone_only(house: House) -> None:
    """A sign-in's cookie beside another phone's proves nothing."""
    one, other = house.phone("nurse"), house.phone("student")
    token = one.cookie("__Host-sign_in")
    assert token is not None
    other.client.set_cookie("__Host-sign_in", token)
    assert other.call("GET", "/api/1/me").status_code == 401


def test_who_left_is_out(any_house: House) -> None:
    """No reading, no signing in, with the answer that a wrong password gets; what waits is still handed in."""
    phone = any_house.phone("nurse")
    with any_house.app.app_context(), writing() as orm:
        people.leave(orm, any_house.people["nurse"], any_house.clock.ms)
    assert phone.call("GET", "/api/1/me").status_code == 401
    again = phone.sign_in("nurse")
    assert again.status_code == 401 and again.json is not None and again.json["code"] == "sign_in_wrong"
    assert phone.push(EMPTY).status_code == 200


def test_a_sign_in_begun_while_somebody_was_leaving_opens_nothing(any_house: House) -> None:
    """The row of a sign-in survived the leaving (it was written at the same moment): it is looked at each time."""
    phone = any_house.phone("nurse")
    with any_house.app.app_context(), writing() as orm:
        orm.get(people.Person, any_house.people["nurse"]).left_at_ms = any_house.clock.ms
    assert any_house.rows("SELECT count(*) FROM sign_ins") == [(1,)]
    assert phone.call("GET", "/api/1/me").status_code == 401 and phone.pull().status_code == 401


# --- whose phone it is ------------------------------------------------------------------------------------------------


def test_a_phone_proposes_its_own_id(any_house: House) -> None:
    """A new id is taken as it is; the same phone keeps it and its token, whoever of the practice signs in."""
    phone = any_house.phone()
    proposed = phone.id
    phone.sign_in("nurse")
    token = phone.cookie("__Host-device")
    phone.sign_in("student")
    assert phone.id == proposed and phone.cookie("__Host-device") == token
    assert any_house.rows("SELECT id, person FROM devices") == [(proposed, any_house.people["student"])]


def test_the_id_of_a_phone_elsewhere_is_not_given(any_house: House) -> None:
    """Another practice's phone is not taken over, and the answer does not say that it exists."""
    theirs = any_house.phone("south")
    phone = any_house.phone()
    phone.id = theirs.id
    assert phone.sign_in("nurse").status_code == 200
    assert phone.id != theirs.id and phone.practice == any_house.north
    assert theirs.push(EMPTY).status_code == 200


def test_a_double_tap_is_one_phone(any_house: House, monkeypatch: pytest.MonkeyPatch) -> None:
    """Two sign-ins of a new phone at the same moment: both go well, there is one phone.

    Each waits a moment between looking for the phone and adding it, where the other would do the same if it could.
    """
    proposed, meeting, met, new_token = any_house.phone().id, Barrier(2), set(), credentials.new_token

    def token_after_meeting() -> str:
        if get_ident() not in met:
            met.add(get_ident())
            with suppress(BrokenBarrierError):
                meeting.wait(0.5)
        return new_token()

    def tap(_: int) -> tuple[int, str]:
        phone = any_house.phone()
        phone.id = proposed
        return phone.sign_in("nurse").status_code, phone.id

    monkeypatch.setattr(credentials, "new_token", token_after_meeting)
    with ThreadPoolExecutor(2) as pool:
        assert set(pool.map(tap, range(2))) == {(200, proposed)}
    assert any_house.rows("SELECT id FROM devices") == [(proposed,)]


def test_without_a_proposal_an_id_is_made(house: House) -> None:
    """A first sign-in from anything."""
    answer = house.phone().call("POST", "/api/1/sign-in", json={"login": "nurse", "password": PASSWORD})
    assert answer.json is not None and re.fullmatch(r"[0-9a-f-]{36}", answer.json["device"])


def test_a_lost_answer_locks_no_phone_out(any_house: House) -> None:
    """The answer with a newer cookie is lost: the earlier one works until the newer is used, and then no more."""
    phone = any_house.phone("nurse")
    earlier = phone.cookie("__Host-device")
    assert earlier is not None
    copy = any_house.phone()
    copy.id = phone.id
    copy.sign_in("nurse")
    assert copy.id == phone.id and copy.cookie("__Host-device") != earlier
    assert phone.push(EMPTY).status_code == 200
    any_house.clock.move(hours=2)
    assert copy.push(EMPTY).status_code == 200
    assert phone.push(EMPTY).status_code == 401


def test_a_revoked_phone(any_house: House) -> None:
    """It reads nothing and files nothing; its id is not given again."""
    phone = any_house.phone("nurse")
    with any_house.app.app_context(), writing() as orm:
        credentials.revoke_device(orm, phone.id, any_house.clock.ms)
    assert any_house.rows("SELECT count(*) FROM sign_ins") == [(0,)]
    assert phone.call("GET", "/api/1/me").status_code == 401
    assert phone.pull().status_code == 401
    before = phone.id
    phone.sign_in("nurse")
    assert phone.id != before


def test_a_sign_in_begun_while_its_phone_was_revoked_opens_nothing(any_house: House) -> None:
    """The row of a sign-in survived the revoking (it was written at the same moment): the phone is looked at each time."""
    phone = any_house.phone("nurse")
    with any_house.app.app_context(), writing() as orm:
        orm.get(people.Device, phone.id).revoked_at_ms = any_house.clock.ms
    assert any_house.rows("SELECT count(*) FROM sign_ins") == [(1,)]
    assert phone.call("GET", "/api/1/me").status_code == 401 and phone.pull().status_code == 401


def test_what_a_revoked_phone_hands_in_is_held(any_house: House) -> None:
    """Entry by entry, in the tray for a person, with its bytes; what was filed before is said to be there."""
    phone, letters = any_house.phone("nurse"), Letters()
    before, after, poor = letters.pairs(letters.patient("Before"), letters.patient("After"), b"{}")
    assert phone.push(bundle([before])).status_code == 200
    with any_house.app.app_context(), writing() as orm:
        credentials.revoke_device(orm, phone.id, any_house.clock.ms)
    first, lines = answers(phone.push(bundle([before, after, poor])).data)
    assert [(one["answer"], one.get("code")) for one in lines] == [
        ("duplicate", None), ("held", "device_revoked"), ("refused", "schema_invalid")]
    assert first["head"] == 1
    held = any_house.rows("SELECT letter FROM tray WHERE state = 'held' AND code = 'device_revoked'")
    assert [bytes(letter) for (letter,) in held] == [after[1]]


def test_an_invented_cookie_is_nobody(house: House) -> None:
    """Neither a random token nor an enormous one."""
    for token in (credentials.new_token(), "x" * 3000, ""):
        phone = house.phone()
        phone.practice = house.north
        phone.client.set_cookie("__Host-device", token)
        phone.client.set_cookie("__Host-sign_in", token)
        assert phone.push(EMPTY).status_code == 401 and phone.pull().status_code == 401
