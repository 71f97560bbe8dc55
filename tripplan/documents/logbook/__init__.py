"""Logbook entries and settings."""
