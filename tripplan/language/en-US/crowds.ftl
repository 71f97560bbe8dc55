# How full a place is likely to be on a day, and why.

# How full, from the emptiest to the fullest: as a forecast, and as somebody says it who was there.
crowds-plenty-of-room = quiet
crowds-some-company = some company
crowds-well-filled = busy
crowds-packed = packed

# $word: one of these. $odds: "about 1 in 7".
crowds-risk = { $word }; chance of a packed day: { $odds }

# One reason with its size: "Saturday: 2.8 times as busy as an ordinary weekday".
crowds-reason = { $cause }: { NUMBER($factor, minimumFractionDigits: 1, maximumFractionDigits: 1) } times as busy as { $than }

crowds-ordinary-day = an ordinary school day
crowds-weekday = { $day }
crowds-holiday = { -holiday } ({ $name })
crowds-in-lieu = many are off work for { $name }
crowds-bridge-day = alone between days off
crowds-long-weekend = part of a long weekend
crowds-on-break = during { -school-break }
crowds-likely-on-break = likely during { -school-break }

# $students: one of the next three.
crowds-students = the { -students } nearby
crowds-most-students = most { -students } nearby
crowds-some-students = { NUMBER($share, style: "percent", maximumFractionDigits: 0) } of the { -students } nearby
crowds-no-school = no school for { $students }
crowds-short-school-day = a short school day for { $students }, who fill the rest of it
crowds-school-unknown = no school calendar for { $students }, who may or may not have school
crowds-school-likely = no school calendar for { $students }, who likely have school
crowds-no-school-likely = no school calendar for { $students }, who likely have no school

crowds-season = time of year
crowds-season-by-card = time of year, by the busiest months on the place card
crowds-season-in-doubt = time of year, hard to tell where winters are warm
crowds-before-christmas = the weeks before Christmas
crowds-christmas-and-new-year = Christmas and New Year
crowds-free-entry = a day of free entry
crowds-school-classes = school classes come ({ $hours })
crowds-special-day = { $name }
crowds-your-notes = { $notes ->
    [one] from your note here
   *[other] from your { $notes } notes here
  }

# What a day is compared with.
crowds-than-weekday = an ordinary weekday
crowds-than-such-weekday = such a weekday
crowds-than-weekend = another weekend
crowds-than-school-day = a school day
crowds-than-whole-school-day = a whole school day
crowds-than-average = the year's average
crowds-than-paid = a day with an entry fee
crowds-than-without-classes = a school day without them
crowds-than-usual = a usual day
crowds-than-elsewhere = counted elsewhere

# Where the figures come from.
crowds-table-zoo = a city zoo, 440 days of 1990 and 1991
crowds-table-bicycles = leisure riders of a city's rental bikes, 2011 and 2012
crowds-table-walkers = walkers in a riverside park, 2015 and 2016
crowds-table-museum = a city museum and gallery, 2015 to 2019
crowds-table-park-museum = a museum in a park, 2015 to 2018
crowds-table-town-house = a historic town house, 2015 to 2018
crowds-source = counted elsewhere, not at this place: { $tables }
crowds-source-with-notes = counted elsewhere, not at this place: { $tables }. Your own notes here count too: about four of one kind of day weigh as much

# The logbook. $planned and $real: how full; $odds: the chance of a packed day by the plan.
crowds-against-plan = How full: expected { $planned } (chance of a packed day: { $odds }), was { $real }.
