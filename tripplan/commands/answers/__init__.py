"""The JSON answers, key by key, and how they are filled from what the planning says; a file an answer.

`tripplan schema` prints them as JSON schemas. Money is a decimal text with its currency, a time is ISO 8601
with its offset, a date is a date. Keys are only ever added while `format` stays the same.
"""
