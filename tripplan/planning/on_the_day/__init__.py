"""On the day."""
