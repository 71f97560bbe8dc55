# Why a party cannot enter. $rule and $why: the rest of a sentence that begins with the name of an offer, see below.
refusals-accompanied = { $rule }; { $minders ->
    [0] nobody is there for { $names }
    [one] in the party that is { $minders } person for { $names }
   *[other] in the party that is { $minders } people for { $names }
  }.
refusals-keeps-out = '{ $offer }' { $rule }, which keeps out { $names }.
refusals-together = The limits of { $offers } together leave no way in for { $names }.
refusals-offer = '{ $name }'
refusals-no-offer = No offer on the card is for { $name } ({ $age }).
refusals-lets-nobody = No offer lets { $name } ({ $age }) in: { $why }.
refusals-months = { $count } { $count ->
    [one] month
   *[other] months
  }
refusals-years = { $count } { $count ->
    [one] year
   *[other] years
  }
refusals-asks = '{ $offer }' { $why }
refusals-too-late = '{ $offer }' { $why }; it is too late for that.

# What ties people together.
refusals-more-companions = asks for more { $paying ->
    [yes] paying companions
   *[no] companions
  } than there are
refusals-sold-from = is sold from { $count } people on
refusals-sold-at-most = is sold at most { $count } { $count ->
    [one] time
   *[other] times
  } to one party
refusals-each-proof-covers = covers { $count } people for each proof of { $proofs }
refusals-for-at-most = is for at most { $count } of one party
refusals-must-include = must include somebody aged { $ages }
refusals-seats-taken = must have { $count } seats taken
refusals-one-family = is for one family
refusals-as-a-car-seats = lets in as many as a car seats, infants included
refusals-counts-everybody = counts everybody, infants included
refusals-extra-people = takes at most { $count } extra { $count ->
    [one] person
   *[other] people
  }

# What is asked of each person.
refusals-needs-proof = needs proof of { $proofs }
refusals-birthday = is only good on the visitor's birthday
refusals-birth-month = is only good in the month of the visitor's birthday
refusals-household = is for the household

# Why an offer cannot be had for a visit.
refusals-sold-from-day = is only sold for visits from { $day } on
refusals-sold-until-day = is only sold for visits until { $day }
refusals-at-times = is only good at these times: { $times }
refusals-booked-by = had to be booked by { $day }
refusals-stay = is only good for a stay of { $longest }
refusals-leave-by = is only good for those who leave by { $latest }
