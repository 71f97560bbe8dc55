"""Weighing."""
