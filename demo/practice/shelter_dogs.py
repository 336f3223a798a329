"""Dogs of the invented shelter: few minutes each, by machine or by probe, and some that leave for a home."""

from __future__ import annotations

from demo.animals import Animal, Later, chip, doppler, drug, kennel, machine, on

SHELTER_DOGS = (
    Animal(
        {"species": "dog", "name": "Fennel", "mark": "kennel 9, tan, long legs", "sex": "male", "identifiers": [kennel("D9")]},
        "shelter", doppler("above_hock", 120, 50, posture="lateral", restraint="held"), age_months=15,
        visits=(on(30, 120), on(20, 124), on(6, 126)),  # not a year old at first: a number, and no band
    ),
    Animal(
        {"species": "dog", "name": "Kestrel", "mark": "kennel 3, liver spots", "sex": "female", "identifiers": [kennel("D3"), chip(4_010_250_011)],
         "handling": {"grade": 1, "trick": "outside, behind the shed"}},
        "shelter", machine("forearm", 115, 45, posture="lateral", restraint="held"), age_months=48, facts={"pulse_bpm": 96},
        visits=(on(26, 152, demeanour="tense", circumstances=["waited_near_dogs"]), on(25, 140), on(14, 136), on(5, 134)),
    ),
    Animal(
        {"species": "dog", "name": "Rook", "mark": "kennel 14, black", "sex": "male_neutered", "identifiers": [kennel("D14")],
         "handling": {"grade": 2, "trick": "muzzle on before the kennel is opened"}},
        "shelter", doppler("tail_base", 118, 45, posture="standing", restraint="muzzle", cuff_above_heart_mm=40), age_months=70,
        visits=(on(16, 158, demeanour="tense"), on(15, 150), on(3, 146)),
    ),
    Animal(
        {"species": "dog", "name": "Maple", "mark": "kennel 6, red, white feet", "sex": "female_neutered", "identifiers": [kennel("D6")]},
        "shelter", machine("metatarsus", 98, 40, posture="lateral", restraint="held"), age_months=88, facts={"pulse_bpm": 104},
        visits=(
            # the machine gives a code again and again, then numbers
            on(28, 0, (146, 108, 86), ("no_value", "device_code"), (138, 102, 80), ("no_value", "device_code"), (136, 101, 79),
               ("no_value", "device_code"), (140, 104, 81), (138, 102, 80), (136, 100, 78), (138, 101, 80)),
            on(19, 134), on(7, 132),
        ),
    ),
    Animal(
        {"species": "dog", "name": "Tinder", "mark": "kennel 11, small, wire coat", "sex": "male", "identifiers": [kennel("D11")],
         "sites_not_used": [{"site": "tail_base", "why": "missing"}]},
        "shelter", doppler("forearm", 88, 35, posture="sternal", restraint="held"), age_months=54,
        visits=(on(44, 138), on(32, 134), on(24, 136), on(12, 132), on(1, 134)),
    ),
    Animal(
        {"species": "dog", "name": "Puddle", "mark": "kennel 1, grey, deaf", "sex": "female_neutered", "identifiers": [kennel("D1"), chip(4_010_250_066)],
         "handling": {"grade": 0, "trick": "touch the shoulder first"}},
        "shelter", doppler("forearm", 112, 45, posture="sternal", restraint="none"), age_months=150, facts={"signs": ["kidney"]},
        visits=(on(57, 164), on(53, 166), on(50, 162), on(45, 154, treatment="started", drugs=[drug("angiotensin_receptor_blocker", 3)]),
                on(31, 148, treatment="unchanged"), on(19, 150, treatment="unchanged"), on(5, 146, treatment="unchanged")),
        later=(Later(13, {"mark": "foster home, grey, deaf", "identifiers": [chip(4_010_250_066)]}, "moved to a foster home"),),
    ),
    Animal(
        {"species": "dog", "name": "Barley", "mark": "kennel 8, yellow", "sex": "male_neutered", "identifiers": [kennel("D8")],
         "sites_not_used": [{"site": "forearm", "side": "left", "why": "swelling", "until_days": 12}]},
        "shelter", doppler("forearm", 146, 60, posture="lateral", restraint="held") | {"side": "right"}, age_months=100,
        visits=(on(11, 0, 162, 158, 150, (178, "noise_near"), 148, 152, 150, 148, 150), on(2, 144)),
    ),
    Animal(
        {"species": "dog", "name": "Hob", "mark": "kennel 5, broad, brindle", "sex": "male", "identifiers": [kennel("D5")]},
        "shelter", doppler("forearm", 168, 70, posture="sitting", restraint="held"), age_months=60,
        visits=(on(15, 148, state="sedated", calming={"drug_group": "alpha2_agonist", "hours": 1}, demeanour="sleepy"), on(14, 142), on(4, 138)),
    ),
    Animal(
        {"species": "dog", "name": "Crumpet", "mark": "kennel 10, curly", "sex": "female", "identifiers": [kennel("D10")],
         "handling": {"grade": 1}},
        "shelter", machine("tail_base", 92, 40, posture="standing", restraint="held"), age_months=36, facts={"pulse_bpm": 112},
        visits=(on(23, 146, demeanour="tense", rest_s=120), on(22, 134), on(9, 130)),
    ),
)
