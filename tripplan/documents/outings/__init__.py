"""Outings that are planned, and what a parent writes for them."""
