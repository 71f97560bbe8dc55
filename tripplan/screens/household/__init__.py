"""The Household page."""
