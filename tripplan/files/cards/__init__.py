"""Place cards, households and logbook entries as files."""
