"""What each kind of offer means: one file a kind, compiled into the constraints that solvers read."""
