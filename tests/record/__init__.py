"""Tests of server/quietcuff/record: every one of them on SQLite and on PostgreSQL."""
