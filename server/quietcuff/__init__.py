"""quietcuff: a blood pressure that can be trusted, taken away from the hospital.

Rooms, top floor first: web, sync, record, then contract and rules beside each other. Imports go downward only.
This file must stay empty of imports: every room, and the pure rules above all, is importable alone.
"""
