"""What to take along on a day sheet: packing list, questions, numbers to ring."""
