"""The options of each command, by subject; nothing here loads the planning."""
