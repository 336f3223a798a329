"""The whole main job on a phone without a network: a dog by Doppler, a cat by oscillometry, filed, and found in the record.

Truth is read from the server's database, not from a page. Prints the ids of the processes it kills.
Expected figures are worked by hand beside each animal; the animals are invented for this test.
"""

import json
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import expect

from tests.field import planted, work
from tests.field.phone import Phone
from tests.field.server_process import ServerProcess

NewPhone = Callable[..., Phone]


def measure_a_dog(phone: Phone) -> None:
    """Seven Doppler readings, the tab killed in the middle of the third, the last set aside because the dog moved."""
    work.add_animal(phone, "Dog", "Brammel", "kennel 4")
    phone.tap("Measure")
    work.set_up(phone, "Calm", "7", "Shelter")
    work.cuff(phone, "Doppler", "13", "20, 25, 30, 40, 50, 60", "50", "Forearm", "On its side")
    phone.tap("Show Readings")
    work.add_readings(phone, "168", "142")
    phone.type_number("13")
    expect(phone.page.get_by_label("Systolic", exact=True)).to_have_value("13")
    phone.kill_tab()
    expect(phone.page.get_by_label("Systolic", exact=True)).to_have_value("13")
    phone.tap("8")
    phone.tap("Add")
    work.add_readings(phone, "140", "136", "144", "190")
    phone.tap("Set aside")
    phone.tap("Moved")
    phone.tap("Finish")


def measure_a_cat(phone: Phone) -> None:
    """Six oscillometric readings with mean, diastolic and pulse."""
    work.add_animal(phone, "Cat", "Quill", "grey, flat 2")
    phone.tap("Measure")
    work.set_up(phone, "Tense", "12", "Home")
    work.cuff(phone, "Oscillometric", "8.5", "20, 25, 30, 40", "30", "Forearm", "In the lap")
    phone.tap("Show Readings")
    work.add_readings(phone, "182 139 110 200", "166 131 98 192", "164 130 97 190", "168 132 99 188", "165 129 96 190",
                      "167 133 100 190")
    phone.tap("Finish")


def file_and_go_back(phone: Phone) -> None:
    """File, then to the list of patients."""
    phone.tap("File")
    phone.page.get_by_role("heading", name="Round", exact=True).or_(
        phone.page.get_by_role("button", name="Measure", exact=True)).first.wait_for()
    phone.page.goto(phone.url + "/#/patients")
    phone.page.get_by_role("heading", name="Round", exact=True).wait_for()


def measured(server: ServerProcess) -> dict[str, tuple[dict, dict, dict]]:
    """By species: the body that was filed, the phone's assessment and the server's, from the database file."""
    question = """SELECT j.letter, m.phone_assessment, m.server_assessment FROM measurements m
                  JOIN journal j ON j.practice = m.practice AND j.position = m.position"""
    rows = [(json.loads(letter), json.loads(phones), json.loads(servers)) for letter, phones, servers in server.rows(question)]
    assert all(letter["assessment"] == phones for letter, phones, _ in rows), "the projection shows what the letter does not say"
    return {letter["body"]["species"]: (letter["body"], phones, servers) for letter, phones, servers in rows}


def test_a_dog_and_a_cat_without_a_network(server: ServerProcess, new_phone: NewPhone) -> None:
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    # the evening before: closed in order, since a browser writes cookies to disk only after half a minute
    phone.close()
    print("browser", phone.open())
    print("server killed", server.kill())
    print("browser killed", phone.kill())

    print("browser, cold, no network", phone.open(offline=True))
    phone.page.get_by_role("heading", name="Round", exact=True).wait_for()
    measure_a_dog(phone)
    # 142, 138, 140, 136, 144 count: 700 / 5 = 140.0, and 140 belongs to "low"
    expect(phone.page.get_by_role("region", name="Result")).to_contain_text("low risk of organ damage (140–159)", ignore_case=True)
    file_and_go_back(phone)
    measure_a_cat(phone)
    # the first is not counted; 166, 164, 168, 165, 167: 830 / 5 = 166.0, "moderate"
    expect(phone.page.get_by_role("region", name="Result")).to_contain_text(
        "moderate risk of organ damage (160–179)", ignore_case=True)
    file_and_go_back(phone)
    expect(phone.page.get_by_role("link", name="Outbox, 4 not sent")).to_be_visible()
    print("browser killed", phone.kill())
    print("browser, cold again", phone.open(offline=True))
    expect(phone.page.get_by_role("link", name="Outbox, 4 not sent")).to_be_visible()

    print("server", server.start())
    phone.back_in_reach()
    expect(phone.page.get_by_role("link", name="Outbox, 0 not sent")).to_be_visible(timeout=45_000)
    phone.page.goto(phone.url + "/#/outbox")
    expect(phone.page.get_by_text("In the record", exact=True)).to_have_count(4)
    check_the_record(server)


