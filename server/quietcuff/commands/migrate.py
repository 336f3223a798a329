"""`quietcuff migrate`: brings the database of the settings to the newest tables. Safe to run again; loses nothing."""

import argparse
import sys

from quietcuff.app import create_app
from quietcuff.config import SettingsRefused
from quietcuff.record import database


def add_arguments(_parser: argparse.ArgumentParser) -> None:
    """No arguments: which database it is, the settings say."""


def run(_arguments: argparse.Namespace) -> int:
    """Migrates; 0 when done, 2 when the settings are refused."""
    try:
        app = create_app()
    except SettingsRefused as refused:
        print(refused, file=sys.stderr)
        return 2
    with app.app_context():
        database.migrate()
    return 0
