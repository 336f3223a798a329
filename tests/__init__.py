"""Tests, in folders that mirror the tree. Nothing outside this folder imports it."""
