"""Family."""
