"""What planning is told about the family, and when it is busy."""
