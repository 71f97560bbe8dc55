"""Holidays."""
