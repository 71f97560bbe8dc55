"""Which tickets let the whole party in for the least money?"""
