"""The day sheet: its content, as a page to print, as PDF, for the telephone."""
