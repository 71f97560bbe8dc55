# When the day goes wrong: what can be done. Each of these stands as a heading, and in "...: not any more".
recovery-go-on = Go on to { $place }
recovery-stay-at = Stay at { $place }
recovery-wake = Wake { $name } and go to { $place } at once
recovery-sleep-on-and-stay = Let { $name } sleep on, and stay at { $place }
recovery-sleep-on-then = Let { $name } sleep on, then { $place }
recovery-sleep-on-in-car = Let { $name } sleep on in the car at home
recovery-drive-home = Drive on home
recovery-stay-home = Stay at home
recovery-go-home = Go home now
recovery-turn-back = Turn back
recovery-elsewhere = Go somewhere else
recovery-instead = Go to { $place } instead, { $away } away
# $what: one of those above, done by some of the party only.
recovery-with = { $what } with { $who }

# Times and money. $leave: a sentence's beginning, such as "Load up at 9:00 AM" or the next one.
recovery-left = Left at { $at }
recovery-times = { $leave }, there from { $enter } to { $leave_place } ({ $stay })
recovery-home-at = Home at { $at }
recovery-costs-as-planned = Costs as much as planned.
recovery-costs = Costs { $by } { $more ->
    [yes] more
   *[no] less
  } than planned.
recovery-tickets-back = { $back } of tickets comes back if canceled in time.
recovery-tickets-lost = { $lost } of tickets already paid for is lost.

# What else to know. $whole: whether all of it is outdoors.
recovery-open-air = { $whole ->
    [yes] outdoors
   *[no] partly outdoors
  }
recovery-stays-with = { $who } stays at home with { $name }
recovery-home-until = Everybody is at home until { $name } wakes, about { $at }
recovery-in-car-until = Everybody sits in the parked car until { $name } wakes, about { $at }, an adult among them
recovery-drive = The drive: { $minutes } ({ $known })
recovery-drive-about = The drive: { $minutes } ({ $low } to { $high }; { $known })
recovery-later = { $late } later than planned
# $what: one of the next two.
recovery-after = { $late } after { $what }
recovery-home-by = { $at }, by when you want to be home
recovery-bedtime = the first bedtime at { $at }
recovery-slept-already = { $name } has slept already, by the plan
recovery-tired-at-bedtime = { $name } is tired at bedtime if awake from { $awake } on; left alone, the sleep lasts until about { $wakes }

# Why something cannot be done any more.
recovery-no-adult-left = nobody of 18 or older would be left to go while one adult stays with { $name }
recovery-nobody-takes-one-home = { $name } is ill, and nobody can take only one child home
recovery-all-open-air = every other place is outdoors
recovery-not-worth-it = not worth it any more
recovery-place-why = { $place }: { $why }

# The best indoor outing of the same day. $compared: one of the next two.
recovery-the-same = the same
recovery-more-or-less = { $by } { $more ->
    [yes] more
   *[no] less
  }
recovery-rain = { $place }, { $total } in all, { $compared }
recovery-rain-fits = { $place }, { $total } in all, { $compared }; it fits { $unit }
