"""The command line: each command parses, asks the planning and tells its answer."""
