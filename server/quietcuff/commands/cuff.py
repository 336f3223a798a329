"""`quietcuff cuff`: which cuff of a bag fits a limb.

Must never hold a limit of its own: what is a possible limb or cuff is what a measurement may state.
"""

import argparse
import re
import sys
from typing import Any

from quietcuff.commands.answers import error, finish
from quietcuff.commands.phone_engine import NoEngine, PhoneEngine
from quietcuff.contract.rule_documents import rule_set
from quietcuff.contract.wire import Problem, check
from quietcuff.rules.cuff import choose_cuff


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Species, circumference, bag and engine; values are checked by `run`, so that their errors read alike."""
    parser.description = "Chooses from the bladder widths in a bag the cuff for a limb, all in whole mm."
    parser.add_argument("--species", required=True, help="dog or cat")
    parser.add_argument("--circumference-mm", required=True, help="of the limb where the cuff will lie")
    parser.add_argument("--bag-mm", required=True, help="widths in the bag, with commas between: 20,25,30")
    parser.add_argument("--engine", choices=("server", "phone"), default="server", help="which engine computes")


def run(arguments: argparse.Namespace) -> int:
    """0 with the choice as JSON (also when no cuff fits); 2 for arguments that cannot be used."""
    limb_circumference_mm = _whole_or_text(arguments.circumference_mm)
    bag_mm = [_whole_or_text(width) for width in arguments.bag_mm.split(",")] if arguments.bag_mm else []
    problem = _first_problem(arguments.species, limb_circumference_mm, bag_mm)
    if problem:
        return finish(error(*problem))
    if arguments.engine == "server":
        cuff_document = rule_set("v1")["documents"]["cuff"]
        return finish(choose_cuff(arguments.species, limb_circumference_mm, bag_mm, cuff_document))
    try:
        with PhoneEngine() as phone:
            return finish(phone.choose_cuff(arguments.species, limb_circumference_mm, bag_mm))
    except NoEngine as reason:
        print(reason, file=sys.stderr)
        return 2


def _whole_or_text(text: str) -> Any:
    """A whole number; anything else stays text, for the check to name."""
    is_whole = re.fullmatch(r"-?[0-9]{1,18}", text.strip(), re.ASCII) is not None
    return int(text) if is_whole else text


def _first_problem(species: str, limb_circumference_mm: Any, bag_mm: list[Any]) -> Problem | None:
    """Each width is put into a set as if it had been used: the wire schema says what may stand there."""
    if not bag_mm:
        return Problem("/bag_mm", "too_few_items")
    for index, width_mm in enumerate(bag_mm):
        limb = {"limb_circumference_mm": limb_circumference_mm, "cuff_width_mm": width_mm}
        one_set = {"method": "doppler", "readings": [], **limb}
        problem = check("measurement.1", {"species": species, "sets": [one_set]})
        if problem:
            path = problem.path.replace("/sets/0/cuff_width_mm", f"/bag_mm/{index}")
            return Problem(path.replace("/sets/0", ""), problem.why)
    return None
