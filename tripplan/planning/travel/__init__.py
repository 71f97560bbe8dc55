"""How far, how long, which rests?"""
