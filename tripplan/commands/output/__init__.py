"""What the commands say and write."""
