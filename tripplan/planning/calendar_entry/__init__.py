"""A planned outing and the entry on the calendar made of it."""
