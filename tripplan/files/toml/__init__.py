"""Forms as TOML: read with every fault at once, and written."""
