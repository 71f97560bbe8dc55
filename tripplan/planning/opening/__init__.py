"""Opening."""
