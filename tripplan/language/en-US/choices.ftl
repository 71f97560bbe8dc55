# Who goes, when and where: asked for on several pages, and the chips that say what is set.

choices-who = Who goes?
choices-nobody = Pick at least one person.
choices-all-of-us = all { $people } of us
choices-both-of-us = both of us
choices-some-of-us = { $people } of us

choices-which-days = Between which days?
choices-two-days = Pick a first and a last day.
choices-six-weeks = next six weeks
choices-six-months = Six months
choices-a-year = A year
choices-eighteen-months = Eighteen months

choices-which-places = Which places?
choices-places = { $places ->
    [one] { $places } place
   *[other] { $places } places
  }

choices-where-to = Where to?
choices-which-day = On which day?
choices-exact = Exact times
choices-exact-help = Tries every minute instead of every five.

choices-bad-address = This address cannot be opened: { $faults }.
choices-no-such-place = no place of yours is called “{ $name }”
choices-no-such-day = “{ $text }” is no day such as { $example }
choices-day-over = { $day } is over
choices-day-too-far = { $day } is too far ahead

