"""What does an outing with other households cost, and who owes whom?"""
