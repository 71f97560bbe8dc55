"""Flips."""
