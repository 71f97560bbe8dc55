"""Afterwards: the logbook and what it adds up to."""
