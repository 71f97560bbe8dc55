"""Study units and the wishes for a programme."""
