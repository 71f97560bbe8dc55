dayplan-weather-sends = The next button sends { $latitude }, { $longitude } to { $provider }. That is { $place } to about a
  kilometre. With it go this program's name ({ $program }) and your computer's address, nothing about your family.
