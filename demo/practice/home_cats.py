"""Cats seen at home by the invented practice: long courses, one owner each, and some that mind."""

from __future__ import annotations

from typing import Any

from demo.animals import Animal, Facts, chip, doppler, drug, not_today, on

CCB = "calcium_channel_blocker"


def _held(site: str, limb_mm: int, cuff_mm: int, **more: Any) -> Facts:
    """As the nurse does it at home: in the lap, by the small bag."""
    return doppler(site, limb_mm, cuff_mm, instrument="probe with headphones", posture="in_lap", restraint="lap") | more


HOME_CATS = (
    Animal(
        {"species": "cat", "name": "Marrow", "mark": "grey tabby, notch in the left ear", "sex": "male_neutered",
         "breed": "domestic shorthair", "identifiers": [chip(4_010_220_731), {"kind": "record_number", "text": "H-112"}],
         "handling": {"grade": 0, "trick": "sits on the blue cushion, back to the window"}},
        "home", _held("forearm", 80, 28), age_months=186,
        visits=(
            # found high with a sign in the eyes, treated, and followed
            on(103, 204, signs=["eye"], treatment="none"),
            on(102, 178, treatment="started", drugs=[drug(CCB, 5)]),
            on(100, 166, treatment="changed", drugs=[drug(CCB, 4)]),
            on(98, 150, treatment="unchanged", drugs=[drug(CCB, 6)]),
            on(90, 146, treatment="unchanged", drugs=[drug(CCB, 5)]),
            on(77, 148, treatment="unchanged", drugs=[drug(CCB, 5)]),
            on(64, 144, treatment="unchanged", drugs=[drug(CCB)]),
            on(51, 152, treatment="unchanged", drugs=[drug(CCB, 7)], placed={"limb_circumference_mm": 79}),
            on(38, 162, treatment="unchanged", drugs=[drug(CCB, 20)]),  # a dose late
            on(36, 146, treatment="unchanged", drugs=[drug(CCB, 4)]),
            on(24, 148, treatment="unchanged", drugs=[drug(CCB, 5)], placed={"limb_circumference_mm": 78}),
            on(11, 150, treatment="unchanged", drugs=[drug(CCB, 5)], placed={"limb_circumference_mm": 78}),
        ),
    ),
    Animal(
        {"species": "cat", "name": "Quill", "mark": "black, one white foot", "sex": "female_neutered",
         "identifiers": [chip(4_010_220_845)], "handling": {"grade": 1, "trick": "let her come out of the basket by herself"}},
        "home", _held("forearm", 84, 30), age_months=149,
        visits=(
            # one reading far from the others and no agreement; then measured again with one set aside by hand
            on(88, 0, 158, 150, 146, 210, 152, 148, 150, demeanour="tense", rest_s=640),
            on(86, 0, 150, 144, (176, "moved"), 142, 146, 144, 142, 144),
            on(70, 146), on(54, 142), on(40, 150, demeanour="tense"), on(27, 144), on(12, 146),
        ),
    ),
    Animal(
        {"species": "cat", "name": "Tallow", "mark": "cream, very thin", "sex": "female_neutered", "bruises": True,
         "identifiers": [{"kind": "tattoo", "text": "TW 06, right ear, half gone"}],
         "handling": {"grade": 0, "trick": "warm towel"},
         "sites_not_used": [{"site": "forearm", "side": "right", "why": "catheter", "until_days": -40},
                            {"site": "above_hock", "why": "painful"}]},
        "home", _held("forearm", 68, 25), age_months=212, facts={"signs": ["kidney"], "drugs": [drug("ace_inhibitor", 3)]},
        visits=(on(81, 156), on(75, 158), on(62, 154), on(49, 150, demeanour="sleepy"), on(35, 152, demeanour="sleepy"), on(20, 146), on(6, 148)),
    ),
    Animal(
        {"species": "cat", "name": "Burdock", "mark": "brown tabby, broad head", "sex": "male_neutered",
         "identifiers": [chip(4_010_221_002)],
         "handling": {"grade": 3, "trick": "drug in the evening and again before; towel, dark room, two people"}},
        "home", _held("forearm", 92, 30, restraint="towel"), age_months=124,
        visits=(
            on(58, 0, 196, 188, outcome={"kind": "stopped", "why": "bite_or_scratch", "note": "scratched at the third wrap; washed"},
               demeanour="fighting"),
            on(56, 148, state="calmed", calming={"drug_group": "gabapentinoid", "hours": 2}),
            on(43, 144, state="calmed", calming={"drug_group": "gabapentinoid", "hours": 2}),
            on(29, 150, state="calmed", calming={"drug_group": "gabapentinoid", "hours": 3}),
            on(8, 146, state="calmed", calming={"drug_group": "gabapentinoid", "hours": 2}, demeanour="sleepy"),
        ),
    ),
    Animal(
        {"species": "cat", "name": "Pepperpot", "mark": "grey and white, still small", "sex": "female",
         "handling": {"grade": 1, "trick": "play first, cuff while she is tired"}},
        "home", _held("forearm", 58, 20), age_months=7,
        visits=(on(8, 124), on(2, 126, placed={"limb_circumference_mm": 62})),
    ),
    Animal(
        {"species": "cat", "name": "Mistral", "mark": "white, blue eyes", "sex": "male_neutered", "identifiers": [chip(4_010_221_377)],
         "handling": {"grade": 1}},
        "home", _held("forearm", 82, 28), age_months=176, facts={"treatment": "none"},
        visits=(
            on(60, 158), on(34, 168),
            # beyond the gauge twice, and all the rest far above
            on(3, 0, 268, "above_gauge", 232, 258, "above_gauge", 226, 250, signs=["eye", "brain"], demeanour="tense"),
            on(2, 188, signs=["eye"], treatment="started", drugs=[drug(CCB, 4)]),
            on(1, 162, signs=["eye"], treatment="unchanged", drugs=[drug(CCB, 5)]),
        ),
    ),
    Animal(
        {"species": "cat", "name": "Thimble", "mark": "small, tortoiseshell", "sex": "female_neutered",
         "identifiers": [chip(4_010_221_420)]},
        "home", _held("forearm", 72, 25), age_months=101, visits=(on(97, 126), on(71, 130), on(45, 124), on(19, 128)),
    ),
    Animal(
        {"species": "cat", "name": "Osier", "mark": "ginger, loud", "sex": "male_neutered", "identifiers": [chip(4_010_221_518)],
         "handling": {"grade": 2, "trick": "owner holds the head and talks"}},
        "home", _held("above_elbow", 104, 35), age_months=163, facts={"drugs": [drug("thyroid", 8)], "treatment": "unchanged"},
        visits=(on(66, 168), on(61, 166), on(57, 164), on(44, 156), on(31, 152), on(18, 158), on(5, 154)),
    ),
    Animal(
        {"species": "cat", "name": "Nettle", "mark": "tabby, one eye", "sex": "female_neutered", "handling": {"grade": 1}},
        "home", _held("tail_base", 74, 25), age_months=193,
        visits=(
            on(47, 160), on(42, 164), on(30, 162, circumstances=["travelled"]),
            not_today(16, "breathing", "open mouth after the stairs; sent to the clinic", breathing_easy=False, awake=True),
            on(14, 138),
        ),
    ),
)
