"""What would make another place the cheapest, one file an input."""
