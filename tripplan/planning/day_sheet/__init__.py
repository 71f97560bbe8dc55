"""Day sheet."""
