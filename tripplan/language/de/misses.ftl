misses-day = { $day }
misses-day-at = { $day } ({ $place })

misses-possible = { $when } ginge für { $total }, aber { $why }.
misses-better = { $when } wäre um { $less } besser, den Aufwand mitgerechnet ({ $money }), aber { $why }.
misses-as-much = für ebenso viel Geld
misses-more-or-less = { $by } { $more ->
    [yes] mehr
   *[no] weniger
  } Geld

misses-quietest = am ruhigsten
misses-quietest-but = { $when } wäre am ruhigsten ({ $gain }), aber { $reasons }.
misses-cheapest = am günstigsten
misses-cheapest-but = { $when } wäre am günstigsten ({ $gain }), aber { $reasons }.
misses-most-sleep = am meisten Schlaf
misses-most-sleep-but = { $when } bliebe am meisten Mittagsschlaf ({ $gain }), aber { $reasons }.
misses-shortest-drives = kürzeste Fahrt
misses-shortest-drives-but = { $when } wäre die Fahrt am kürzesten ({ $gain }), aber { $reasons }.
misses-best-weather = bestes Wetter
misses-best-weather-but = { $when } wäre das Wetter gewöhnlich am besten ({ $gain }), aber { $reasons }.
misses-instead-of = { $now } statt { $then }
misses-weather-instead-of = draußen sein zählt { $now } statt { $then }
misses-packed-instead-of = überfüllt mit { NUMBER($now, style: "percent", maximumFractionDigits: 0) } statt { NUMBER($then, style: "percent", maximumFractionDigits: 0) }

misses-weighs-more = es kostet { $more } mehr, den Aufwand mitgerechnet
misses-nap-lost = { $minutes } mehr Mittagsschlaf gehen verloren
misses-longer-drives = die Fahrt dauert { $minutes } länger
misses-shorter-visit = der Besuch ist { $minutes } kürzer
misses-harsher = draußen sein zählt { $more } mehr
misses-dearer = es kostet { $more } mehr
misses-dearer-for = es kostet { $more } mehr ({ $kinds })
misses-kind = { $kind } { $money }
misses-after-birthday = es liegt nach dem Geburtstag von { $name } am { $day }, das kostet { $more } mehr
misses-when-older = { $name } ist dann { $age } alt, das kostet { $more } mehr

misses-wish-weekdays = am { $days }
misses-weekday = { $day } ist keiner Ihrer Wochentage
misses-wish-in-school = während Schule ist
misses-no-school = die meisten Schulkinder der Umgebung haben dann wohl keine Schule
misses-wish-weeks = in den Wochen von { $unit }
misses-other-weeks = es liegt nicht in den Wochen von { $unit }
misses-wish-budget = höchstens { $most }
misses-costs = es kostet { $total }; gewünscht: { $wish }
misses-wish-drive = Fahrten von höchstens { $most }
misses-drive = eine Fahrt dauert { $takes }; gewünscht: { $wish }
misses-wish-nap = mindestens { NUMBER($share, style: "percent", maximumFractionDigits: 0) } des Mittagsschlafs
misses-nap = { $lost } Mittagsschlaf gehen verloren; gewünscht: { $wish }
misses-wish-quiet = höchstens { NUMBER($share, style: "percent", maximumFractionDigits: 0) } Gefahr eines überfüllten Tages
misses-packed = die Gefahr eines überfüllten Tages ist { NUMBER($share, style: "percent", maximumFractionDigits: 0) }
misses-wish-daylight = Fahrten bei Tageslicht
misses-dark = { $minutes } der Fahrt liegen im Dunkeln
misses-wish-home = bis { $latest } zu Hause
misses-home = Sie sind frühestens um { $at } zu Hause
misses-wish-air = { $air ->
    [indoors] drinnen
   *[outdoors] draußen
  }
misses-air = dort ist man { $air ->
    [indoors] drinnen
    [outdoors] draußen
   *[both] drinnen und draußen
  }
misses-wish-fitting = passend zu { $unit }
misses-does-not-fit = der Ort passt nicht zu { $unit }
