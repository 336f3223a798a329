"""Signing in: right, wrong, too often; the two cookies and what is stored of them.

Figures from outside: argon2id m = 19 MiB, t = 2, p = 1 is the OWASP recommendation for storing passwords; a limit on
failures and no permanent lock by strangers are ASVS 5.0, 6.1.1 and 6.3.1 (numbers of the paragraphs from memory).
"""

from __future__ import annotations

import re
import threading
import time
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from types import SimpleNamespace

import pytest
from argon2 import extract_parameters
from argon2.low_level import Type

from quietcuff.config import Settings, SettingsRefused
from quietcuff.record import people
from quietcuff.record.database import writing
from quietcuff.record.passwords import Passwords
from quietcuff.web.sign_in import network_of
from tests.web.house import OURS, PASSWORD, House, Phone


def wrong(phone: Phone, login: str = "nurse") -> int:
    """One try with a wrong password; gives the status."""
    return phone.sign_in(login, "not the password").status_code


def test_who_is_signed_in(any_house: House) -> None:
    """Names, role and practice come with the sign-in, and again on asking."""
    phone = any_house.phone()
    told = phone.sign_in("veterinarian").json
    assert told is not None
    assert (told["practice"], told["practice_name"], told["role"]) == (any_house.north, "North", "veterinarian")
    assert (told["person"], told["device"]) == (any_house.people["veterinarian"], phone.id)
    assert told["server_time_ms"] == any_house.clock.ms
    assert phone.call("GET", "/api/1/me").json == told


@pytest.mark.parametrize("login", ["NURSE", "  nurse ", "ｎｕｒｓｅ"])
def test_a_login_may_be_written_in_other_ways(house: House, login: str) -> None:
    """Capitals, spaces around and full-width letters are the same login (Unicode NFKC and case folding)."""
    assert house.phone().sign_in(login).status_code == 200


def test_unknown_login_and_wrong_password_look_the_same(any_house: House, monkeypatch: pytest.MonkeyPatch) -> None:
    """The same body, and exactly one password hash computed in each case."""
    passwords = any_house.app.extensions["quietcuff"].passwords
    worked: list[str] = []
    verify = passwords._hasher.verify
    monkeypatch.setattr(passwords, "_hasher", Counting(verify, worked))
    for answer in (any_house.phone().sign_in("nobody", "x"), any_house.phone().sign_in("nurse", "x")):
        assert answer.status_code == 401 and answer.json is not None and answer.json["code"] == "sign_in_wrong"
        assert answer.headers.getlist("Set-Cookie") == []
    assert len(worked) == 2
    unknown, known = (extract_parameters(stored) for stored in worked)
    assert unknown == known


class Counting:
    """Stands where the hasher stands and notes each stored hash that was checked."""

    def __init__(self, verify, worked: list[str]) -> None:
        self._verify, self._worked = verify, worked

    def verify(self, stored: str, password: str) -> bool:
        self._worked.append(stored)
        return self._verify(stored, password)


def test_a_login_with_a_nought_is_nobody_on_both_databases(any_house: House) -> None:
    """PostgreSQL's text cannot hold U+0000, nor be asked for it: unguarded, this would be an error of the server."""
    assert any_house.phone().sign_in("nurse\0", "x").status_code == 401


def test_passwords_are_stored_as_owasp_recommends(house: House) -> None:
    """Read from the database, not from our settings."""
    for (stored,) in house.rows("SELECT password_hash FROM people"):
        used = extract_parameters(stored)
        assert used.type is Type.ID
        assert used.memory_cost >= 19 * 1024 and used.time_cost >= 2 and used.parallelism >= 1
        assert used.salt_len >= 16 and used.hash_len >= 32


