drive-stop = { $what }
drive-stop-for-fuel = tanken
drive-stop-to-pick-up = { $name } abholen
drive-stop-to-bring-home = { $name } nach Hause bringen
drive-stop-at = { $place }
