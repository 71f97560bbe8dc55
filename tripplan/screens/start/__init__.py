"""The page one lands on: what next?"""
