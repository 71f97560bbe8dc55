"""The commands that find out about places: from a text, a saved page, or a map."""
