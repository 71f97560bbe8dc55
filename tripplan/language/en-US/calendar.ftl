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
