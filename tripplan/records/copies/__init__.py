"""Copies of the records: made every day, kept in order, looked at and put back."""
