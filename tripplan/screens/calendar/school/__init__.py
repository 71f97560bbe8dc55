"""School calendars: when schools are out, and the ways to say so."""
