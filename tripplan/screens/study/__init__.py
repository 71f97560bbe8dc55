"""The Study units page."""
