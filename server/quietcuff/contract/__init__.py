"""The edge of meaning: shared files become Python, and what comes in is checked against them.

Knows the shapes of documents, never what a rule computes; the rules in turn never read a file from here.
"""
