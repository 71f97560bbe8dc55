"""The times of a day as arrays: the question, the choices, the legs, the limits."""
