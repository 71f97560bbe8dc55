"""The planning itself: pure functions from values to values; no files, database, network, clock or screen."""
