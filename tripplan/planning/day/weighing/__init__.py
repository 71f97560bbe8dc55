"""What each choice of times weighs: naps, lateness, shows, and what the parent says it costs her."""
