"""Files that leave or enter the program: place cards, household files, calendars, tables."""
