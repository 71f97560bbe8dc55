# Side by side: up to three outings, each on its best day.

compare-headline = { $outings ->
    [0] No outing
    [1] One outing
    [2] Two outings
   *[3] Three outings
  } for { $people }
compare-no-day = No day in this time can be done
compare-why-not = Why not?
compare-only-idea = Only an idea: hours and prices are guesses
compare-plan = Plan { $place }
compare-why = Why { $total }?
compare-close = Close

compare-what-it-costs = What it costs
compare-tickets = Tickets
compare-safety = Safety
compare-leave-home = Leave home:
compare-and-back = { $leaving }; back { $home }
compare-drive = Drive, one way:
compare-cars = Cars:
compare-at-place = At the place:
compare-nap = Nap:
compare-weather = Weather there:
compare-crowds = Crowds:

compare-how-sure = How sure is this order?
compare-all-figures = All figures side by side
compare-chart = Stacked bars, one a place: what its likely total is made of; the table says the same

compare-suggest = Suggest three

compare-maybe-both = Save both as maybes
compare-maybe-all = Save all { $outings } as maybes
compare-maybe-help = Keep one of them on the Calendar page, and the others are canceled.
compare-maybe-none = All of them are planned already.
compare-maybe-saved = { $outings ->
    [one] { $outings } outing is saved as a maybe.
   *[other] { $outings } outings are saved as maybes; their entries are on the Calendar page.
  }
