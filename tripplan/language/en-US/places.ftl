# Ideas: the places one can go to, and all that is known of one.

places-about = About { $place }
places-all = All ideas
places-prices = Prices
places-visit = Hours and visit
places-weather = Weather through the year
places-drive = The drive, one way
places-none-yet = There are no places here yet. Add the first one above; its name is enough.
places-no-such-place = No place of yours is called “{ $name }”; here are all of them.

places-ideas = Ideas
places-an-idea = { $name }: an idea
places-fits = Fits: { $topics }.
places-fill-in = Fill in { $name }
places-fill-in-help = Hours and prices make a place of it; it keeps its plans.
places-remove-idea = Remove { $name }
places-idea-removed = { $name } is off the wish list.

places-card-guide = How a place card is written
places-card-guide-lead = A card is a small text file that can be handed to another family. This is one; every field is
  described in the guide.
places-card-guide-download = Download the guide
places-share = Share places with another family
places-share-which = Which places?
places-share-all = all of them
places-share-only = Only what the cards say goes along: no names, ages, plans, drives or figures of yours.
places-share-download = { $cards ->
    [one] Download { $cards } card as one file
   *[other] Download { $cards } cards as one file
  }

# One place by its address.
places-ask-before = Before you go, ask the place whether this still holds.
places-download-card = Download card
places-remove = Remove this place
places-removed = { $place } is removed.
places-when-open = When it is open
places-visit-like = What a visit is like
places-crowds = Crowds
places-mind = Please mind
places-questions = Questions for the children
places-own-drive = If you know the way better, type it in; it then counts instead of the estimate.
places-own-distance = Distance one way
places-own-distance-in = { $unit ->
    [mi] Distance one way, in miles
   *[km] Distance one way, in km
  }
places-own-minutes = Minutes one way
places-own-minutes-without = Minutes one way, without rests
places-own-drive-use = Use my figures
places-own-drive-forget = Forget my figures
places-own-drive-forgotten = Your figures for the way to { $place } are forgotten.
places-own-drive-counts = Your figures for { $place } now count.

# Its year of weather.
places-year-unknown = Nobody here knows what it is usually like: no weather station is near. You can type its twelve
  months in, with the card above, or for all places around home on Household.
places-year-show = Show its year
places-year-chart = The year at { $place }: temperatures, wet days and daylight by month; the table below says the same
places-year-table = The year at { $place } by month
places-year = { $coldest } is coldest, usually { $cold }; { $warmest } is warmest, { $warm }. { $wettest } is wettest,
  with { $days } wet days.
places-year-temperatures = low to high
places-year-wet = wet days
places-year-snow = with snow
places-year-light = daylight
places-year-hours = daylight [h]

# What its card says.
places-days-hours = { $days }: { $hours }.
places-open-again = Open again on { $day }.
places-never-open = No open day in the coming year.
places-as-written = As written on the card: { $hours }
places-last-entry = Last entry { $time } before closing.
places-entry-only = Entry only at { $times }.
places-quiet-hours = Quiet hours: { $hours }
places-book-ahead = { $days ->
    [one] To be booked { $days } day ahead.
   *[other] To be booked { $days } days ahead.
  }
places-hours-guessed = These hours are a guess; nobody has read them at their source.
places-to-study = To study: { $topics }.
places-stay = A stay of { $stay } feels complete; less than { $least } is not worth the drive.
places-stay-of-some = For people { $who } { $stay } is comfortable, less than { $least } not worth the drive.
# $days: a rule of days as the card writes it.
places-show = { $name } at { $starts }, { $lasts }{ $worth ->
    [yes] .
   *[no] ; nothing is planned around it.
  }
places-show-on = { $name } at { $starts } ({ $days }), { $lasts }{ $worth ->
    [yes] .
   *[no] ; nothing is planned around it.
  }
places-strollers = A { -stroller } can go all the way round.
places-no-strollers = Not all of it with a { -stroller }.
places-food = { $own ->
    [yes] You may eat what you bring
   *[no] Own food is not allowed
  }; { $sold ->
    [yes] there is something to buy.
   *[no] nothing is sold.
  }
places-all-alike = All days are about alike there: weekends and school breaks make no difference.
places-families-come = Mostly families with children come, so school breaks fill it like weekends.
places-all-ages-come = People of all ages come, so school breaks fill it only a little.
places-fullest-saturdays = Saturdays are the fullest days.
places-fullest-sundays = Sundays are the fullest days.
places-busiest = Busiest in { $months }.
places-classes = In term, school classes usually come at these times: { $times }
places-special-day = { $day }: { $name }, { $factor } times the usual visitors.
places-prices-read = Prices read on { $day }: { $source }.
places-prices-moved = They may have moved by { $percent } % since.

# The family's own figures.
places-own = Our own figures
places-own-take = Beside entry we take { $what }.
places-own-take-nothing = We take nothing beside entry.
places-own-gone = No longer on the card, so not counted: { $what }.
places-own-tolls = Tolls and ferries, there and back: { $price }.
places-own-stay = A stay of { $stay } feels complete to us.
places-own-extra = { $name }: { $price } for all of us.
places-own-extra-about = { $name }: { $price } for all of us, give or take { $percent } %.
places-own-none = None; tolls are not known.
places-own-none-usual = None; the usual add-ons count, and tolls are not known.
places-own-change = Change our own figures
places-own-usual = We take what most families take
places-own-otherwise = Otherwise we take
places-own-otherwise-help = Counts only where the tick above is off.
places-own-nothing = nothing
places-own-save = Save our figures
places-own-forget = Forget our figures
places-own-forgotten = Our figures for { $place } are gone.
places-own-count = Our figures for { $place } now count.
places-own-digits = { $currency } has { $digits } decimal places

# What entry comes to for the household.
places-not-within-a-year = it does not open within a year
places-must-be-booked = { $days ->
    [one] visits must be booked { $days } day ahead
   *[other] visits must be booked { $days } days ahead
  }
places-for-us-closed = For us: { $why }.
places-closed-on = On { $day }: { $why }.
places-not-all-of-us = Nobody may let all of us in on { $day }.
places-not-all-of-us-at = Nobody may let all of us in on { $day }, at { $clock }.
places-for-us-short = For us: { $price } on { $day }.
places-for-us-is = For us that is { $price } on { $day }, at { $clock }.
places-for-us-day = For us that is ... on which day?
places-for-us-day-help = The next open day when left empty. Add-ons and parking are not part of entry.
places-next-best = Next best
places-what-changes = What changes it
places-way-more = { $price }, { $more } more: { $what }.
places-way-same = { $price }, the same: { $what }.
