"""School and family calendars, the own week, local days, the calendar server."""
