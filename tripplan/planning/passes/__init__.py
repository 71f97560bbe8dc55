"""Which annual passes pay for the outings a family plans?"""
