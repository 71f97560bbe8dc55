# One place on one day.

# Why it cannot be done, without a full stop.
outing-over = the day is over
outing-no-rate = prices are in { $currency }, you count in { $own }; type in an exchange rate under Household
outing-book-ahead = visits must be booked { $days ->
    [one] a day ahead
   *[other] { $days } days ahead
  }
outing-idea-without-price = it is only an idea so far: nobody knows what entry costs
outing-not-admitted = { $text }
outing-barred = it { $known ->
    [forecast] is forecast to feel
    [typed] would feel
   *[usual] usually feels
  } like { $felt } there at that hour; for outdoors you set { $limits }
outing-never-below = never below { $felt }
outing-never-above = never above { $felt }
outing-nobody-called = nobody in the household is called { $name }
# $reason: one of the above, or a limit of the day.
outing-at-any-time = At any other time: { $reason }.
