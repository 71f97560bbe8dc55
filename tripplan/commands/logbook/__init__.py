"""The command for the logbook."""
