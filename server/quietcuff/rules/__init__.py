"""The rules: one file per rule, named as in shared_schemas/rules/v1; assess.py alone knows their order.

Pure: standard library only, no clock, no file, no database. Documents come in as arguments, never by import.
"""
