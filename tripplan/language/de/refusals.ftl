# Warum jemand nicht hineinkommt. $rule und $why: der Rest eines Satzes, der mit dem Namen des Angebots beginnt.
refusals-keeps-out = „{ $offer }“ { $rule }; damit kommt nicht hinein: { $names }.
refusals-together = Die Grenzen von { $offers } lassen zusammen keinen Weg hinein für { $names }.
refusals-offer = „{ $name }“
refusals-no-offer = Kein Angebot auf der Karte ist für { $name } ({ $age }).
refusals-lets-nobody = Kein Angebot lässt { $name } ({ $age }) hinein: { $why }.
refusals-months = { $count } { $count ->
    [one] Monat
   *[other] Monate
  }
refusals-years = { $count } { $count ->
    [one] Jahr
   *[other] Jahre
  }
refusals-asks = „{ $offer }“ { $why }
refusals-too-late = „{ $offer }“ { $why }; dafür ist es zu spät.

refusals-more-companions = verlangt mehr { $paying ->
    [yes] zahlende Begleitung
   *[no] Begleitung
  }, als da ist
refusals-sold-from = gibt es ab { $count } Personen
refusals-sold-at-most = gibt es für eine Gruppe höchstens { $count }-mal
refusals-for-at-most = gilt für höchstens { $count } aus einer Gruppe
refusals-must-include = gilt nur, wenn jemand dabei ist, der { $ages } ist
refusals-seats-taken = gilt erst, wenn { $count } Plätze besetzt sind
refusals-one-family = ist für eine Familie
refusals-as-a-car-seats = lässt so viele ein, wie ein Auto Plätze hat, Babys mitgezählt
refusals-counts-everybody = zählt alle, Babys mitgezählt
refusals-extra-people = nimmt höchstens { $count } weitere { $count ->
    [one] Person
   *[other] Personen
  }

refusals-birthday = gilt nur am Geburtstag
refusals-birth-month = gilt nur im Monat des Geburtstags
refusals-household = ist für den Haushalt

refusals-sold-from-day = gibt es nur für Besuche ab { $day }
refusals-sold-until-day = gibt es nur für Besuche bis { $day }
refusals-at-times = gilt nur zu diesen Zeiten: { $times }
refusals-booked-by = war bis { $day } zu buchen
refusals-stay = gilt nur für einen Aufenthalt von { $longest }
refusals-leave-by = gilt nur, wenn ihr bis { $latest } geht
