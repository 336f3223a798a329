"""Measurements of speed, run by hand: they state a figure and decide nothing."""
