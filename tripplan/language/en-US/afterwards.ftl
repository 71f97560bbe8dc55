# Afterwards: logging an outing, what was logged, and what it adds up to.

afterwards-headline-one = How was { $place }?
afterwards-to-log = { $outings } outings to log
afterwards-so-far = { $outings ->
    [one] { $outings } outing
   *[other] { $outings } outings
  } so far
afterwards-how-was-yours = How was your outing?
afterwards-log = Log { $place }
afterwards-log-another = Log another outing
afterwards-log-first = Log an outing
afterwards-planned = planned { $planned }
afterwards-show-all = Show all { $outings } outings
afterwards-show-fewer = Show fewer
afterwards-table = All outings as a table (.csv)
afterwards-more-about = More about { $place }
afterwards-change = Change { $place }
afterwards-remove = Remove { $place }
afterwards-removed = { $place } on { $day } is out of the logbook.
afterwards-outings-show = What your outings show
afterwards-record = Homeschool record
afterwards-outdoors = { $how } outdoors
afterwards-there = { $stay } there
afterwards-not-noted = money not noted
afterwards-other = other { $amount }
afterwards-money-went-to = What the money went to: { $what }
afterwards-table-planned = Planned
afterwards-table-was = Was
afterwards-as-planned = It went as planned: fill that in
afterwards-as-planned-help = Times, money, distance and nap as the plan had them. Change what was different.
afterwards-learned = What did you learn?
afterwards-learned-help = Goes with every child of school age of whom nothing else is written.
afterwards-more = More: who, times, naps, each child
afterwards-save = Save
afterwards-close-unsaved = Close without saving
afterwards-how-was-on = How was { $place }, { $day }?
afterwards-times = Times
afterwards-money = Money
afterwards-car = The car
afterwards-notes = Notes
afterwards-car-took = { $what }, in { $unit }
afterwards-car-took-help = With the distance it tells what your car really uses.
afterwards-nap-of = { $name }'s nap
afterwards-planned-minutes = planned: { $minutes }
afterwards-no-nap = 0 for none
afterwards-elsewhere = somewhere else
afterwards-plan-said = planned: { $what }
afterwards-pick-day = pick the day
afterwards-day = Day
afterwards-logged = { $place } on { $day } is in the logbook.
afterwards-switch-on = Switch on what plans should go by. The more outings tell, the more your own figure counts.
afterwards-notes-of-crowds = { $notes ->
    [one] { $notes } note
   *[other] { $notes } notes
  } of how full a place was.
afterwards-plan-with-own = Plan with our own: { $what }
afterwards-not-enough = Not enough outings yet.
afterwards-own-on = Planning with your own figures is on: { $what }.
afterwards-own-off = Planning with your own figures is off: { $what }.
afterwards-years-budget = Year's budget
afterwards-on-day = on day
afterwards-money-went = Where the year's money went
afterwards-about-money = the year's money
afterwards-set-budget = Set the year's budget
afterwards-change-budget = Change the year's budget
afterwards-about-budget = the budget
afterwards-since = since { $day }
afterwards-year-before = the year before
afterwards-which-year = Which year?
afterwards-planned-and-paid = Planned and paid
afterwards-may-cost = What outings may cost in a year, in { $currency }
afterwards-no-budget = Empty for no budget.
afterwards-year-begins = The year begins in
afterwards-grades-of = Grades of { $name }, if your state asks
afterwards-save-budget = Save the budget
afterwards-budget-saved = The budget is saved.
afterwards-grades = Grades
afterwards-grades-example = grades 1-6
