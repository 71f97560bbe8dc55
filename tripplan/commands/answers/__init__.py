"""The JSON answers: which keys the planning's values have there, and their JSON schema.

Money is a decimal text with its currency, a time is ISO 8601 with its offset, a date is a date, a
length of time is ISO 8601 in minutes, such as PT85M. Keys are only
ever added while `format` stays the same.
"""
