"""`quietcuff assess`: a measurement in, its assessment out; `--lines` for many, `--engine phone` for the phone's.

Must never guess at bad input: it names the field and the reason, and exits with 2 (with `--lines`: says so in place).
"""

import argparse
import sys
from collections.abc import Callable
from typing import Any

from quietcuff.commands.answers import error, finish, print_answer
from quietcuff.commands.phone_engine import NoEngine, PhoneEngine
from quietcuff.contract.read_json import Unreadable, read_json
from quietcuff.contract.rule_documents import rule_set
from quietcuff.contract.wire import check_measurement
from quietcuff.rules.assess import assess

Assess = Callable[[Any], dict[str, Any]]


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """`--lines` and `--engine`."""
    parser.description = "Reads a measurement (JSON, wire/measurement.1.json) from standard input."
    parser.add_argument("--lines", action="store_true", help="one measurement a line in, one answer a line out")
    parser.add_argument("--engine", choices=("server", "phone"), default="server", help="which engine computes")


def run(arguments: argparse.Namespace) -> int:
    """0; 2 for input that cannot be used, or where the phone's engine cannot run."""
    go = _each_line if arguments.lines else _whole_input
    if arguments.engine == "server":
        return go(assess_here)
    try:
        with PhoneEngine() as phone:
            return go(phone.assess)
    except NoEngine as reason:
        print(reason, file=sys.stderr)
        return 2


def assess_here(measurement: Any) -> dict[str, Any]:
    """Check a value and assess it with the server's engine and rule set v1; or the first problem as an error."""
    problem = check_measurement(measurement)
    return error(*problem) if problem else assess(measurement, rule_set("v1"))


def _whole_input(assess_value: Assess) -> int:
    return finish(_answer(sys.stdin.buffer.read(), assess_value))


def _each_line(assess_value: Assess) -> int:
    """A bad line is answered in its place and the next is read: line n of the output belongs to line n of the input."""
    for line in sys.stdin.buffer:
        print_answer(_answer(line, assess_value))
    return 0


def _answer(text: bytes, assess_value: Assess) -> dict[str, Any]:
    """The strict reader comes first for both engines: two readers of JSON need not agree on a key written twice."""
    try:
        value = read_json(text)
    except Unreadable as reason:
        return error("", "unreadable_" + reason.code)
    return assess_value(value)
