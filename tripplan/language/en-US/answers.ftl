# What an outing gives, in the sentences that screens, commands, sheet and calendar entry share.

# Naps. $where: one or several of the four places.
answers-sleeps-home = at home
answers-sleeps-car = in the car
answers-sleeps-stroller = in the { -stroller }
answers-nobody-naps = nobody needs one
answers-child = { $name }: { $what }
answers-nap-lost = lost ({ $usual })
answers-nap-kept = { $kept } of { $usual } kept, { $where }

# The same in two or three words.
answers-no-nap-needed = nobody naps
answers-all-kept = { $naps ->
    [one] whole nap
   *[other] all naps
  }
answers-all-lost = { $naps ->
    [one] nap lost
   *[other] no naps
  }
answers-most-kept = { $naps ->
    [one] most of the nap
   *[other] most of the naps
  }
answers-some-kept = { $naps ->
    [one] some of the nap
   *[other] some of the naps
  }

answers-drive-off = drive off at { $off }
answers-load-up = load up at { $load }, drive off at { $off }

# How a drive is known.
answers-way = { $far }, { $minutes }
answers-way-known = { $way } ({ $known })
answers-known-typed = typed in
answers-known-roads = road network
answers-known-estimate = an estimate
answers-known-guess = only a guess
answers-known-for = { $known } for { $places }
answers-drives = { $drives ->
    [one] Drive: { $known }.
   *[other] Drives: { $known }.
  }
answers-cars = { $cars } cars for { $people } people, as yours seats { $seats }

answers-at-least = at least { $total }
answers-not-known = not known
answers-price-not-known = not known yet; this is only an idea
answers-purchase = { $number } x { $name }
answers-purchase-for = { $number } x { $name } for { $people }

# Names of the rows where outings, or times to leave, stand side by side.
answers-row-total = total
answers-row-best-day = best day
answers-row-leave-home = leave home
answers-row-home-again = home again
answers-row-drive = drive, one way
answers-row-there = time there
answers-row-nap = nap
answers-row-weather = weather there
answers-row-crowds = crowds
answers-row-hassle = cost plus hassle
answers-row-load-up = load up
answers-row-drive-off = drive off
answers-row-let-in = let in
answers-row-school-groups = with school groups there
answers-row-lunch = lunch
answers-row-naps-of = { $naps ->
    [one] { $name }'s nap
   *[other] { $name }'s naps
  }
answers-row-both-ways = driving, both ways
answers-row-home = home

answers-let-in = { $at }{ $opens ->
    [yes] , as it opens
   *[no] {""}
  }
answers-let-in-after = { $let_in }, after waiting { $wait }
answers-no-lunch = none
answers-lunch = { $at }, { $where }
answers-lunch-home = at home
answers-lunch-car = on the way
answers-lunch-outside = in or by the car
answers-lunch-there = there

answers-kind-tickets = admission
answers-kind-car = car
answers-kind-parking = parking
answers-kind-food = food
answers-kind-extras = extras
answers-kind-reserve = reserve
