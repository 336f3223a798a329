"""Every screen and state of the app, and the steps that lead there: names, roles and words only, as a person finds them.

Used by whoever has to see all screens: the checks under tests/design and the pictures of the gallery. It stands in the demo,
because the demo may not lean on the tests and both need the same list.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from demo.walk import Place, Walk, take, to_animal, to_new_bag, to_result, to_round


def _sign_in_problems(walk: Walk) -> None:
    walk.tap("Sign in")
    walk.sees("heading", "There is a problem")


def _first_round(walk: Walk) -> None:
    walk.fill("Login", walk.login)
    walk.fill("Password", walk.password)
    walk.tap("Sign in")
    walk.sees("heading", "Round")


def _add_animal(walk: Walk) -> None:
    to_round(walk)
    walk.tap("Add animal")
    walk.sees("button", "Save animal")


def _add_animal_problems(walk: Walk) -> None:
    walk.tap("Save animal")
    walk.sees("heading", "There is a problem")


def _new_animal(walk: Walk) -> None:
    walk.choose("Species", "Cat")
    walk.fill("Name", walk.animal)
    walk.fill("Mark", "grey tabby, notch in the left ear")
    walk.tap("Save animal")
    walk.sees("heading", walk.animal)


def _unfold(title: str, button: str) -> Callable[[Walk], None]:
    """A fold of the animal's page, and the button by which its form opens."""

    def steps(walk: Walk) -> None:
        to_animal(walk)
        walk.page.get_by_text(title, exact=True).first.click()
        walk.tap(button)

    return steps


def _ready(walk: Walk) -> None:
    to_animal(walk)
    walk.tap("Measure")
    walk.sees("button", "Show Ready?")


def _ready_no(walk: Walk) -> None:
    walk.choose("Free of pain?", "No")
    walk.choose("Safe to handle?", "No")
    walk.shows("Try one of these, or do not measure today:")


def _help_first(walk: Walk) -> None:
    walk.choose("Breathing easy?", "No")
    walk.sees("button", "Measure all the same")


def _why_not_today(walk: Walk) -> None:
    walk.tap("Not today")
    walk.sees("heading", "Why not today?")


def _not_today(walk: Walk) -> None:
    walk.tap("Bite or scratch")
    walk.shows("Not measured today:")


def _calm(walk: Walk) -> None:
    walk.tap("Go on measuring")
    walk.tap("Measure all the same")
    walk.tap("Show Calm")
    walk.sees("group", "Demeanour")


def _quiet(walk: Walk) -> None:
    walk.tap("Start quiet time")
    walk.sees("button", "Stop")


def _calm_more(walk: Walk) -> None:
    walk.tap("More")
    walk.tap("Add a drug")
    walk.tap("Steroid")
    walk.sees("button", "Remove Steroid")


def _calmed(walk: Walk) -> None:
    walk.choose("State", "Calmed by a drug")
    walk.sees("group", "Group of the drug")


def _cuff(walk: Walk) -> None:
    walk.tap("Show Cuff")
    walk.sees("group", "Method")


def _cuff_problem(walk: Walk) -> None:
    walk.unfold("Limb")
    walk.fill("Limb circumference", "thirteen")
    walk.tap("Next: readings")
    walk.sees("heading", "There is a problem")


def _cuff_mended(walk: Walk) -> None:
    walk.fill("Limb circumference", "8.5")
    walk.shows("= 85 mm")


def _readings_empty(walk: Walk) -> None:
    walk.tap("Show Readings")
    walk.sees("button", "Add")


def _readings(walk: Walk) -> None:
    take(walk, 168, 142, 138)
    walk.page.keyboard.type("14")
    walk.holds("Systolic", "14")


def _unlikely(walk: Walk) -> None:
    walk.fill("Systolic", "340")
    walk.tap("Add")
    walk.sees("button", "Keep")


def _reasons(walk: Walk) -> None:
    walk.tap("Fix")
    walk.tap("Set aside")
    walk.sees("heading", "Why set aside 138?")


def _all_readings(walk: Walk) -> None:
    walk.tap("Moved")
    walk.tap("All 3 readings")
    walk.page.get_by_role("button", name="Reading 2").click()
    walk.sees("button", "Back to the keys")


def _why_new_set(walk: Walk) -> None:
    walk.tap("Back to the keys")
    walk.tap("New set")
    walk.sees("heading", "Why a new set?")


def _pulse(walk: Walk) -> None:
    walk.tap("Back to the keys")
    walk.tap("Tap pulse")
    walk.sees("button", "Tap at each beat")


def _stop(walk: Walk) -> None:
    walk.tap("Back to the keys")
    walk.tap("Stop")
    walk.sees("heading", "Why stop?")


def _second_tap(walk: Walk) -> None:
    walk.tap("Back to the keys")
    walk.fill("Systolic", "140")
    # both at once in the page itself: a busy machine would let the time of a second tap go by
    walk.button("Add").evaluate("(add) => { add.click(); add.click(); }")
    walk.sees("button", "Once is right")


def _readings_several(walk: Walk) -> None:
    walk.tap("Once is right")
    walk.tap("New set")
    walk.page.get_by_role("button", name="Another method").click()
    walk.page.get_by_label("Diastolic", exact=True).wait_for()