def test_a_password_may_be_typed_on_another_keyboard(house: House) -> None:
    """One keyboard gives an accented letter as one character, another as two: the same password (Unicode NFC)."""
    composed, taken_apart = "caf\u00e9 in the evening", "cafe\u0301 in the evening"
    passwords = house.app.extensions["quietcuff"].passwords
    with house.app.app_context(), writing() as orm:
        orm.get(people.Person, house.people["nurse"]).password_hash = passwords.hash(composed)
    assert [house.phone().sign_in("nurse", one).status_code for one in (composed, taken_apart)] == [200, 200]
    assert house.phone().sign_in("nurse", "cafe in the evening").status_code == 401


def test_only_so_many_hashes_run_at_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """Eight passwords at the same moment, two allowed: never a third one beside them."""
    passwords, lock, running, most = Passwords(19_456, 2, 2), threading.Lock(), set(), []

    def watched(*_: str) -> bool:
        with lock:
            running.add(threading.get_ident())
            most.append(len(running))
        time.sleep(0.02)
        with lock:
            running.discard(threading.get_ident())
        return True

    monkeypatch.setattr(passwords, "_hasher", SimpleNamespace(hash=watched, verify=watched))
    with ThreadPoolExecutor(8) as pool:
        [*pool.map(lambda n: passwords.hash("x") if n % 2 else passwords.fits("stored", "x"), range(8))]
    assert max(most) == 2


def test_a_weaker_hash_is_made_anew_on_sign_in(house: House) -> None:
    """A password hashed with other parameters is hashed with today's as soon as it is known."""
    from argon2 import PasswordHasher
    old = PasswordHasher(time_cost=1, memory_cost=8192, parallelism=1).hash(PASSWORD)
    with house.app.app_context(), writing() as orm:
        orm.get(people.Person, house.people["nurse"]).password_hash = old
    house.phone("nurse")
    ((stored,),) = house.rows("SELECT password_hash FROM people WHERE login = 'nurse'")
    assert extract_parameters(stored).memory_cost >= 19 * 1024
    house.phone("nurse")


# --- too often --------------------------------------------------------------------------------------------------------


def test_five_failures_make_a_pause_of_fifteen_minutes(any_house: House) -> None:
    """The sixth try waits, with the right password too; a minute before the end still; at the end no longer."""
    phone = any_house.phone()
    assert [wrong(phone) for _ in range(5)] == [401] * 5
    paused = phone.sign_in("nurse")
    assert paused.status_code == 429 and paused.json is not None and paused.json["code"] == "too_many_tries"
    assert paused.headers["Retry-After"] == str(15 * 60)
    any_house.clock.move(minutes=15, ms=-1)
    late = phone.sign_in("nurse")
    assert late.status_code == 429 and late.headers["Retry-After"] == "1"
    any_house.clock.move(ms=1)
    assert phone.sign_in("nurse").status_code == 200


def test_tries_during_the_pause_do_not_prolong_it(house: House) -> None:
    """Nobody can keep somebody out for ever by trying on and on."""
    phone = house.phone()
    for _ in range(15):
        wrong(phone)
        house.clock.move(minutes=1)
    assert phone.sign_in("nurse").status_code == 200


def test_a_success_clears_what_was_counted(any_house: House) -> None:
    """Four failures, a success, and five more failures are possible before the pause."""
    phone = any_house.phone()
    assert [wrong(phone) for _ in range(4)] == [401] * 4
    assert phone.sign_in("nurse").status_code == 200
    assert [wrong(phone) for _ in range(6)] == [401] * 5 + [429]


def test_the_pause_is_for_one_login_from_one_network(house: House) -> None:
    """Another login, and the same login from elsewhere, go on."""
    phone = house.phone()
    for _ in range(6):
        wrong(phone)
    assert phone.sign_in("student").status_code == 200
    elsewhere = house.phone().sign_in("nurse", environ_overrides={"REMOTE_ADDR": "192.0.2.9"})
    assert elsewhere.status_code == 200


def test_an_unknown_login_is_paused_like_a_known_one(house: House) -> None:
    """Else the pause itself would tell who has an account."""
    phone = house.phone()
    assert [wrong(phone, "nobody") for _ in range(6)] == [401] * 5 + [429]


