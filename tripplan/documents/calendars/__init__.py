"""Calendars."""
