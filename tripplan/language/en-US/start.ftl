# The page one lands on: what next?

start-three-steps = Three steps to your first outing
start-step-who = Who
start-step-where = Where
start-step-idea = A first idea

# $when: "Tomorrow" or a date.
start-headline = { $when }, { $place }: load up at { $at }
start-under-way = { $place }: home again at { $at }
start-day-today = Today
start-day-tomorrow = Tomorrow
start-about = about { $total }
start-go-through-day = Go through the day
start-open-plan = Open the plan

start-home-again = Home again at { $at }
start-booked = Booked: { $what }
start-nothing-to-book = Nothing to book ahead
start-was-to-book = Should have been booked by { $day }
start-to-book = Still to book, by { $day }

start-how-was = How was { $place }?
start-log-it = Log it
start-ideas-waiting = { $ideas ->
    [one] { $ideas } idea waiting
   *[other] { $ideas } ideas waiting
  }
start-look-at-ideas = Look at the ideas

start-left-of-budget = Left of { $budget } this year
start-spent-and-planned = spent { $spent }, planned { $planned }
start-spent = spent
start-planned = planned
start-spent-this-year = Spent this year
