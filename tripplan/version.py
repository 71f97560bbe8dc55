"""The version of the program, written into the files it makes."""

__version__ = "0.1.0"
