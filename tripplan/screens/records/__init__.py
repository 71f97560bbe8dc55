"""The Records page."""
