"""What a parent writes to say where something lies, and where that is."""