def check_the_record(server: ServerProcess) -> None:
    """What the database says of both animals, worked by hand."""
    assert [row[0] for row in server.rows("SELECT kind FROM journal ORDER BY position")] == [
        "patient", "measurement", "patient", "measurement"]
    assert server.rows("SELECT count(*) FROM tray") == [(0,)]
    both = measured(server)
    dog, dogs_phone, dogs_server = both["dog"]
    assert dogs_phone == dogs_server
    assert [r["systolic_mmhg"] for r in dog["sets"][0]["readings"]] == [168, 142, 138, 140, 136, 144, 190]
    assert dog["sets"][0]["readings"][6]["set_aside"] == "moved"
    assert dogs_server["category"] == "low"
    # mean 140; squared deviations 4+4+0+16+16 = 40, /4 = 10, sd 3.16; half width 2.776 × 3.162 / √5 = 3.93; range 8/140 = 57 ‰
    assert dogs_server["sets"][0]["systolic"] == {"n": 5, "mean_tenths_mmhg": 1400, "sd_tenths_mmhg": 32, "spread_permille": 57,
                                                  "ci95_half_width_tenths_mmhg": 39}
    # 50 of 130 mm is 384.6 ‰; the target 0.4 × 130 = 52.0 mm
    assert dogs_server["sets"][0]["cuff"] == {"target_tenths_mm": 520, "share_permille": 385, "fit": "good"}
    cat, cats_phone, cats_server = both["cat"]
    assert cats_phone == cats_server
    assert cats_server["category"] == "moderate"
    # mean 131+130+132+129+133 = 655 / 5 = 131.0; diastolic 98+97+99+96+100 = 490 / 5 = 98.0; pulse 192+190+188+190+190 = 950 / 5
    assert cats_server["sets"][0]["systolic"]["mean_tenths_mmhg"] == 1660
    assert cats_server["sets"][0]["mean"]["mean_tenths_mmhg"] == 1310
    assert cats_server["sets"][0]["diastolic"]["mean_tenths_mmhg"] == 980
    assert cats_server["sets"][0]["pulse"] == {"n": 5, "mean_tenths_bpm": 1900}
    assert {c["key"] for c in cats_server["cautions"]} >= {"tense", "oscillometric_high"}


def test_a_planted_difference_between_the_engines_is_shown(server: ServerProcess, new_phone: NewPhone, tmp_path: Path) -> None:
    """The phone's document says that "low" begins at 141: the dog's 140.0 is then "minimal" on the phone and "low" for the server."""
    client = planted.built_with(tmp_path / "planted", [
        ("shared_schemas/rules/v1/category.json", '"low": 140', '"low": 141')])
    server.kill()
    server.environment["QUIETCUFF_CLIENT"] = str(client)
    server.start()
    phone = new_phone(server.url)
    phone.open()
    work.sign_in(phone)
    measure_a_dog(phone)
    expect(phone.page.get_by_role("region", name="Result")).to_contain_text("minimal risk of organ damage", ignore_case=True)
    file_and_go_back(phone)
    phone.page.goto(phone.url + "/#/outbox")
    expect(phone.page.get_by_text("In the record", exact=True)).to_have_count(2, timeout=30_000)
    _, phones, servers = measured(server)["dog"]
    assert (phones["category"], servers["category"]) == ("minimal", "low")
    assert server.rows("SELECT differs FROM measurements") == [(1,)]
    phone.shows("The server worked this out differently")
    main = phone.page.get_by_role("main")
    expect(main).to_contain_text("This phone: minimal risk of organ damage", ignore_case=True)
    expect(main).to_contain_text("Server: low risk of organ damage", ignore_case=True)
