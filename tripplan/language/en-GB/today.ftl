today-canceled = { $place } is cancelled.
