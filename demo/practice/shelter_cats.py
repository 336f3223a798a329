"""Cats of the invented shelter: measured in the kennel room on the round, often the first time in their lives."""

from __future__ import annotations

from demo.animals import Animal, chip, doppler, drug, kennel, not_today, on

CAT = doppler("forearm", 78, 28, posture="sternal", restraint="towel")
BASKET = {**CAT, "restraint": "basket"}

SHELTER_CATS = (
    Animal(
        {"species": "cat", "name": "Sorrel", "mark": "kennel 4, ginger", "sex": "female", "identifiers": [kennel("C4")],
         "handling": {"grade": 1, "trick": "cover the front of the kennel"}},
        "shelter", CAT,
        visits=(
            # straight from the kennel: the readings are still coming down
            on(22, 0, 190, 184, 176, 168, 160, 154, 148, demeanour="tense", rest_s=200, circumstances=["waited_near_dogs"]),
            on(21, 146), on(10, 142),
        ),
    ),
    Animal(
        {"species": "cat", "name": "Teasel", "mark": "kennel 7, long grey coat", "sex": "male", "identifiers": [kennel("C7")],
         "handling": {"grade": 3, "trick": "none yet"}},
        "shelter", CAT,
        visits=(
            on(18, 0, 182, 176, 170, outcome={"kind": "stopped", "why": "too_distressed"}, demeanour="fighting"),
            on(17, 150, state="calmed", calming={"drug_group": "gabapentinoid", "hours": 3}),
            on(6, 148, state="calmed", calming={"drug_group": "gabapentinoid", "hours": 2}),
        ),
    ),
    Animal(
        {"species": "cat", "name": "Ember", "mark": "kennel 2, dark tortoiseshell", "sex": "female", "identifiers": [kennel("C2")],
         "handling": {"grade": 3}},
        "shelter", BASKET,
        visits=(not_today(5, "not_safe", "growls at the door; hide box first", breathing_easy=True, awake=True, safe_to_handle=False),
                not_today(4, "not_safe", "better, not yet", breathing_easy=True, awake=True, safe_to_handle=False),
                on(3, 158, demeanour="tense"), on(1, 146)),
    ),
    Animal(
        {"species": "cat", "name": "Wick", "mark": "kennel 9, white tail tip", "sex": "male_neutered", "identifiers": [kennel("C9"), chip(4_010_240_033)]},
        "shelter", BASKET, age_months=40, visits=(on(31, 132), on(30, 128), on(18, 130), on(6, 126)),
    ),
    Animal(
        {"species": "cat", "name": "Moth", "mark": "kennel 1, pale grey", "sex": "female_neutered", "identifiers": [kennel("C1")],
         "sites_not_used": [{"site": "forearm", "side": "left", "why": "wound", "until_days": -3},
                            {"site": "metatarsus", "side": "right", "why": "bandage", "until_days": 9}]},
        "shelter", {**BASKET, "side": "right"}, age_months=66, visits=(on(12, 150, demeanour="tense"), on(6, 138), on(2, 134)),
    ),
    Animal(
        {"species": "cat", "name": "Saffron", "mark": "kennel 12, ginger, old", "sex": "female_neutered",
         "identifiers": [kennel("C12"), chip(4_010_240_090)], "handling": {"grade": 0, "trick": "purrs: wait until it stops"}},
        "shelter", CAT, age_months=170, facts={"drugs": [drug("calcium_channel_blocker", 3)]},
        visits=(on(36, 176, treatment="none", drugs=[]), on(35, 172, treatment="none", drugs=[]), on(33, 158, treatment="started"),
                on(29, 0, 156, 150, (164, "purred"), 148, 152, (166, "purred"), 150, 148, 152, treatment="unchanged"),
                on(20, 150, treatment="unchanged"), on(8, 148, treatment="unchanged")),
    ),
    Animal(
        {"species": "cat", "name": "Bracken", "mark": "kennel 5, black, torn ear", "sex": "male", "identifiers": [kennel("C5")],
         "handling": {"grade": 2, "trick": "two people, one only strokes"}},
        "shelter", CAT, age_months=150,
        visits=(
            # between 190 and 250 and never near each other
            on(4, 0, 250, 192, 244, 198, 240, 194, 248, demeanour="tense", circumstances=["waited_near_dogs"]),
            on(3, 194, signs=["eye"]), on(2, 176, treatment="started", drugs=[drug("calcium_channel_blocker", 4)]),
        ),
    ),
    Animal(
        {"species": "cat", "name": "Damson", "mark": "isolation, ginger and white", "sex": "female", "identifiers": [kennel("Iso 2")]},
        "shelter", {**BASKET, "cuff_width_mm": 30}, age_months=30, visits=(on(9, 136, circumstances=["injected"]), on(7, 128)),
    ),
    Animal(
        {"species": "cat", "name": "Pippin", "mark": "kennel 11, very small", "sex": "not_known", "identifiers": [kennel("C11")],
         "handling": {"grade": 0, "trick": "inside a jumper"}},
        "shelter", doppler("forearm", 50, 20, posture="in_lap", restraint="lap"), age_months=5, visits=(on(4, 118), on(1, 122)),
    ),
)
