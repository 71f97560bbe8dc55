# What would make another of the compared outings the cheapest, or the better day out.

# $under: the change as the first words of the sentence. $first: the cheapest place then, $place: the one until now.
flips-stays = { $under }, { $place } stays the cheapest.
flips-cheapest = { $under }, { $first } is the cheapest: { $total } against { $against } for { $place }.
flips-cannot = { $under }, { $place } cannot be done ({ $why }); { $first } is the cheapest of the rest: { $total }.
flips-nothing-left = { $under }, none of these outings can be done.
# The same with hassle counted.
flips-stays-better = { $under }, { $place } stays the better day out.
flips-better = { $under }, { $first } is the better day out: { $total } against { $against } for { $place },
  hassle counted.
flips-cannot-better = { $under }, { $place } cannot be done ({ $why }); { $first } is the best of the rest: { $total },
  hassle counted.
flips-two-firsts = With hassle counted, { $better } is the better day out: { $total } against { $against } for
  { $cheapest }.
flips-idle = None of these changes which one comes first, within reason: { $inputs }.

flips-fuel-price = fuel price
flips-electricity-price = electricity price
flips-driving = cost of driving
flips-a-gallon = { $price } a gallon
flips-a-liter = { $price } a { -liter }
flips-a-kwh = { $price } a kWh
flips-a-mile = { $price } a mile
flips-a-km = { $price } a km
flips-or-beyond = { $price } or { $more ->
    [yes] more
   *[no] less
  }
flips-at = At { $at }
flips-between = Between { $low } and { $high }

flips-food = food
flips-food-bought = { $bought ->
    [yes] bought
   *[no] packed
  }
flips-with-food = With { $bought ->
    [yes] bought
   *[no] packed
  } food

flips-somebody-at-home = { $name } at home
flips-somebody-goes = { $name } goes
flips-at-home = at home
flips-without = Without { $name }
flips-one-more = one more child
flips-so-many-go = { $people } go
flips-one-more-like = one more child as old as { $name }
flips-with-one-more = With one more child as old as { $name }

flips-pass = “{ $name }” ({ $place })
flips-not-owned = not owned
flips-owned = { $passes ->
    [one] owned
   *[other] { $passes } owned
  }
flips-with-passes = { $passes ->
    [one] With { $what }
   *[other] With { $passes } of { $what }
  } already owned

flips-day = { $day }
flips-weekday = another weekday at { $place }
flips-any-weekday = If you go to { $place } on any other weekday near { $day }
flips-go-on = If you go to { $place } on { $day }
flips-birthdays = next birthdays
flips-ages-on = ages on { $day }
flips-from-birthday = From { $day }, when { $name } is { $years } years old
flips-from-months = From { $day }, when { $name } is { $months } months old
flips-birthdays-until = With the birthdays until { $day }

# $each: "Lantern Bluestem: 14 to 25 °F, wet: about 1 in 4", one a place.
flips-weather = weather on { $day }
flips-weather-at = { $place }: { $there }
flips-weather-now = { $each }
flips-wet = rain or snow for certain
flips-dry = dry for certain
flips-if-wet = If it { $snow ->
    [yes] rains or snows
   *[no] rains
  } on { $day }
flips-if-dry = If it stays dry on { $day }
flips-degrees = { $degrees } °{ $unit } { $warmer ->
    [yes] warmer
   *[no] colder
  } than usual
flips-if-degrees = If it is { $at } on { $day }
flips-up-to-degrees = If it is up to { $at } on { $day }
