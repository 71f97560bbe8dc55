"""Real roads: maps of regions on this computer, and the road engine that is asked about them."""
