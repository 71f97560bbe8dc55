# The way there and home.

# What is stopped for, as the label of a stretch of the day.
drive-stop = { $what }
drive-stop-for-fuel = fuel stop
drive-stop-to-pick-up = pick up { $name }
drive-stop-to-bring-home = bring { $name } home
drive-stop-at = at { $place }
