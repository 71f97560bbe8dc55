"""Outings."""
