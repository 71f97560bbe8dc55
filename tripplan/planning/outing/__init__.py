"""Outing."""
