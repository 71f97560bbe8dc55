"""The small values that everything is made of: money, ranges, ages, clocks, opening hours."""
