"""Every file of the record that holds a table, so that whoever compares tables with migrations sees them all.

A new file with a table is added here; a test compares with what the files say.
"""

from __future__ import annotations

from quietcuff.record import bags, database, journal, measurements, patients, people, tray

FILES = (bags, database, journal, measurements, patients, people, tray)
METADATA = database.db.metadata
