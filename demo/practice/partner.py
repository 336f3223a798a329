"""Animals that a partner clinic measures for the invented practice, with whatever it has: methods differ from visit to visit."""

from __future__ import annotations

from demo.animals import Animal, chip, doppler, drug, machine, on

CLINIC = {"circumstances": ["travelled"]}
PROBE, MACHINE = {"instrument": "the clinic's probe"}, {"instrument": "the clinic's machine"}

PARTNER = (
    Animal(
        {"species": "dog", "name": "Otter", "mark": "brown, flat coat", "sex": "male_neutered", "identifiers": [chip(4_010_260_004)]},
        "partner", machine("forearm", 150, 60, posture="lateral", restraint="held") | MACHINE, age_months=116, facts={**CLINIC, "pulse_bpm": 84},
        visits=(on(87, 148), on(73, 144), on(58, 142), on(43, 146), on(28, 140), on(13, 142)),
    ),
    Animal(
        {"species": "cat", "name": "Velvet", "mark": "blue-grey, short coat", "sex": "female_neutered", "identifiers": [chip(4_010_260_051)],
         "handling": {"grade": 1, "trick": "stays in the lower half of her basket"}},
        "partner", doppler("forearm", 76, 28, gauge="digital", posture="sternal", restraint="basket") | PROBE, age_months=144, facts=CLINIC,
        visits=(on(67, 152, demeanour="tense"), on(55, 147), on(41, 143), on(26, 149), on(11, 145)),
    ),
    Animal(
        {"species": "dog", "name": "Gaffer", "mark": "huge, black mask", "sex": "male", "identifiers": [chip(4_010_260_078)],
         "handling": {"grade": 2, "trick": "own blanket, door shut"}},
        "partner", doppler("metatarsus", 170, 70, posture="lateral", restraint="held") | PROBE, age_months=82, facts=CLINIC,
        visits=(on(62, 168, demeanour="tense", circumstances=["travelled", "exercised"]), on(61, 152), on(46, 148), on(29, 146), on(8, 144)),
    ),
    Animal(
        {"species": "cat", "name": "Linnet", "mark": "tabby, white bib", "sex": "female_neutered", "identifiers": [chip(4_010_260_102)]},
        "partner", doppler("forearm", 80, 28, posture="in_lap", restraint="lap") | PROBE, age_months=138, facts=CLINIC,
        visits=(
            on(48, 148),
            # the machine found nothing; then the probe
            on(34, 0, "no_value", "no_value", "no_value", placed=machine("forearm", 80, 28) | MACHINE,
               sets=((doppler("forearm", 80, 28, posture="in_lap", restraint="lap") | PROBE, (160, 152, 150, 148, 150, 152, 150)),)),
            on(20, 150), on(7, 146),
        ),
    ),
    Animal(
        {"species": "cat", "name": "Quince", "mark": "yellow eyes, thick coat", "sex": "male_neutered", "identifiers": [chip(4_010_260_140)]},
        "partner", machine("tail_base", 78, 28, posture="sternal", restraint="towel") | MACHINE, age_months=156,
        facts={**CLINIC, "pulse_bpm": 184, "drugs": [drug("beta_blocker", 6)]},
        visits=(
            on(52, 162), on(38, 158),
            on(24, 0, (172, 128, 104), ("no_value", "device_code"), (160, 118, 96), (158, 117, 95), ("no_value", "device_code"),
               (162, 120, 97), (159, 118, 96), (160, 119, 96)),
            on(10, 154),
        ),
    ),
)
