"""The Calendar page: outings onto the calendar, school and family calendars in."""
