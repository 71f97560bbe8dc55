"""One place, one day, one party: where all answers meet."""
