"""One form engine: any written document, or a part of it, asked for by its own description."""
