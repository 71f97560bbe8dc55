# Calendar: when schools are out, and when the family is busy.

calendar-school-file = A district's calendar (.ics), or a table (.csv)
calendar-school-table = A table has the columns first day, last day, name and kind; dates read like 2026-12-24. The last
  day may be empty, and so may the kind: no school, short day, first day of school, last day of school, other.
calendar-days-off = { $days ->
    [one] { $days } day or break without school, ticked
   *[other] { $days } days and breaks without school, ticked
  }
calendar-short-days = { $days ->
    [one] { $days } short day: { -students } go home early or come late
   *[other] { $days } short days: { -students } go home early or come late
  }
calendar-family-file = A calendar file (.ics); only when you are busy is kept
calendar-busy-times = { $times ->
    [0] It names no time when you are busy.
    [one] { $times } time when you are busy.
   *[other] { $times } times when you are busy.
  }
calendar-entries = { $entries ->
    [one] What became of its { $entries } entry
   *[other] What became of its { $entries } entries
  }
calendar-window = Read were the days from { $first } to { $last }.

calendar-title = Calendar
calendar-which = Which calendar?
calendar-our-outings = Our outings
calendar-school = School
calendar-family = Family

# Our outings.
calendar-compare = Compare outings
calendar-none-ahead = No outing ahead
calendar-ahead = { $outings ->
    [one] { $outings } outing ahead, next on { $day }
   *[other] { $outings } outings ahead, next on { $day }
  }
calendar-over = { $outings ->
    [one] Over: { $outings } outing
   *[other] Over: { $outings } outings
  }
calendar-download-year = Download all of the coming year (.ics)
calendar-download-year-help = One file with every outing below; importing it again moves entries and makes no twins.
calendar-status-confirmed = confirmed
calendar-status-tentative = tentative
calendar-status-cancelled = called off
calendar-keep-this = Keep this one
calendar-keep-this-help = It is settled, and the candidates it was pencilled in with are called off.
calendar-settled = { $place } on { $day } is settled.
calendar-download = Download (.ics)
calendar-download-cancellation = Download the cancellation (.ics)
calendar-plan-again = Plan it again
calendar-planned-again = { $place } on { $day } is planned again.
calendar-cancel = Cancel this outing
calendar-called-off = { $place } on { $day } is called off.
calendar-remove = Remove
calendar-remove-help = Takes { $place } off this list.
calendar-removed = { $place } is off the list.
calendar-cancellation-how = Open the cancellation on every device that has the entry; where the entry stays all the
  same, delete it by hand. Tickets bought may be returnable; ask the place.
calendar-all-of-us = all { $people } of us

# What the entry on the calendar tells and reminds of.
calendar-one-entry = one entry
calendar-three-entries = three: drive, visit, way home
calendar-reminders-enough = reminders are enough
calendar-as-tasks = tasks, for a calendar that has a list of tasks
calendar-as-entries = short entries, which every calendar shows
calendar-entry-tells = What the entry tells
calendar-tell-names = Names of those who go
calendar-tell-home = Our home address
calendar-tell-costs = Prices and what it costs in all
calendar-who-reads = Whoever sees the calendar can read what is ticked. Birth dates are never told.
calendar-how-firm = How firm is it?
calendar-layout = Entries
calendar-mark-busy = Mark the time as taken
calendar-color = Color
calendar-own-color = the calendar's own
calendar-entry-reminds = What it reminds us of
calendar-remind-book = To book, the evening before the last day for it
calendar-remind-pack = To pack, the evening before
calendar-remind-ready = To get ready
calendar-remind-minutes = How many minutes before leaving?
calendar-remind-leave = To leave, when it is time
calendar-to-do-as = Booking and packing as
calendar-goes-out = The entry goes out { $told }. { $reminders }
calendar-goes-with = with { $what }
calendar-goes-without = without { $what }
calendar-goes-names = names
calendar-goes-home = home address
calendar-goes-prices = prices
calendar-reminders = Reminders: { $what }.
calendar-no-reminders = No reminders.
calendar-reminds-book = to book
calendar-reminds-pack = to pack
calendar-reminds-ahead = { $time } ahead
calendar-reminds-leave = to leave

