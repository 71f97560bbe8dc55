costs-admission = Eintritt für { $people }
costs-no-admission = Eintritt, mit keiner Karte kommen alle hinein
costs-tickets-and-parking = Eintritt und Parken
costs-guess = { $what }, von Ihnen geschätzt

costs-driving = { $cars ->
    [one] { $far } hin und zurück
   *[other] { $cars } Autos, { $far } hin und zurück
  }, { $price }
costs-price-unknown = Preis unbekannt
costs-consumption = { $amount } { $unit }
costs-rate = { $amount } je { $mile ->
    [yes] Meile
   *[no] km
  }
costs-published-rate = { $amount } je Meile nach veröffentlichtem Satz, kein Auto angegeben
costs-wear = Wertverlust, wenn Sie ihn zählen: { $cars ->
    [one] { $far } hin und zurück
   *[other] { $cars } Autos, { $far } hin und zurück
  }
costs-wear-rate = Wertverlust
costs-tolls = Maut und Fähren, hin und zurück

costs-parking = { $cars ->
    [one] Parken
   *[other] Parken für { $cars } Autos
  }
costs-parking-in-pass = { $parking }, in der Jahreskarte enthalten

costs-food = Essen für { $people }, { $bought ->
    [yes] gekauft
   *[no] mitgebracht
  }{ $why ->
    [none-sold] , denn dort gibt es keines
    [own-not-allowed] , denn eigenes ist dort nicht erlaubt
   *[as-wished] {""}
  }
costs-lunch-from-home = Mittagessen von zu Hause

costs-extra = { $name }
costs-extra-for = { $name } für { $people }
costs-extra-gone = { $name }, steht nicht mehr auf der Karte
costs-treats = Leckereien für { $children }
costs-reserve = Reserve, { NUMBER($share, style: "percent", maximumFractionDigits: 1) } vom Übrigen
