# For our studies: what is studied when, the places that fit, and the semester's outings.

studies-headline = { $outings ->
    [0] No outing fits yet
    [one] One outing for your studies
   *[other] { $outings } outings for your studies
  }
studies-what = What are you studying?
studies-begin = Say what the children study and when. Each topic then gets an outing that fits.

studies-at-most = at most { $money }
studies-no-budget = no budget
studies-two-a-week = two a week are fine
studies-one-a-week = one a week
studies-limits = the limits
studies-total = { $total } in all
studies-left = { $left } left of { $budget }
studies-left-unsure = { $left } left of { $budget }; it may not be enough
studies-lower-bound = Some costs are not known, so it may be more.
studies-none-worked-out = No outings can be worked out: { $why }.
studies-obstacles = The outings do not all fit. Any one of these would have to give way:
studies-exact = Exact for these days. A price, a calendar or the weather may still change it.

studies-keep-all = Save all { $outings } as maybes
studies-keep = Save { $place } as a maybe
studies-kept-all = { $outings } outings are planned; Calendar has their entries.
studies-kept = { $place } on { $day } is planned; Calendar has its entry.
studies-weeks = { $first } to { $last }
studies-plan = Plan { $place }
studies-planned = planned
studies-fixed = fixed by you
studies-also-fit = also: { $places }
studies-no-place = No place fits yet: no card names one of its topics.
studies-counts-too = '{ $topic }' counts too

studies-change = Change { $unit }
studies-why = Why { $total }?
studies-free = Free { $unit } again
studies-freed = '{ $unit }' is free again.
studies-fix = Keep { $place } on { $day }
studies-is-fixed = '{ $unit }' is fixed to { $place } on { $day }.
studies-not-day = Not on { $day }
studies-not-on = '{ $unit }' does not go to { $place } on { $day }.
studies-not-place = Not { $place }
studies-not-to = '{ $unit }' does not go to { $place }.
studies-allow = Allow again what is ruled out ({ $count })
studies-allowed = Nothing is ruled out for '{ $unit }' any more.
studies-pick-yourself = Pick the place or the day yourself
studies-where-to = Where to?
studies-wherever = wherever is best
studies-when = When? Left empty, whenever is best.
studies-plan-so = Plan { $unit } so
studies-picked = '{ $unit }' is planned as you picked.
studies-other-places = Show the other places
studies-no-other = No other place would leave a day for everything else.
studies-instead = Go to { $place } instead
studies-goes-to = '{ $unit }' goes to { $place }.

studies-edit = Topics, weeks and budget of { $unit }
studies-save-unit = Save { $unit }
studies-add = Add a topic
studies-add-this = Add this topic
studies-new = the new topic
studies-remove = Remove { $unit }
studies-at-most-units = At most { $units } fit into one plan; leave some out this time.

studies-budget = Budget for all its outings, in { $currency }
studies-budget-help = Left empty, there is no limit for the whole.
studies-careful = Be careful: count the high end of every range
studies-several = Two outings may be in one week
studies-same-place = A place may be visited twice
studies-weigh = As little as can be of
studies-weigh-felt = cost plus hassle
studies-weigh-money = money alone
studies-weigh-help = What a lost nap or a crowd is worth to you stands under Household.
studies-first = First day of the semester
studies-last = Last day of the semester
studies-without = Topics without an outing this time
studies-none = none
studies-save-limits = Save the limits
studies-limits-saved = The limits are saved.
