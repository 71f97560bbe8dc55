"""The record of outings that a state may ask for."""
