"""The household and its parts."""
