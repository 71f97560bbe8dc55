"""Opening hours out of a text as venues write it."""
