"""The Logbook page."""
