# The way there and home.

# What is stopped for, as the label of a stretch of the day.
drive-stop = { $what }
drive-stop-for-fuel = fuel stop
drive-stop-to-pick-up = pick up { $name }
drive-stop-to-bring-home = bring { $name } home
drive-stop-at = at { $place }

# Which part of a drive is in the dark. $there: no on the way home; $whole: whether it is all of it.
drive-polar-night = The sun does not rise that day: the drive { $there ->
    [yes] there
   *[no] home
  } is in the dark.
drive-before-sunrise = In the dark: { $whole ->
    [yes] the whole drive
   *[no] { $dark } of the drive
  } { $there ->
    [yes] there
   *[no] home
  }, before sunrise ({ $rises }).
drive-after-sunset = In the dark: { $whole ->
    [yes] the whole drive
   *[no] { $dark } of the drive
  } { $there ->
    [yes] there
   *[no] home
  }, after sunset ({ $sets }).
