# One order of passes. $what: some of the next three.
passes-order = On { $day }, buy at { $place }: { $what }. That is { $price }.
passes-for-household = { $count ->
    [one] '{ $name }'
   *[other] { $count } x '{ $name }'
  } for the household, good until { $until }
passes-for = { $count ->
    [one] '{ $name }'
   *[other] { $count } x '{ $name }'
  } for { $holders }, good until { $until }
# Several passes of one kind, each for a group of people.
passes-for-groups = { $count } x '{ $name }' for { $groups }, good until { $until }
passes-group = ({ $holders })

# What everything comes to, against single visits.
passes-no-visit-can-be = None of the planned visits can be.
passes-visits = { $count } { $count ->
    [one] visit
   *[other] visits
  }
passes-none-pays = No pass pays for the { $visits } planned: without buying one, that is { $total } in all.
passes-all-in = With that, the { $visits } planned { $count ->
    [one] comes
   *[other] come
  } to { $total } in all, passes included.
passes-not-without = Some of them are not possible without a pass.
passes-saved = Without buying a pass that would be { $singly }, so { $saving } is saved.
passes-counted = Entry, passes and parking are counted. A pass counts from the day it is bought; passes bought on one day at one place are one order.
passes-parking-unknown = Parking at { $places } is not known and left out.

# One visit. $parts: the next two; $visit: one of the two after these.
passes-entry = entry { $amount }
passes-parking = parking { $amount }
passes-visit = { $day }, { $place }: { $parts }
passes-visit-with = { $day }, { $place }: { $parts } with { $passes }
passes-name = '{ $name }'
passes-visit-alone = { $visit }.
passes-visit-instead = { $visit }, instead of { $singly } in all.
passes-visit-not-without = { $visit }, where nobody could enter without.
passes-left-out = { $day }, { $place }, is left out: { $why }.

# When a pass has paid. $card: one of the first two; $after and $visits: numbers of visits.
passes-of = '{ $name }' of { $place }
passes-of-holders = '{ $name }' of { $place } for { $holders }
passes-needed = { $card } ({ $price }) is needed for a visit.
passes-never-pays = { $card } ({ $price }) never pays for visits like those planned: it takes nothing off them.
passes-paid-after = { $card } ({ $price }) would have paid after { $after } like those planned; it would take { $saved } off the { $visits } it counts for.
passes-paid-back = { $card } ({ $price }) is paid back on { $day }, visit number { $number }; it takes { $saved } off { $visits } planned.
passes-would-be-paid-back = { $card } ({ $price }) would be paid back on { $day }, visit number { $number }; it would take { $saved } off { $visits } planned.
