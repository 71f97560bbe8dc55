"""What the weather is usually like at a place, by day of the year and by the hour."""
