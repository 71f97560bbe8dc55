"""Single figures as people type them into a field: amounts, times, dates, durations."""