# Many kinds of entry.
calendar-remove-named = Remove { $name }
calendar-is-removed = { $name } is removed.
calendar-is-added = { $name } is added.
calendar-is-replaced = { $name } is replaced.
calendar-a-file = A file
calendar-type-in = Type it in
calendar-built-in = Built in
calendar-save = Save

# The family's own week.
calendar-own-week = Your own week
calendar-every-week = Every week
calendar-working-hours = Working hours
calendar-late-evenings = Late evenings
calendar-late-nothing = nothing
calendar-late-later = we leave later the next day
calendar-late-not-free = the next day is not free
calendar-late-what = What does an entry that ends late do to the next day?
calendar-late-saved = What a late evening does is saved.
calendar-no-member = { $name } is no member any more; these hours count for nobody.
calendar-out-of-week = It is taken out of your week.
calendar-block-same-name = A block of the same name takes the place of the one before.
calendar-block-saved = { $name } is in your week.
calendar-work-saved = The working hours of { $name } are in your week.
calendar-add-block = Add this block
calendar-add-hours = Add these hours
calendar-not-during = Not on these days
calendar-not-during-lines = Not on these days, one line each

# When the family is busy.
calendar-not-over = No outing is planned over these times.
calendar-add-busy = Add when you are busy
calendar-how-known = How is it known?
calendar-nothing-in-way = Nothing of yours in the way
calendar-busy-on = Busy on { $taken } of the next { $days } days
calendar-addresses = Your e-mail addresses, with commas between them (optional)
calendar-addresses-help = So that invitations you declined are known. They are used for reading only and not kept.
calendar-never-busy = never busy.
calendar-busy-from-to = { $named ->
    [yes] { $times }, { $first } to { $last }, with what they are.
   *[no] { $times }, { $first } to { $last }, times only.
  }
calendar-from-source = From { $source }.
calendar-read-up-to = It was read up to { $day }.
calendar-nothing-to-keep = There is nothing in it to keep.
calendar-read-before = This file was read before, as '{ $name }'; saving replaces what it held.
calendar-what-called = What do you call this calendar?
calendar-name-of = Name of the calendar
calendar-keep-names = Also keep what the entries say
calendar-not-in-way = Which entries do not stand in the way of an outing?
calendar-not-in-way-help = A birthday, a reminder: they are left out. When you bring the file again, pick them again.
calendar-none-of-them = none of them
calendar-same-name = A calendar of the same name takes the place of the one before.
calendar-save-calendar = Save this calendar
calendar-no-title = (no title)
calendar-so-often = { $title } ({ $times } times)

# Holidays and local days.
calendar-holidays = Public holidays and long weekends
calendar-no-holidays = No public holidays are on record for these countries.
calendar-fairs = Fairs and local days off
calendar-fairs-listed = Fairs and local days off: { $days }
calendar-fairs-lead = A fair, a parade or a local day off makes the places near it fuller.
calendar-column-day = day
calendar-column-holiday = holiday
calendar-column-where = where
calendar-column-row = days off in a row
calendar-around-town = in and around a town
calendar-add-day = Add this day
calendar-name-a-town = name a town with its state, a ZIP code or coordinates, or pick a place

# When schools are out.
calendar-school-lead = When schools near a place are out, it is fuller. Add the calendar of your district.
calendar-add-school = Add a school calendar
calendar-how-have = How do you have it?
calendar-no-school-yet = No school calendar yet
calendar-none-off = No school day off in { $month }
calendar-days-off-in = { $days ->
    [one] { $days } school day off in { $month }
   *[other] { $days } school days off in { $month }
  }
calendar-listed-off = { $days ->
    [one] { $days } break or day off
   *[other] { $days } breaks and days off
  }
calendar-listed-short = { $days ->
    [one] { $days } short day with school
   *[other] { $days } short days with school
  }
calendar-next-off = Next off: { $days }
calendar-so-many-students = { $students } { -students }
calendar-guess = Guess next year from this one
calendar-guess-help = Breaks move to the same weekdays a year on. A guess is a chance, never a fact.
calendar-not-guessed = Nothing was guessed: { $why }.
calendar-guessed = The year after is guessed for { $name }.
