"""The medical record: the journal, what is read out of it, and the people of a practice.

Imports only `contract` and `rules` of ours; knows neither HTTP nor the format of a bundle.
"""
