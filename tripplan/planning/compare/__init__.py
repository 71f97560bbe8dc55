"""Many places side by side, each on its best day, and how sure their order is."""
