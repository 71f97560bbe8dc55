"""What to do when the day goes wrong."""
