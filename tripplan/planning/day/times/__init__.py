"""Times."""
