# Day plan: the answer, what the day could be instead, its weather, its sheet.

dayplan-headline = { $place }: load up at { $at }
dayplan-headline-off = { $place }: drive off at { $at }
dayplan-under = { $day }: drive off at { $off }, home again at { $home }
dayplan-under-home = { $day }: home again at { $home }
dayplan-time = { $there } there, { $car } in the car
dayplan-cannot = { $day } cannot be done:
dayplan-to-calendar = Put it on the calendar
dayplan-asked = Place, day, who goes
dayplan-home = Home
dayplan-asleep = { $name } asleep { $where }

# The bar at the bottom.
dayplan-calendar-entry = Calendar entry
dayplan-print = Print
dayplan-print-help = The day sheet on one page.
dayplan-phone = For the phone

dayplan-other-time = Leave at another time
dayplan-why = Why this plan
dayplan-crowds = Crowds
dayplan-good-to-know = Good to know
dayplan-tickets = Tickets and cost: { $total }
dayplan-safety = Safety
dayplan-own-time = What if we left at a time of our own?
dayplan-change-limits = Change what limits the day, on Household
dayplan-other-day = Choose another day

# Good times to leave. $span: "8:15 AM to 8:30 AM".
dayplan-any-departure = Any departure from { $span } is about as good.
dayplan-good-times = Good times to leave
dayplan-side-by-side = These times side by side
dayplan-side-by-side-what = What each of the good times to leave gives
dayplan-window = { $span }: { $there } there, { $nap } of nap kept, home by { $home }
dayplan-own-times = Planned with your own times: { $leaving }, leave the place { $back }.
dayplan-back-to-best = Back to the best plan

# Times tried on sliders.
dayplan-we-load-up = We load up at
dayplan-we-leave = We leave the place at
dayplan-gets-tired = { $name } gets tired at
dayplan-cannot-be = That cannot be:
dayplan-naps-only-tried = Naps are only tried here. Change a nap's usual time on Household.
dayplan-use-tried = Plan the day with these times
dayplan-given-nap = Nap: { $nap }
dayplan-given-visit = { $there } at { $place }, from { $at }
dayplan-given-show = { $name }: seen at { $at }
dayplan-given-no-show = { $name }: no time for it
dayplan-given-home = Home by { $home }

# Will it work, and what the day could be traded for.
dayplan-will-it-work = Will it work?
dayplan-delays = Counted with getting off { $usual } min late on a usual day, { $late } min on one day in ten.
dayplan-delays-from = Where both figures come from: { $known }.
dayplan-delays-household = Both figures are on Household.
dayplan-trade = Nap or more time there?
dayplan-nothing-to-trade = Nothing has to be traded: the best plan keeps the most nap and the longest stay.
dayplan-why-best = Why this is the best, and what would help
dayplan-trade-lead = Each mark is a way to spend the day: more nap, less time there.
dayplan-trade-chart = Nap kept against time at the place, one mark for each way to spend the day; see the table
dayplan-trade-table = What the day could be traded for
dayplan-trade-line = Load up at { $at }, home { $home }: { $what }
dayplan-trade-load-up = load up
dayplan-trade-nap = nap kept
dayplan-trade-there = time there
dayplan-trade-home = home
dayplan-trade-weighs = weighs
dayplan-trade-best-at = { $at } (best)
dayplan-trade-best = the best
dayplan-trade-mark = home { $home }
dayplan-trade-axis-there = time there [min]
dayplan-trade-axis-nap = nap kept [min]

# Shows.
dayplan-shows = Which shows do we want to see?
dayplan-shows-help = The day is planned around the ones picked. They are kept on the place's card.
dayplan-show = { $name } ({ $starts })
dayplan-shows-kept = The shows to see at { $place } are kept.

# If it rains.
dayplan-rain-nothing = If it rains: nothing indoors can be done that day.
dayplan-rain = If it rains: { $what }.
dayplan-rain-use = Go to { $place } instead
dayplan-rain-use-help = Takes the old plan's place here, and on the calendar.
dayplan-rain-used = The plan is now { $place } instead of { $before }.

# The weather of the day.
dayplan-weather = The weather that day
dayplan-weather-better = Do you know better?
dayplan-weather-such-as = Such as { $examples }
dayplan-weather-use = Use my word for it
dayplan-weather-sends = The next button sends { $latitude }, { $longitude } to { $provider }. That is { $place } to about a
  kilometer. With it go this program's name ({ $program }) and your computer's address, nothing about your family.
dayplan-weather-ask = Send this and ask for the forecast
dayplan-weather-forget = Back to the usual weather
dayplan-weather-counts = “{ $words }” counts for { $day } at { $place }.
dayplan-weather-other-day = This plan is for { $day }, so nothing changes here.
dayplan-weather-failed = There is no new forecast: { $trouble }. What counted before still counts.
dayplan-weather-until = The forecast counts from { $first } to { $last }.
dayplan-weather-not-of-day = The forecast does not reach { $day }, so that day stays as it was.
dayplan-weather-usual = The usual weather counts for { $day }.

# The day sheet.
dayplan-sheet = Day sheet to print
dayplan-sheet-lead = One page for the day: times, tickets, what to pack, who to call.
dayplan-sheet-to-pack = To pack:
dayplan-sheet-paper = Paper of the PDF
dayplan-sheet-letter = Letter
dayplan-sheet-html = Download the web page (.html)
dayplan-sheet-pdf = Download the PDF
dayplan-sheet-booking = Booking
dayplan-sheet-what = what
dayplan-sheet-number = number
dayplan-sheet-who-to-call = Who to call
dayplan-sheet-who = who
dayplan-sheet-questions = Our own questions
dayplan-sheet-also = We also pack
dayplan-sheet-without = We do without
dayplan-sheet-bookings-field = Booking numbers, one a line
dayplan-sheet-bookings-example = Tour at noon: K7-3312
dayplan-sheet-contacts-field = Who to call when something happens, one a line
dayplan-sheet-contacts-example = Aunt next door: (608) 555-0100
dayplan-sheet-questions-field = Our own questions for { $place }, up to three, one a line
dayplan-sheet-questions-help = They come before those of the place card.
dayplan-sheet-without-field = We do without, on every outing
dayplan-sheet-nothing = nothing
dayplan-sheet-also-field = We also pack, on every outing, one a line
dayplan-sheet-privacy = A paper may be left behind: it has names, and of the rest only what you tick.
dayplan-sheet-needs = Allergies and needs, as noted in the household
dayplan-sheet-birth-dates = Birth dates
dayplan-sheet-address = Our home address
dayplan-sheet-names = Names on the page saved for the phone
dayplan-sheet-names-help = Without this tick, a first letter stands for each of you there.
dayplan-sheet-save = Save what the sheet says
dayplan-sheet-saved = The day sheet for { $place } is saved.
