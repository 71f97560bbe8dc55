"""Reads calendar files (RFC 5545) from anywhere, within limits of time and memory."""
