# What to pack: each thing, and with "-why" behind its name the rule that suggests it, with its source.

packing-own = { $thing }

# For whom, how many, and what to mind.
packing-for = { $names }
packing-about-so-many = about { $number } for { $names }
packing-for-so-many = for { $number }
packing-with-needs = with what the needs noted for { $names } call for
packing-drinks = { $number }{ $hot ->
    [yes] ; on a hot day about a cup for each every 20 minutes, and a refill
   *[no] {""}
  }{ $let_in ->
    [no] ; ask whether they may be taken in
   *[yes] {""}
  }
packing-babies-in-shade = keep { $names } in the shade; ask your doctor about { -sunscreen }
packing-not-eaten-inside = not eaten inside: own food is not allowed
packing-coats-off = thick coats off under the straps of a car seat
packing-look-at-forecast = look at the forecast the day before
packing-pair-each = a pair for each child
packing-wash-hands = wash hands after touching, before eating

packing-papers = Tickets or booking, passes, proofs of age or status, card and cash
packing-papers-why = for every outing; { -no-source }
packing-phone = Charged phone and cable
packing-phone-why = for every outing; { -no-source }
packing-first-aid = First-aid kit and medicines
packing-first-aid-why = for every outing; { -no-source }
packing-child-seat = Child seat
packing-child-seat-why = under 4; the law where you drive and the seat's manual decide which seat fits
packing-booster = Booster or child seat
packing-booster-why = 4 to 11; Great Britain asks for one until 12 years or 135 cm (GOV.UK, Child car seats: the law);
  the law where you drive decides
packing-diapers = Diapers, wipes, changing pad, bags
packing-diapers-why = under two and a half: one every two hours and two spare; { -no-source }
packing-clothes = A full change of clothes
packing-clothes-why = under 5; { -no-source }
packing-bottles = Milk, bottles, baby food
packing-bottles-why = under 1; { -no-source }
packing-bib = Bib, spoon, drinking cup
packing-bib-why = 6 months to under 3; { -no-source }
packing-stroller = Stroller
packing-stroller-why = under 4, where the place lets { -stroller }s in; { -no-source }
packing-stroller-cover = Rain cover and sunshade for the { -stroller }
packing-stroller-cover-why = under 4, where part of the visit is outdoors; { -no-source }
packing-carrier = Carrier or sling
packing-carrier-why = under 3, where { -stroller }s cannot go all the way around; { -no-source }
packing-lovey = Lovey or pacifier and light blanket
packing-lovey-why = for whoever naps; { -no-source }
packing-car-games = Something to do in the car
packing-car-games-why = 3 to 12, drives of { $minutes } min or more; { -no-source }
packing-trash-bags = Trash and car-sick bags
packing-trash-bags-why = 2 to 12, drives of { $minutes } min or more; { -no-source }
packing-notebook = Notebook and pencils
packing-notebook-why = 5 to 17, for what there is to study; { -no-source }
packing-water = Water bottles
packing-water-why = for everybody; { -no-source }
packing-lunch = Packed lunch and snacks
packing-lunch-why = lunch is out, the family packs it, and own food is allowed (place card)
packing-car-snacks = Snacks for the car
packing-car-snacks-why = own food is not allowed inside (place card)
packing-coats = Coats, hats and gloves
packing-coats-why = felt below 41 °F (5 °C), or winter where nobody knows; that thick coats leave a seat's straps slack
  is common advice, from memory
packing-blanket = A blanket and a warm drink in the car
packing-blanket-why = winter, drives of { $minutes } min or more; { -no-source }
packing-rain-jackets = Rain jackets and a warm layer
packing-rain-jackets-why = partly outdoors, not winter: no forecast is known here; { -no-source }
packing-sun-hats = Sun hats and { -sunscreen }
packing-sun-hats-why = partly outdoors, felt from 64 °F (18 °C), else spring and summer; { -no-source }
packing-spare-socks = Spare socks and mittens
packing-spare-socks-why = partly outdoors, rain or snow on one day in four or more, felt below 50 °F (10 °C);
  { -no-source }
packing-repellent = Insect repellent and long pants
packing-repellent-why = partly outdoors in long grass or woods, not winter; { -no-source }
packing-underground = Warm jackets for underground
packing-underground-why = the card speaks of a cave, a mine or the like, where it is cool all year; { -no-source }
packing-grip = Shoes with grip, dry socks
packing-grip-why = the card speaks of wet ground, water or a cave; { -no-source }
packing-soap = Soap or hand wipes
packing-soap-why = the card speaks of animals: hands are washed before eating; { -no-source }
packing-ears = Ear protection
packing-ears-why = under 12, and the card speaks of noise; { -no-source }
