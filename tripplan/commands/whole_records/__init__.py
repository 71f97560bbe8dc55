"""Commands that carry all records: export, import, restore."""
