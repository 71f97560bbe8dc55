# One day at one place: why it cannot be done, what it weighs, and what it could be traded for.

# Limits that could give way, as parts of a sentence.
plan-limit-leaving = leaving no earlier than { $earliest }
plan-limit-home = being home by { $latest }
plan-limit-stay = a visit of at least { $shortest }
plan-limit-taken = the time that is taken
plan-limit-taken-by = the time that is taken ({ $names })
plan-limit-driving = driving at most { $most } in a day
plan-limit-entry = hours at which an offer lets all of you in

# Why a day cannot be done, without a full stop. $stay, $home, $leaving, $driving, $taken, $limits: limits as above.
plan-limits-together = { $limits } do not go together
plan-nobody-let-in = with { $drive } to get there, nobody would be let in any more that day
plan-too-long = { $over } too long: the drive, the opening hours, { $stay } and { $home } do not fit
plan-too-late = { $over } too late: the drive, the opening hours, { $stay }, { $home } and { $leaving } do not fit
plan-stay-too-long = at most { $left } would be left: { $stay } does not fit
plan-drives-too-long = there and back take { $least }: { $driving } does not fit
plan-no-room = { $taken } leaves no room for it
plan-no-offer-then = no offer lets all of you in at the hours that the rest of the day leaves

# Why two times that somebody tried do not go together.
plan-leaves-before = Leaving at { $leaves } is before { $earliest }, when everybody is up and ready.
plan-drives-more = There and back take { $drives } of driving; your family drives at most { $most } a day.
plan-home-after = You would be home at { $home }, { $over } after { $latest }, when you want to be home.
plan-taken = The time from { $span } is taken.
plan-taken-by = The time from { $span } is taken: { $name }.
plan-span = { $start } to { $end }
plan-closed-then = Leaving the place at { $leaves } does not fit: it is open { $spans }.
plan-after-last-entry = You would be there at { $arrives }, after the last entry at { $last }.
plan-after-last-timed-entry = You would be there at { $arrives }, after the last timed entry at { $last }.
plan-nobody-let-in-then = Nobody is let in at the times when it is open then.
plan-stay-too-short = Let in at { $enters }, only { $left } would be left there; a visit takes at least { $shortest }.
plan-no-offer-between = No offer on the price board lets all of you in from { $enters } to { $leaves }.
plan-weather-not-allowed = From { $enters } to { $leaves } it would be colder or hotter outdoors than you allow.

# What gave way, as the beginning of one of the two sentences below.
plan-change-leaving = Leaving home from { $then } instead of { $now }
plan-change-up = Everybody up by { $then } instead of { $now }
plan-change-driving = Driving up to { $most } in the day
plan-change-home = Being home by { $then } instead of { $now }
plan-change-entry = Being let in { $minutes } minutes after the last entry
plan-change-lunch = Lunch at { $then } instead of { $now }
plan-change-nap-end = Letting naps end { $minutes } minutes nearer to bedtime
plan-change-nap = { $name }'s nap up to { $minutes } minutes further from its usual time
plan-change-makes-possible = { $change } would make the day possible.
plan-change-helps = { $change } would help most: { $saves } less, with hassle counted.
plan-nothing-helps = None of the limits helps if it gives way by 15 minutes.

# What weighs on a day, as parts of a sentence.
plan-lost-nap = lost nap
plan-early-start = leaving home early
plan-driving = driving
plan-waiting = waiting to be let in
plan-impatience = driving at a stretch beyond the children's patience
plan-short-stay = stay cut short
plan-long-stay = staying on after a comfortable stay
plan-among-classes = school classes around you
plan-outdoors = being outdoors in the weather
plan-quiet-hour-unused = the quiet hour not used
plan-lunch = lunch
plan-early-lunch = lunch earlier than usual
plan-late-lunch = lunch later than usual
plan-late-for-timed-entry = coming too late for the timed entry
plan-late-for-last-entry = coming too late for the last entry
plan-missed-show = missing { $show }
plan-home-late = being home after the time you set
plan-home-after-bedtime = being home after bedtime

# How much of it. $what: one of the above.
plan-minutes-of = { $minutes } of { $what }
plan-average-of = on average { NUMBER($minutes, minimumFractionDigits: 1, maximumFractionDigits: 1) } min of { $what }
plan-chance-of = the chance of { $what } ({ NUMBER($chance, style: "percent", minimumFractionDigits: 1, maximumFractionDigits: 1) })

# Why the best plan is the best. $parts: some of the next three.
plan-part = { $what } { $felt }
plan-smaller-parts = smaller ones { $felt }
plan-money-part = { $spent } in money
plan-best-weighs-nothing = The best plan has no hassle: all naps kept, no drive, a comfortable stay.
plan-best-weighs-least = { $weighs } is the least by what matters to you, of all times to leave and return: { $parts }.
plan-best-starts-latest = { $weighs } is about the least by what matters to you, with the latest start: { $parts }.

# What one gains and loses with a plan against the best; $changes: some of the next ones.
plan-difference-nap = { $by } { $more ->
    [yes] more
   *[no] less
  } nap
plan-difference-awake = { $by } { $more ->
    [yes] more
   *[no] less
  } time awake there
plan-difference-stay = { $by } { $more ->
    [yes] more
   *[no] less
  } time there
plan-difference-driving = { $by } { $more ->
    [yes] more
   *[no] less
  } driving
plan-difference-money = { $by } { $more ->
    [yes] more
   *[no] less
  } in money
plan-no-difference = as much nap and as long a stay
plan-is-best = This is the best plan.
plan-weighs-more = { $by } more than the best plan, with hassle counted: { $changes }.
plan-weighs-less = { $by } less than the best plan, with hassle counted: { $changes }.
plan-weighs-same = As good as the best plan: { $changes }.

# What a stretch of the day is spent on. $there: no on the way home.
plan-step-load-up = load up for the way { $there ->
    [yes] there
   *[no] home
  }
plan-step-drive = drive { $there ->
    [yes] there
   *[no] home
  }
plan-step-rest = rest on the way { $there ->
    [yes] there
   *[no] home
  }
plan-step-lunch-on-the-way = lunch at a rest on the way { $there ->
    [yes] there
   *[no] home
  }
plan-step-unload = unload
plan-step-wait = wait to be let in
plan-step-visit = visit
plan-step-lunch = lunch
plan-step-lunch-outside = lunch in or by the car
plan-step-show = { $show }

# How likely a plan holds. $odds: "about 9 in 10".
plan-chance-of-timed-entry = Chance to make the timed entry at { $at }: { $odds }.
plan-chance-of-last-entry = Chance to make the last entry at { $at }: { $odds }.
plan-sure-by = Planning to leave by { $leaves } makes it about 9 in 10.
plan-never-sure = No departure that day makes it 9 in 10.
plan-chance-of-home = Chance to be home by { $latest }: { $odds }.
plan-chance-of-bed = Chance to be home before the first bedtime at { $bed }: { $odds }.
plan-usually-home = With the usual delays you are home by { $half } on half of all days, by { $most } on nine of ten.
