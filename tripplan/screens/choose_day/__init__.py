"""Choose a day: every place on every day, as the parent wishes it."""
