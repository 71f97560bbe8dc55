"""What the weather is like during a visit, what it weighs, and at which hours it would be better."""
