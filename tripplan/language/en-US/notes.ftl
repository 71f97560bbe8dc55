# What a parent should know beside the figures of an outing, in whole sentences.

notes-drive = { $text }
notes-tickets = { $text }
notes-rate = 1 { $currency } counted as { $worth }, typed in as of { $day }.
notes-dearer-price = The dearer price is counted, as { $doubt }.
notes-holiday-at-home = At home it is a { -holiday } ({ $name }), at the place it is none.
notes-holidays-not-known = Holidays of the place's country are not on record; the crowds leave them out.
notes-age-in-doubt = Without the birth day of { $names } the higher age is counted.
notes-no-adult = Nobody in this party is 18 or older.
notes-height-asked = How tall is { $name }? “{ $what }” is only for people { $limits }; it is counted until you say so on the page of your household.
notes-height-from = at least { $height } tall
notes-height-to = at most { $height } tall
notes-too-short = { $name }, { $height } tall, is too short for “{ $what }” (at least { $least }); it is not counted.
notes-too-tall = { $name }, { $height } tall, is too tall for “{ $what }” (at most { $most }); it is not counted.
notes-height-old = { $name } was { $height } tall on { $day }: measure again for “{ $what }”.
notes-two-places-left-out = Tickets for two places are left out: with the passes there are too many ways to compare.
notes-own-stay = { $own } there counts as complete, where the card says { $card }: { $source }.
notes-typed-in = typed in for this place
notes-stay-by-age = { $name } tires first: { $comfortable } there is comfortable, less than { $shortest } not worth the drive.
notes-at-work = { $name } works that day ({ $start } to { $end }); the outing is planned and priced without, as you said.
notes-calendar-ends = The family calendar “{ $name }” was read from { $first } to { $last } only: you may be busy that day.

# Clocks.
notes-another-zone = The place's clock is { $by } { $ahead ->
    [yes] ahead of
   *[no] behind
  } the clock at home.
notes-clocks-change = Clocks at home go { $forward ->
    [yes] forward
   *[no] back
  } { $by } in the night { $night ->
    [before] before
   *[after] after
  } this day.

# Driving, sleep and being late.
notes-much-driving = Think twice: { $drives } of driving for { $there }{ $asleep ->
    [yes] {" "}awake
   *[no] {""}
  } there.
notes-late-home = Being home by { $latest } is unlikely: { $odds }, with your usual delays.
notes-asleep-there = { $name } sleeps through { $asleep } of the { $visit } there.

# Shows, school classes, a quiet hour. $starts: a list of times.
notes-show-missed = { $show } at { $starts }: missed in this plan.
notes-show-beside = { $show } is shown at { $starts }; nothing is planned around it.
notes-show-seen = { $show }: seen from { $start } to { $end }{ $sleepers ->
    [0] {""}
    [one] ; { $asleep } sleeps through it
   *[other] ; { $asleep } sleep through it
  }{ $may_be_late ->
    [yes] ; chance to come too late for it { $late }
   *[no] {""}
  }.
notes-among-classes = School classes usually come from { $start } to { $end }: you are there for { $inside } of it.
notes-after-classes = School classes usually come from { $start } to { $end }; you go in after that, at { $enters }.
notes-before-classes = School classes usually come from { $start } to { $end }; you have left by then, at { $leaves }.
notes-quiet-hour = Quiet hour from { $start } to { $end }: { $there ->
    [yes] { $inside } of it while you are there
   *[no] not while you are there
  }.

# Hours at which one pays less. $changes: some of the next six.
notes-cheaper = { $saves } less to pay: { $changes }.
notes-in-from = in from { $at } on
notes-in-before = in before { $at }
notes-out-by = out by { $at }
notes-out-after = out after { $at }
notes-inside-at-most = inside for at most { $stay }
notes-inside-more-than = inside for more than { $stay }

# A place that is only an idea: what is taken for what is not known, and what to ask.
notes-only-an-idea = This is only an idea so far.
notes-hours-not-known = Not known: when it is open; every day from 9 to 5 is taken for now.
notes-hours-not-checked = The hours are not checked yet.
notes-entry-not-known = Not known: what tickets and parking cost; they are not counted.
notes-entry-guessed = Tickets and parking: about { $about } is a guess of yours.
notes-drive-guessed = The drive: about { $about } is a guess of yours.
notes-place-not-known = Not known: where it is; about 45 min of driving is taken for now.
notes-to-ask = To know more, ask: { $questions }
notes-to-ask-of = { $place }: to know more, ask: { $questions }
notes-ask-hours = open on which days, from when to when?
notes-ask-mondays = closed on Mondays?
notes-ask-holidays = closed on holidays?
notes-ask-adult = price for an adult?
notes-ask-child = price at age { $years }?
notes-ask-baby = price for a baby?
notes-ask-family-ticket = family ticket?
notes-ask-parking = parking?
notes-ask-address = street address?
