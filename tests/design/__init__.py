"""Checks of what people see: colours, targets, words, reach."""
