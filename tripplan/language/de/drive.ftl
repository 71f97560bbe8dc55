drive-stop = { $what }
drive-stop-for-fuel = tanken
drive-stop-to-pick-up = { $name } abholen
drive-stop-to-bring-home = { $name } nach Hause bringen
drive-stop-at = { $place }

drive-polar-night = Die Sonne geht an dem Tag nicht auf: Die { $there ->
    [yes] Hinfahrt
   *[no] Heimfahrt
  } ist im Dunkeln.
drive-before-sunrise = { $whole ->
    [yes] Die ganze { $there ->
        [yes] Hinfahrt
       *[no] Heimfahrt
      } liegt
   *[no] Die ersten { $dark } der { $there ->
        [yes] Hinfahrt
       *[no] Heimfahrt
      } liegen
  } vor Sonnenaufgang ({ $rises }).
drive-after-sunset = { $whole ->
    [yes] Die ganze { $there ->
        [yes] Hinfahrt
       *[no] Heimfahrt
      } liegt
   *[no] Die letzten { $dark } der { $there ->
        [yes] Hinfahrt
       *[no] Heimfahrt
      } liegen
  } nach Sonnenuntergang ({ $sets }).
