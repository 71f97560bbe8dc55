"""Stretches of study, the places that fit them, and a term's programme of outings."""
