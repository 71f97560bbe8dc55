# What an outing costs: the names of its items, in lower case as within a sentence.

costs-admission = admission for { $people }
costs-no-admission = admission, as no offer lets this party in
costs-tickets-and-parking = tickets and parking
costs-guess = { $what }, a guess of yours

# $far: "76 mi". $price: one of the next four.
costs-driving = { $cars ->
    [one] { $far } there and back
   *[other] { $cars } cars, { $far } there and back
  }, { $price }
costs-price-unknown = at an unknown price
costs-consumption = { $amount } { $unit }
costs-rate = { $amount } per { $mile ->
    [yes] mile
   *[no] km
  }
costs-published-rate = { $amount } per mile as a published rate, no car given
costs-wear = wear, if you count it: { $cars ->
    [one] { $far } there and back
   *[other] { $cars } cars, { $far } there and back
  }
costs-wear-rate = wear
costs-tolls = tolls and ferries, there and back

costs-parking = { $cars ->
    [one] parking
   *[other] parking for { $cars } cars
  }
costs-parking-in-pass = { $parking }, included in the pass

costs-food = food for { $people }, { $bought ->
    [yes] bought
   *[no] packed
  }{ $why ->
    [none-sold] , as none is sold there
    [own-not-allowed] , as own food is not allowed there
   *[as-wished] {""}
  }
costs-lunch-from-home = lunch from home

costs-extra = { $name }
costs-extra-for = { $name } for { $people }
costs-extra-gone = { $name }, which is no longer on the card
costs-treats = treats for { $children }
costs-reserve = reserve, { NUMBER($share, style: "percent", maximumFractionDigits: 1) } of the rest
