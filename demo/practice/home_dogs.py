"""Dogs seen at home by the invented practice: odd limbs, odd hearts, and breeds the usual bands fit badly."""

from __future__ import annotations

from demo.animals import Animal, chip, doppler, drug, machine, not_today, on

HOME_DOGS = (
    Animal(
        {"species": "dog", "name": "Juniper", "mark": "brown, white chest", "sex": "female_neutered", "breed": "mixed",
         "identifiers": [chip(4_010_230_017)], "handling": {"grade": 0, "trick": "lies down for a chew"}},
        "home", machine("tail_base", 110, 45, posture="lateral", restraint="held"), age_months=129, facts={"pulse_bpm": 88},
        visits=(on(95, 142, treatment="none"), on(89, 134), on(76, 132), on(63, 136), on(50, 130), on(37, 134), on(23, 132), on(9, 138)),
    ),
    Animal(
        {"species": "dog", "name": "Bramble", "mark": "large, brindle", "sex": "male_neutered", "breed": "shepherd cross",
         "identifiers": [chip(4_010_230_144)], "handling": {"grade": 0}},
        "home", doppler("forearm", 190, 80, posture="lateral", restraint="held"), age_months=134,
        facts={"rhythm": "irregular", "drugs": [drug("other", 6)], "treatment": "unchanged"},
        visits=(
            # the beat is irregular: listened to, more readings, all of them averaged
            on(59, 0, 150, 138, 146, 134, 150, 142, 138, 144, 136),
            on(46, 0, 154, 146, 132, 150, 140, 148, 134, 144, 138, 142),
            on(33, 0, 148, 136, 152, 140, 134, 146, 142, 138), on(21, 0, 150, 132, 148, 140, 144, 134, 146, 138, 140, 136),
            on(7, 0, 152, 140, 136, 148, 130, 144, 142, 134),
        ),
    ),
    Animal(
        {"species": "dog", "name": "Lattice", "mark": "fawn, deep chest", "sex": "female_neutered", "breed": "sighthound",
         "identifiers": [chip(4_010_230_209)], "handling": {"grade": 0, "trick": "standing makes her shiver: blanket, on her side"},
         "sites_not_used": [{"site": "above_hock", "side": "left", "why": "skin", "until_days": 25}]},
        "home", doppler("forearm", 128, 50, posture="lateral", restraint="none"), age_months=78,
        visits=(on(84, 146), on(72, 142), on(53, 170, place="partner", demeanour="tense", circumstances=["travelled", "waited_near_dogs"]),
                on(52, 144), on(32, 140), on(13, 144)),
    ),
    Animal(
        {"species": "dog", "name": "Gavotte", "mark": "grey, as tall as the table", "sex": "female", "breed": "wolfhound",
         "identifiers": [chip(4_010_230_288)], "handling": {"grade": 0, "trick": "on the rug, not on the sofa"}},
        "home", doppler("forearm", 236, 100, posture="lateral", restraint="none"), age_months=62,
        visits=(on(79, 116), on(55, 118), on(28, 112), on(4, 116, placed={"posture": "standing", "cuff_above_heart_mm": -60})),
    ),
    Animal(
        {"species": "dog", "name": "Dumpling", "mark": "short legs, very round", "sex": "male_neutered", "breed": "mixed",
         "identifiers": [chip(4_010_230_301)], "handling": {"grade": 1}},
        "home", doppler("forearm", 178, 50, instrument="probe with headphones", posture="sternal", restraint="held"), age_months=94,
        visits=(
            # the limb tapers and no cuff of the small bag fits; with the large bag one does, and lower down
            not_today(41, "no_cuff", "178 mm round; the widest with us is 50", breathing_easy=True, awake=True, no_pain=True,
                      safe_to_handle=True),
            on(40, 158),
            on(26, 148, placed={"cuff_width_mm": 70, "instrument": "probe, taped cable"}),
            on(10, 150, placed={"site": "metatarsus", "limb_circumference_mm": 118, "cuff_width_mm": 45, "instrument": "probe, taped cable"}),
        ),
    ),
    Animal(
        {"species": "dog", "name": "Ruffle", "mark": "three legs, black and tan", "sex": "male_neutered",
         "identifiers": [chip(4_010_230_350)], "handling": {"grade": 0, "trick": "lean him against a wall"},
         "sites_not_used": [{"site": "forearm", "side": "left", "why": "missing"}, {"site": "above_elbow", "side": "left", "why": "missing"}]},
        "home", doppler("above_hock", 122, 50, posture="lateral", restraint="held"), age_months=110,
        visits=(on(83, 140), on(68, 138), on(48, 142), on(25, 140), on(9, 136)),
    ),
    Animal(
        {"species": "dog", "name": "Cobble", "mark": "pot belly, thin coat", "sex": "female_neutered",
         "identifiers": [chip(4_010_230_412)], "handling": {"grade": 0}, "bruises": True},
        "home", doppler("forearm", 118, 45, posture="sternal", restraint="held"), age_months=121, facts={"drugs": [drug("steroid")]},
        visits=(on(74, 172, treatment="none"), on(69, 174, treatment="none"), on(65, 168, treatment="started"), on(60, 156, treatment="changed"),
                on(47, 152, treatment="unchanged"), on(34, 158, treatment="unchanged"), on(17, 150, treatment="unchanged")),
    ),
    Animal(
        {"species": "dog", "name": "Sexton", "mark": "old, grey muzzle, coughs", "sex": "male_neutered",
         "identifiers": [chip(4_010_230_466)], "handling": {"grade": 0, "trick": "short; let him stand up in between"}},
        "home", doppler("forearm", 102, 40, posture="sternal", restraint="none"), age_months=158,
        facts={"signs": ["heart_or_vessels"], "drugs": [drug("diuretic", 4), drug("ace_inhibitor", 4)], "treatment": "unchanged"},
        visits=(on(39, 128), on(27, 118), on(15, 112),
                # lower than before, and weak
                on(2, 92, signs=["weak", "heart_or_vessels"], treatment="changed"), on(1, 108, treatment="changed")),
    ),
)
