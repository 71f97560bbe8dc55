flips-stays = { $under }: { $place } bleibt am günstigsten.
flips-cheapest = { $under }: { $first } ist am günstigsten, { $total } gegenüber { $against } für { $place }.
flips-cannot = { $under }: { $place } geht nicht ({ $why }); vom Rest ist { $first } am günstigsten, { $total }.
flips-nothing-left = { $under }: Dann geht keiner dieser Ausflüge.
flips-stays-better = { $under }: { $place } bleibt der bessere Ausflug.
flips-better = { $under }: { $first } ist der bessere Ausflug, mit Mühe { $total } gegenüber { $against } für { $place }.
flips-cannot-better = { $under }: { $place } geht nicht ({ $why }); vom Rest ist { $first } am besten, mit Mühe { $total }.
flips-two-firsts = Mit Mühe gerechnet ist { $better } der bessere Ausflug: { $total } gegenüber { $against } für
  { $cheapest }.
flips-idle = Nichts davon ändert in vernünftigen Grenzen, was vorn liegt: { $inputs }.

flips-fuel-price = Spritpreis
flips-electricity-price = Strompreis
flips-driving = Kosten der Fahrt
flips-a-gallon = { $price } je Gallone
flips-a-liter = { $price } je Liter
flips-a-kwh = { $price } je kWh
flips-a-mile = { $price } je Meile
flips-a-km = { $price } je km
flips-or-beyond = { $price } oder { $more ->
    [yes] mehr
   *[no] weniger
  }
flips-at = Bei { $at }
flips-between = Zwischen { $low } und { $high }

flips-food = Essen
flips-food-bought = { $bought ->
    [yes] gekauft
   *[no] mitgebracht
  }
flips-with-food = Mit { $bought ->
    [yes] gekauftem
   *[no] mitgebrachtem
  } Essen

flips-somebody-at-home = { $name } zu Hause
flips-somebody-goes = { $name } fährt mit
flips-at-home = zu Hause
flips-without = Ohne { $name }
flips-one-more = ein Kind mehr
flips-so-many-go = { $people } fahren
flips-one-more-like = ein Kind mehr, so alt wie { $name }
flips-with-one-more = Mit einem Kind mehr, so alt wie { $name }

flips-pass = „{ $name }“ ({ $place })
flips-not-owned = nicht vorhanden
flips-owned = { $passes ->
    [one] vorhanden
   *[other] { $passes } vorhanden
  }
flips-with-passes = { $passes ->
    [one] Wenn { $what } schon da ist
   *[other] Wenn { $passes } mal { $what } schon da sind
  }

flips-day = { $day }
flips-weekday = ein anderer Wochentag: { $place }
flips-any-weekday = Wenn Sie an einem anderen Wochentag um { $day } fahren ({ $place })
flips-go-on = Wenn Sie am { $day } fahren ({ $place })
flips-birthdays = nächste Geburtstage
flips-ages-on = Alter am { $day }
flips-from-birthday = Ab { $day }, wenn { $name } { $years } Jahre alt ist
flips-from-months = Ab { $day }, wenn { $name } { $months } Monate alt ist
flips-birthdays-until = Mit den Geburtstagen bis { $day }

flips-weather = Wetter am { $day }
flips-weather-at = { $place }: { $there }
flips-weather-now = { $each }
flips-wet = sicher Regen oder Schnee
flips-dry = sicher trocken
flips-if-wet = Wenn es am { $day } regnet{ $snow ->
    [yes] {" "}oder schneit
   *[no] {""}
  }
flips-if-dry = Wenn es am { $day } trocken bleibt
flips-degrees = { $degrees } °{ $unit } { $warmer ->
    [yes] wärmer
   *[no] kälter
  } als gewöhnlich
flips-if-degrees = Wenn es am { $day } { $at } ist
flips-up-to-degrees = Wenn es am { $day } bis zu { $at } ist
