"""Fields that say where something lies, and looking it up."""
