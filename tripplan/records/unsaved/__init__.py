"""What is chosen and half written, until it is saved or dropped."""
