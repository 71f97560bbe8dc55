"""The version of the program, written into the files it makes, and its name on the internet."""

__version__ = "0.1.0"
USER_AGENT = f"tripplan/{__version__} (household outing planner)"
"""What goes with every question to a service on the internet."""
