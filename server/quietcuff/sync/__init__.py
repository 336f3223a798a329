"""Handing letters in and out: the format of a bundle, what is answered to a push, the pages of a pull.

Knows the record below it and nothing of HTTP; the words for a code belong to whoever shows it.
"""
