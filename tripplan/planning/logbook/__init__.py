"""What really happened on outings: written down, set against the plan, added up and learned from."""
