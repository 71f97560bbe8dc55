"""A place card beside its prices: its form, for a new card and for one on record."""
