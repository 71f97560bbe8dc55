"""The place card and what a parent notes about a place beside it."""
