"""The command for study units and the programme."""
