# The day sheet, and what the phone says on the day, stretch by stretch.

sheet-load-up-at = Load up at { $at }
sheet-drive-off-at = drive off at { $at }
sheet-on-for = on { $day }, for { $place }
sheet-with = with { $names }
sheet-until = until { $at }
sheet-then = Then, at { $at }: { $what }
sheet-home-again = Home again
sheet-tomorrow = tomorrow
sheet-in-days = in { $days } days
sheet-in = in { $left }
sheet-still = still { $left }
sheet-sleeps = { $name } sleeps { $where } until about { $at }
sheet-at-place = at { $place }
sheet-to-place = to { $place }
sheet-no-map = If no map opens, type one of these into yours:
sheet-no-address = The address is not known yet: ask the place.

sheet-when = When
sheet-where = Where
sheet-weather = Weather there
sheet-tickets = Tickets
sheet-emergency = If something happens
sheet-packing = To pack
sheet-steps = Step by step
sheet-naps = Naps
sheet-needs = Allergies and needs
sheet-cautions = Safety
sheet-questions = Three questions to take along
sheet-last-word = Times and costs are plans and estimates. Local law, the place's own rules, and doctors and other
  licensed professionals have the last word.

sheet-born = { $name } (born { $born })
sheet-load-up = Load up
sheet-load-up-home = Load up at home, { $address }
sheet-about-as-good = { $what } (any time from { $first } to { $last } is about as good)
sheet-drive-off = Drive off
sheet-arrive = Arrive
sheet-entry-slot = Entry slot: be at the door
sheet-go-in = Go in
sheet-show = { $name }, until { $end }
sheet-leave = Leave the place, load up
sheet-phone = Phone { $number }
sheet-open = Open { $opens } to { $closes }
sheet-open-last = Open { $opens } to { $closes }, last entry { $last }
sheet-no-time = { $name } at { $starts }: no time for it in this plan
sheet-tickets-total = total for the tickets
sheet-booking = Booking number, { $what }: { $number }
sheet-booking-blank = Booking number: ____________________
sheet-whole-outing = The whole outing, drive and food included: { $total }
sheet-step = { $what }, { $lasts }
sheet-nap = { $name }, { $naps }
sheet-nap-none = usually { $at } for { $minutes }: no room for it on this day
sheet-nap-slept = usually { $at } for { $minutes }: asleep about { $first } to { $last }, { $where }
