# Choose a day: every place on every day, and what could still be done today.

days-title = Which day?
days-no-day = No day can be done
days-no-such-day = No day like that
days-none-in-time = No day in this time can be done.
days-none-as-wished = No day in this time is as you wish.
days-wished = Wished: { $wishes }.
days-nearly = Nearly as good
days-every-day = Every day that can be done
days-why-full = Crowds: why?
days-plan-day = Plan { $day }
days-all-places = all places
days-all-of-them = all of them
days-our-wishes = wishes
days-what-matters = what matters

# The grid of months: how good each day is.
days-best = best
days-good = good
days-fair = fair
days-poor = poor
days-never = no
days-legend = Press a day for the plan of its best place. A dot: school is in session.
days-told = { $day }: { $grade }, { $place }, { $total }

# The list of all days.
days-first-of = { $shown } of { $all }, the best of each place first; the file below has them all.
days-day = day
days-place = place
days-total = total [{ $currency }]
days-unknown = something unknown
days-hassle = cost plus hassle [{ $currency }]
days-leave = leave
days-back = back
days-there = there [min]
days-driving = driving [min]
days-dark = in the dark [min]
days-nap-kept = nap kept [min]
days-nap-lost = nap lost [min]
days-packed = packed [%]
days-school = school in session
days-download = Download this table

days-not-as-wished = { $days ->
    [one] { $days } day more can be done, but not as you wish.
   *[other] { $days } days more can be done, but not as you wish.
  }
days-passed-over = { $days ->
    [one] { $days } day passed over, and why
   *[other] { $days } days passed over, and why
  }
days-ask-one = Ask about one day:
days-can-be-done = It can be done, for { $total }.
days-opens = opens { $day }

# What stands in the way, on so many days.
days-verdict-can-go = can be done on { $days ->
    [one] { $days } day
   *[other] { $days } days
  }
days-verdict-over = over on { $days ->
    [one] { $days } day
   *[other] { $days } days
  }
days-verdict-currency = prices in another currency on { $days ->
    [one] { $days } day
   *[other] { $days } days
  }
days-verdict-closed = closed on { $days ->
    [one] { $days } day
   *[other] { $days } days
  }
days-verdict-hours = hours not known on { $days ->
    [one] { $days } day
   *[other] { $days } days
  }
days-verdict-booking = too late to book on { $days ->
    [one] { $days } day
   *[other] { $days } days
  }
days-verdict-busy = the family is busy on { $days ->
    [one] { $days } day
   *[other] { $days } days
  }
days-verdict-time = too little time for drive and visit on { $days ->
    [one] { $days } day
   *[other] { $days } days
  }
days-verdict-tickets = no ticket lets everybody in on { $days ->
    [one] { $days } day
   *[other] { $days } days
  }
days-verdict-weather = usually colder or hotter there than you allow on { $days ->
    [one] { $days } day
   *[other] { $days } days
  }

# What could we still do today?
days-today = What could we still do today?
days-today-close = Close: what we could still do today
days-free-from = We are free from
days-free-until = Home again by
days-free-ends-first = The free time ends before it begins.
days-nothing-fits = Nothing fits between { $start } and { $end }.
days-why-nowhere = Why nowhere else?
days-why-not = Why not?

# What the day should be like.
days-weekdays = On which weekdays?
days-budget = Spend at most [{ $currency }]
days-any-amount = any amount
days-bad-amount = An amount reads like 120, $120 or 9.50.
days-drive = One drive takes at most
days-drive-any = as long as it takes
days-nap = Of the naps, keep at least
days-as-it-comes = as it comes
days-nap-half = half of it
days-nap-three-quarters = three quarters
days-nap-all = all of it
days-chance-packed = Chance that it is packed
days-at-most-in = at most 1 in { $in_all }
days-where = Where to be
days-anywhere = anywhere
days-indoors = indoors, or both
days-outdoors = outdoors, or both
days-home-any = as the household says
days-unit = Close which stretch of study?
days-unit-none = none in particular
days-in-session = Only while most schools nearby are in session
days-no-dark = No driving in the dark

# What matters to us.
days-weights-lead = What would you gladly pay to be spared each? This changes the order, never the cost.
days-keep-weights = Keep these in the household
days-weights-kept = These figures now stand in the household.
days-weights-bad = An amount reads like 12 or 9.50: { $fields }.

# Places left out because the family was there lately, or is going there.
days-lately = Left out, as visited in the last { $weeks } weeks or planned: { $visits }.
days-visit = { $place } ({ $day })
days-lately-too = These too
days-lately-again = Add --again for these too.
