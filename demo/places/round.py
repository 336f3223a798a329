"""The ways in: signing in, the round as a person first sees it, an animal that is added. It must not begin a measurement."""

from __future__ import annotations

from collections.abc import Sequence

from demo.walk import Place, Walk, to_round


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


SIGNED_OUT: Sequence[Place] = (
    Place("sign-in", lambda walk: walk.to("#/sign-in", "Sign in")),
    Place("sign-in-problems", _sign_in_problems, alone=False),
)

FIRST: Sequence[Place] = (
    Place("round-first", _first_round),
)

ADDED: Sequence[Place] = (
    Place("add-animal", _add_animal),
    Place("add-animal-problems", _add_animal_problems, alone=False),
    Place("patient-new", _new_animal, alone=False),
)
