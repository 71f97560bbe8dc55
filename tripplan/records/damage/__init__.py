"""Records that open whatever is damaged: found out, read page by page, made anew, and what is left named."""
