"""The Day plan page."""
