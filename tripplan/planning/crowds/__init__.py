"""How likely is a full house?"""
