"""What a parent writes, as pydantic forms; the records, files and screens take their fields from here."""
