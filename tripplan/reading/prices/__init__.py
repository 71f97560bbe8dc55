"""Prices out of a text as venues write it."""
