"""Tests of server/quietcuff/sync: every one that touches a record on SQLite and on PostgreSQL."""
