"""What the command line does with measurements and cuffs: the rooms below joined for a person at a terminal.

One module a sub-command, as cli.py lists them. No rule, check or sentence is written here.
"""
