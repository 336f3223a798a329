"""`quietcuff rebuild`: reads the record out of its journal anew and says what had not been as it should.

Must not touch the journal; the work is done in `record/rebuild.py`.
"""

import argparse
import sys

from quietcuff.commands.opened import NotMigrated, opened_record
from quietcuff.config import SettingsRefused
from quietcuff.record.errors import RecordBusy
from quietcuff.record.rebuild import rebuild_all


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """It has none: the database is the one of the settings."""
    parser.description = "Drops what was read out of each practice's journal and reads it out again."


def run(arguments: argparse.Namespace) -> int:
    """A line a table; 0 when all rows were equal before and after, 1 when some had differed (they are mended), else 2."""
    try:
        with opened_record():
            return rebuild_all(print)
    except (SettingsRefused, NotMigrated, RecordBusy) as reason:
        print(reason, file=sys.stderr)
        return 2