def _choose_animal(walk: Walk) -> None:
    walk.tap("File")
    walk.sees("heading", "Which animal was this?")


def _filed(walk: Walk) -> None:
    walk.page.get_by_role("button", name=f"Choose {walk.animal}").first.click()
    walk.tap("File")
    walk.shows("Filed:")


def _patient_with_a_visit(walk: Walk) -> None:
    to_animal(walk)
    walk.page.get_by_text("How this was worked out").first.click()


def _bag_with_cuffs(walk: Walk) -> None:
    to_new_bag(walk)
    walk.fill("Name of the bag", "Field bag")
    walk.fill("Add widths, in mm", "20, 25, 30, 40, 50")
    walk.tap("Add cuffs")
    walk.sees("button", "Change 25 mm")


def _bag_with_a_gauge(walk: Walk) -> None:
    walk.tap("Add gauge")
    walk.sees("button", "Put into the bag")


def _in_training(walk: Walk) -> None:
    walk.tap("Begin training")
    to_round(walk)
    walk.shows("Training: not the record")


def _out_of_training(walk: Walk) -> None:
    walk.to("#/training", "Training")
    walk.tap("Back to the record")
    to_round(walk)


def _screen(address: str, heading: str) -> Callable[[Walk], None]:
    return lambda walk: walk.to(address, heading)


SIGNED_OUT: Sequence[Place] = (
    Place("sign-in", lambda walk: walk.to("#/sign-in", "Sign in")),
    Place("sign-in-problems", _sign_in_problems, alone=False),
)

SIGNED_IN: Sequence[Place] = (
    Place("round-first", _first_round),
    Place("add-animal", _add_animal),
    Place("add-animal-problems", _add_animal_problems, alone=False),
    Place("patient-new", _new_animal, alone=False),
    Place("patient-sites", _unfold("Sites not to be used", "Add a site")),
    Place("patient-handling", _unfold("Handling", "Save handling")),
    Place("patient-who", _unfold("Who it is", "Change or add")),
    Place("measure-ready", _ready),
    Place("measure-ready-no", _ready_no, alone=False),
    Place("measure-help-first", _help_first, alone=False),
    Place("measure-why-not-today", _why_not_today, alone=False),
    Place("measure-not-today", _not_today, alone=False),
    Place("measure-calm", _calm, alone=False),
    Place("measure-calm-quiet", _quiet, alone=False),
    Place("measure-calm-more", _calm_more, alone=False),
    Place("measure-calm-drug", _calmed, alone=False),
    Place("measure-cuff", _cuff, alone=False),
    Place("measure-cuff-problem", _cuff_problem, alone=False),
    Place("measure-cuff-mended", _cuff_mended, alone=False),
    Place("measure-readings-none", _readings_empty, alone=False),
    Place("measure-readings", _readings, alone=False),
    Place("measure-readings-unlikely", _unlikely, alone=False),
    Place("measure-readings-reasons", _reasons, alone=False),
    Place("measure-readings-all", _all_readings, alone=False),
    Place("measure-readings-new-set", _why_new_set, alone=False),
    Place("measure-readings-pulse", _pulse, alone=False),
    Place("measure-readings-stop", _stop, alone=False),
    Place("measure-readings-second-tap", _second_tap, alone=False),
    Place("measure-readings-machine", _readings_several, alone=False),
    # the first does not count; means of the rest by hand: 128, 146, 168, 198
    Place("result-minimal", to_result("dog", 140, 128, 127, 129, 126, 130)),
    Place("result-low", to_result("dog", 150, 146, 145, 147, 144, 148)),
    Place("result-moderate", to_result("cat", 180, 168, 167, 169, 166, 170)),
    Place("result-high", to_result("cat", 205, 198, 197, 199, 196, 200)),
    Place("result-too-few", to_result("dog", 150, 142)),
    Place("result-scattered", to_result("cat", 236, 190, 238, 192, 234, 191, 236)),
    Place("result-low-pressure", to_result("dog", 99, 95, 96, 94, 98, 97)),
    Place("result-sedated", to_result("dog", 158, 151, 153, 150, 154, 152, state="Sedated")),
    Place("result-coming-down", to_result("cat", 190, 184, 176, 168, 160, 154, 148)),
    Place("file-choose-animal", _choose_animal, alone=False),
    Place("round-filed", _filed, alone=False),
    Place("patient-visit", _patient_with_a_visit),
    Place("outbox", _screen("#/outbox", "Outbox")),
    Place("bag", _screen("#/bag", "Bag")),
    Place("bag-cuffs", _bag_with_cuffs, alone=False),
    Place("bag-gauge", _bag_with_a_gauge, alone=False),
    Place("help", _screen("#/help", "Help")),
    Place("help-cuff", _screen("#/help/cuff", "Help")),
    Place("training", _screen("#/training", "Training")),
    Place("training-round", _in_training, alone=False),
    Place("training-result", to_result("cat", 150, 146, 145, 147, 144, 148), alone=False),
    Place("round", _out_of_training, alone=False),
    Place("this-phone", _screen("#/this-phone", "This phone")),
    Place("nowhere", _screen("#/nowhere", "quietcuff")),
    Place("draft-missing", _screen("#/measure/none", "Measure")),
)

PLACES: Sequence[Place] = (*SIGNED_OUT, *SIGNED_IN)
