"""What does an outing with other households cost, and how do they settle it?"""
