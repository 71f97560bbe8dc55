"""What is said to people: sentences by language, and how figures are written in it."""
