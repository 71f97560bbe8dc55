"""Every place on every day of a year: equal days are answered once."""
