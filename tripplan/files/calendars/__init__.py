"""Calendar files: outings written, school and family calendars read."""
