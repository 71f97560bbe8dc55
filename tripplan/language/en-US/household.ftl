# Household: a card a person, and cards for the home, the car, money and habits.

household-stays-here = All of this stays on this computer.
household-demo-only = Changes here change the demo only.
household-your-family = Your family
household-three-things = Three things are enough to begin: a name, where you live, and who belongs to it.
household-what-called = What do you call your household?
household-who-belongs = Who belongs to it?
household-birth-or-age = A birth date as you write it, or an age such as 8 or 22 months.
household-name-row = Name { $row }
household-born-row = Birth date or age { $row }
household-where-live = Where do you live?
household-save-first = Save and begin
household-saved-first = Saved. Places come next: add the first one under Ideas.
household-or-file = Or bring a file

household-change = Change { $what }
household-save = Save { $what }
household-the-home = the home
household-the-weather = the usual weather
household-the-car = the car
household-the-food = food
household-the-reserve = reserve and treats
household-the-worth = what matters to you
household-the-habits = how we travel
household-the-rush = rush hours
household-the-stops = stops
household-the-passes = passes

household-add-person = Add a person
household-new-person = the new person
household-add = Add this person
household-added = { $name } is added.
household-naps-later = Naps can be added once the person is here.
household-remove = Remove { $name }
household-removed = { $name } is removed. 'Undo last change' brings { $name } back.
household-add-nap = Add a nap for { $name }
household-day-of = up { $wakes }, bed { $bed }
household-nap = nap { $start }, { $length }
household-nap-band = Awake { $wakes } to { $bed }; asleep { $naps }
household-span = { $start } to { $end }
household-only-age = Known: { $born }. Type the birth date when you have it; prices then fit to the day.
household-more-about = More about { $name }: times, drives, discounts
household-usual-naps = Fill in the naps that are usual at this age
household-usual-naps-why =
    Two naps by 9 to 12 months, one by 15 to 24 months, none for most from four years on
    (Weissbluth, Sleep 18:82-87, 1995). The clock times are a first guess without a source.
household-usual-naps-stand = The usual naps stand below. Nothing is kept before you save.

household-home = Home
household-reads = { $currency } · { $units } · { $language }
household-no-car = No car
household-no-car-cost = The cost of driving stays unknown.
household-go-by-car = We go by car
household-seats = { $seats ->
    [one] { $seats } seat
   *[other] { $seats } seats
  }
household-fuel-at = fuel at { $price }

household-money = Money
household-food-packed = Lunch packed: { $adult } an adult, { $child } a child
household-food-bought = Lunch bought: { $adult } an adult, { $child } a child
household-reserve = Reserve { $percent }%, treats { $treats } a child
household-nap-worth = An hour of lost nap counts { $nap }, an hour in the car { $car }
household-usual-figure = A field left empty goes back to the usual figure.

household-habits = How we travel
household-hours = Out from { $out }, home by { $home }
household-rests = A rest after { $stretch } at the wheel
household-rush-published = Rush hours near large cities
household-rush-own = Rush hours of our own
household-rush-never = No rush hours
household-fuel-range = A filling lasts { $range }
household-picks-up = We pick up { $name }
household-stops-back = On the way back: { $what }

household-passes = Passes we hold
household-no-passes = None yet.

household-undo = Undo last change
household-undo-help = Once more undoes the change before it.
household-undone = The last change is undone.
household-saved = Saved.

household-more = More
household-lead-food = What eating costs on an outing, for each person.
household-lead-habits =
    After { $stretch } minutes of driving a rest of at least { $rest } minutes is advised (The Highway Code,
    Great Britain, rule 91). The plan never drives longer without one. With a child under two it rests after
    { $small } minutes at the latest.
household-lead-worth = What would you gladly pay to be spared each? It changes the order of days, never the cost.
household-lead-weather =
    Weather stations tell it in the United States, the Netherlands and around Dublin. Elsewhere yours counts
    within 80 km (50 mi) of home.
household-lead-stops = Belts and child seats follow the law where you drive, also for those who are picked up.
household-fuel = Fuel
household-comes-along = Somebody who comes along
household-way-back = On the way back
household-picked-up-where = Where they are picked up
household-picked-up-help = Town and state, ZIP code, coordinates or a map's link; the detour is then estimated.

household-when-full = When are the roads full where you drive?
household-way-published = By the published figures, near large cities only
household-way-own = In the hours below
household-way-never = Never
household-add-hours = Add other hours
household-published-rush =
    The published figure: { $factor } times as long on working days, counted from { $hours }, as an average of
    52 large US metropolitan areas (Federal Highway Administration, 2021 Urban Congestion Trends). In and near
    New York, Los Angeles, Philadelphia, Washington, Boston and Chicago it is { $largest }, and { $by_day } between
    these hours. Your own roads may differ far more.

household-no-pass-sold = None of your places sells an annual pass.
household-leave-pass-out = Leave out: { $offer }, until { $day }
household-guests-so-far = Guests { $offer } has let in so far
household-another-pass = Another pass you hold
household-none = none
household-written-out-to = Who is it written out to?
household-until-which-day = Until which day does it count?
household-one-person = pick at least one person
household-held-for = { $offer } of { $place }, for { $holders }, until { $day }

household-leave-nap-out = no longer taken, leave it out
household-leave-hours-out = leave them out
household-no-hours-left = no hours are left; keep some, or choose one of the other two answers
household-hours-not-counted = you changed the hours below; they count only with the answer '{ $answer }'
household-place-or-longer = give a place, or how much longer it makes the way and the drive, not both

household-file = The household's file
household-file-holds = The file holds names and birth dates; think about who gets it.
household-file-download = Download the household file
household-file-bring = Bring a household file
household-file-take = Take this household over
household-file-takes = It takes the place of the one on record; places and calendars stay.
household-file-coordinates = a place by coordinates
household-file-preview = { $name }, in { $town }: { $people }.
household-file-taken = The household from the file is taken over.