def test_many_tries_at_once_do_not_slip_through(any_house: House) -> None:
    """Twelve wrong passwords at the same moment: five are looked at, the others wait."""
    with ThreadPoolExecutor(12) as pool:
        statuses = list(pool.map(lambda _: wrong(any_house.phone()), range(12)))
    assert sorted(statuses) == [401] * 5 + [429] * 7


def test_what_was_typed_as_a_login_is_not_kept(house: House) -> None:
    """People type passwords into the wrong field; only a hash is stored, and goes after the window."""
    typed = "my secret pass phrase"
    wrong(house.phone(), typed)
    ((key, tries, _),) = house.rows("SELECT * FROM sign_in_tries")
    assert re.fullmatch("[0-9a-f]{64}", key) and tries == 1
    house.clock.move(minutes=16)
    wrong(house.phone(), "another")
    assert len(house.rows("SELECT * FROM sign_in_tries")) == 1


@pytest.mark.parametrize(("address", "network"), [
    ("192.0.2.7", "192.0.2.7"), ("::ffff:192.0.2.7", "192.0.2.7"), ("2001:db8:1:2:3::4", "2001:db8:1:2::/64"),
    ("2001:db8:1:2:ffff::9", "2001:db8:1:2::/64"), (None, "unknown"), ("x", "unknown")])
def test_network(address: str | None, network: str) -> None:
    """One IPv6 connection has a whole /64 (RFC 6177, common practice): each address of it counts as the same."""
    assert network_of(address) == network


# --- the cookies ------------------------------------------------------------------------------------------------------


def test_cookies(house: House) -> None:
    """RFC 6265bis, the `__Host-` prefix: Secure, Path=/, no Domain; and no script, no other site."""
    set_cookies = house.phone().sign_in("nurse").headers.getlist("Set-Cookie")
    assert {one.partition("=")[0] for one in set_cookies} == {"__Host-device", "__Host-sign_in"}
    for one in set_cookies:
        pair, *attributes = one.split("; ")
        assert {"Secure", "HttpOnly", "SameSite=Lax", "Path=/"} <= set(attributes)
        assert not any(attribute.lower().startswith("domain") for attribute in attributes)
        assert re.fullmatch(r"[A-Za-z0-9_-]{43}", pair.partition("=")[2]), "256 bits are 43 letters of base64url"


def test_tokens_are_stored_as_hashes_only(any_house: House) -> None:
    """No table holds a token; both differ each time."""
    tokens = [any_house.phone("nurse").cookie(name) for name in ("__Host-device", "__Host-sign_in") for _ in range(2)]
    assert len(set(tokens)) == 4
    everything = str([any_house.rows(f"SELECT * FROM {table}") for table in ("devices", "sign_ins", "people")])
    assert not any(token in everything for token in tokens if token)
    assert re.fullmatch("[0-9a-f]{64}", any_house.rows("SELECT token_sha FROM devices")[0][0])


def test_settings_weaker_than_owasp_are_refused() -> None:
    """A setting cannot make the hashes weaker than the recommendation."""
    with pytest.raises(SettingsRefused):
        Settings(argon2_memory_kib=19_455)
    with pytest.raises(SettingsRefused):
        Settings(argon2_passes=1)


@pytest.mark.parametrize(("proxies", "sixth"), [(0, 429), (1, 401)])
def test_a_forwarded_address_counts_only_behind_a_proxy(
    client_build: Path, sqlite_template: Path, tmp_path: Path, proxies: int, sixth: int
) -> None:
    """Without a proxy of ours a stranger could invent a new address for each try; with one, it names each phone."""
    database = tmp_path / "house.sqlite"
    database.write_bytes(sqlite_template.read_bytes())
    house = House(Settings(data=tmp_path, database=f"sqlite:///{database}", client=client_build, proxies=proxies))
    said = [{**OURS, "X-Forwarded-For": f"192.0.2.{last}"} for last in range(6)]
    statuses = [house.phone().sign_in("nurse", "wrong", headers=headers).status_code for headers in said]
    assert statuses == [401] * 5 + [sixth]
