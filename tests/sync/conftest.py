"""Gives these tests the databases."""

from tests.databases import database_kind, database_url, postgresql, record, sqlite_template  # noqa: F401  (fixtures)
