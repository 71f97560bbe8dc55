"""The family's own records, in one SQLite file."""
