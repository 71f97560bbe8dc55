# Days that nearly came first. $when: one of the next two.
misses-day = { $day }
misses-day-at = { $day } at { $place }

# A day that misses one wish. $why: how, see below.
misses-possible = { $when } could be done for { $total }, but { $why }.
misses-better = { $when } would be better by { $less } with hassle counted ({ $money }), but { $why }.
misses-as-much = for as much money
misses-more-or-less = { $by } { $more ->
    [yes] more
   *[no] less
  } in money

# A day that is better in one respect, in short and as a sentence. $gain: how much better. $reasons: what speaks against it.
misses-quietest = quietest
misses-quietest-but = { $when } would be the quietest ({ $gain }), but { $reasons }.
misses-cheapest = cheapest
misses-cheapest-but = { $when } would be the cheapest ({ $gain }), but { $reasons }.
misses-most-sleep = most sleep
misses-most-sleep-but = { $when } would keep most of the naps ({ $gain }), but { $reasons }.
misses-shortest-drives = shortest drives
misses-shortest-drives-but = { $when } would have the shortest drives ({ $gain }), but { $reasons }.
misses-best-weather = best weather
misses-best-weather-but = { $when } would usually have the best weather ({ $gain }), but { $reasons }.
misses-instead-of = { $now } instead of { $then }
misses-weather-instead-of = being out in it counts as { $now } instead of { $then }
misses-packed-instead-of = a packed day is { NUMBER($now, style: "percent", maximumFractionDigits: 0) } likely instead of { NUMBER($then, style: "percent", maximumFractionDigits: 0) }

misses-weighs-more = it costs { $more } more with hassle counted
misses-nap-lost = { $minutes } more of the naps are lost
misses-longer-drives = the drives take { $minutes } longer
misses-shorter-visit = the visit is { $minutes } shorter
misses-harsher = being out in the weather counts as { $more } more
misses-dearer = it costs { $more } more
misses-dearer-for = it costs { $more } more ({ $kinds })
misses-kind = { $kind } { $money }
misses-after-birthday = it falls after { $name }'s birthday on { $day }, which costs { $more } more
misses-when-older = it falls when { $name } is { $age } old, which costs { $more } more

# Wishes in short, and how one is missed.
misses-wish-weekdays = on { $days }
misses-weekday = { $day }s are not among your weekdays
misses-wish-in-school = while school is in
misses-no-school = most { -students } nearby have no school, as far as is known or likely
misses-wish-weeks = in the weeks of { $unit }
misses-other-weeks = it lies outside the weeks of { $unit }
misses-wish-budget = at most { $most }
misses-costs = it costs { $total }; you asked for { $wish }
misses-wish-drive = drives of at most { $most }
misses-drive = a drive takes { $takes }; you asked for { $wish }
misses-wish-nap = at least { NUMBER($share, style: "percent", maximumFractionDigits: 0) } of the naps
misses-nap = { $lost } of nap are lost; you asked for { $wish }
misses-wish-quiet = a packed day at most { NUMBER($share, style: "percent", maximumFractionDigits: 0) } likely
misses-packed = a packed day is { NUMBER($share, style: "percent", maximumFractionDigits: 0) } likely
misses-wish-daylight = drives in daylight
misses-dark = { $minutes } of the driving are in the dark
misses-wish-home = home by { $latest }
misses-home = you are home no earlier than { $at }
misses-wish-air = { $air ->
    [indoors] indoors
   *[outdoors] outdoors
  }
misses-air = the place is { $air ->
    [indoors] indoors
    [outdoors] outdoors
   *[both] indoors and outdoors
  }
misses-wish-fitting = fitting { $unit }
misses-does-not-fit = the place does not fit { $unit }
