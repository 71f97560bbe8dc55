# Going with others: what entry costs together. $how: one of the next three.
together-entry = Entry costs { $total } { $how }.
together-entry-saves = Entry costs { $total } { $how }, { $saves } less than each alone.
together-one-order = in one order
together-order-each = with an order for each household, which costs less than one for all
together-one-household = for the household
together-reached = Together you reach { $offers }.
together-offer = '{ $name }'

# One household's part. $part: one of these two.
together-pays = { $group } pays { $amount }
together-pays-paid = { $group } pays { $amount } ({ $paid } paid in advance)
together-not-alone = { $part }; alone they could not come in: { $why }.
together-as-alone = { $part }, as alone.
together-instead = { $part } instead of { $alone } alone.

together-rule = Each household pays in proportion to what it would have paid alone; one that would have come in free pays nothing. Cents left over by rounding go to those who lost most by it.
together-rule-not-alone = For a household that could not come in alone, its people's parts of the common order stand for that.

# With how many more people everyone pays less. $who: one of the next two.
together-more = With { $who } everyone pays less: { $parts }.
together-more-reached = With { $who } everyone pays less ({ $offers } can then be had): { $parts }.
together-more-adults = { $count } more { $count ->
    [one] adult
   *[other] adults
  }
together-more-children = { $count } more { $count ->
    [one] child
   *[other] children
  }
together-less = { $group } { $amount } instead of { $before }

together-people = { $count } { $count ->
    [one] person
   *[other] people
  }
together-seats = The cars have { $seats } seats for { $people }.
together-seats-missing = { $missing } { $missing ->
    [one] seat is
   *[other] seats are
  } missing: { $people }, { $seats } in the cars.

together-paid-too-much = { $back } too much was paid in advance; { $group } gets it back from the place.
together-pays-rest = { $group } pays the remaining { $amount } at the ticket counter.
together-nobody-owes = Nobody owes anybody anything then.
together-transfer = { $payer } pays { $receiver } { $amount }.
