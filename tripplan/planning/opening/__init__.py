"""Is it open, when, and until when to book."""
