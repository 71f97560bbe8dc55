"""Adding a place: one field for a name, a text, a page or a card; and the short way to type one in."""
