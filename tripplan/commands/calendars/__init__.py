"""Commands about days: the family's own, schools, holidays, the calendar server."""
