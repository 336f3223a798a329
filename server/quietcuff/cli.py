"""The command `quietcuff`: which sub-commands there are, and which module does each.

Thin on purpose: it must not do any work of its own. A command's module is imported only when that command is asked
for, so that `quietcuff assess` starts without the web framework and the database.
"""

import argparse
import importlib
import os
import sys
from collections.abc import Sequence
from typing import NamedTuple


class Command(NamedTuple):
    """A sub-command. `module` has `add_arguments(parser)` and `run(arguments) -> int`, the exit code."""

    name: str
    help: str
    module: str


COMMANDS = (
    Command("assess", "work out a measurement: JSON in, assessment out", "quietcuff.commands.assess"),
    Command("cuff", "choose a cuff for a limb from the widths in a bag", "quietcuff.commands.cuff"),
    Command("migrate", "bring the database to the newest tables", "quietcuff.commands.migrate"),
    Command("rebuild", "read the record out of its journal anew and compare", "quietcuff.commands.rebuild"),
    Command("found", "found a practice with its first person", "quietcuff.commands.found"),
)


def main(argv: Sequence[str] | None = None) -> int:
    """Run one sub-command and return its exit code: 0 done, 2 when what was given cannot be used."""
    words = list(sys.argv[1:] if argv is None else argv)
    parser = argparse.ArgumentParser(prog="quietcuff", allow_abbrev=False)
    commands = parser.add_subparsers(dest="command", required=True, metavar="command")
    run = None
    for command in COMMANDS:
        of_command = commands.add_parser(command.name, help=command.help, allow_abbrev=False)
        if words[:1] == [command.name]:
            module = importlib.import_module(command.module)
            module.add_arguments(of_command)
            run = module.run
    arguments = parser.parse_args(words)
    # Without a known first word parse_args has already explained itself and left.
    assert run is not None
    try:
        return run(arguments)
    except BrokenPipeError:  # whoever reads us has had enough, as `head` does: nothing to report, and nobody to report it to
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0


if __name__ == "__main__":
    sys.exit(main())
