answers-sleeps-home = zu Hause
answers-sleeps-car = im Auto
answers-sleeps-stroller = im Kinderwagen
answers-nobody-naps = niemand braucht einen
answers-child = { $name }: { $what }
answers-nap-lost = fällt aus ({ $usual })
answers-nap-kept = { $kept } von { $usual }, { $where }

answers-no-nap-needed = kein Mittagsschlaf nötig
answers-all-kept = { $naps ->
    [one] ganzer Mittagsschlaf
   *[other] alle Mittagsschläfchen
  }
answers-all-lost = { $naps ->
    [one] Mittagsschlaf fällt aus
   *[other] kein Mittagsschlaf
  }
answers-most-kept = { $naps ->
    [one] fast ganzer Mittagsschlaf
   *[other] meiste Mittagsschläfchen
  }
answers-some-kept = { $naps ->
    [one] kurzer Mittagsschlaf
   *[other] kurze Mittagsschläfchen
  }

answers-drive-off = Abfahrt { $off } Uhr
answers-load-up = einladen { $load } Uhr, Abfahrt { $off } Uhr

answers-way = { $far }, { $minutes }
answers-way-known = { $way } ({ $known })
answers-known-typed = selbst eingetragen
answers-known-roads = Straßennetz
answers-known-estimate = geschätzt
answers-known-guess = nur geraten
answers-known-for = { $known } für { $places }
answers-drives = { $drives ->
    [one] Fahrt: { $known }.
   *[other] Fahrten: { $known }.
  }
answers-cars = { $cars } Autos für { $people } Personen, denn Ihres hat { $seats } Plätze

answers-at-least = mindestens { $total }
answers-not-known = nicht bekannt
answers-price-not-known = noch nicht bekannt; das ist nur eine Idee
answers-purchase = { $number } x { $name }
answers-purchase-for = { $number } x { $name } für { $people }

answers-row-total = insgesamt
answers-row-best-day = bester Tag
answers-row-leave-home = Abfahrt
answers-row-home-again = wieder zu Hause
answers-row-drive = Fahrt, einfach
answers-row-there = Zeit dort
answers-row-nap = Mittagsschlaf
answers-row-weather = Wetter dort
answers-row-crowds = Andrang
answers-row-hassle = Kosten und Mühe
answers-row-load-up = einladen
answers-row-drive-off = Abfahrt
answers-row-let-in = Einlass
answers-row-school-groups = mit Schulklassen dort
answers-row-lunch = Mittagessen
answers-row-naps-of = Mittagsschlaf: { $name }
answers-row-both-ways = Fahrt, hin und zurück
answers-row-home = zu Hause

answers-let-in = { $at }{ $opens ->
    [yes] , gleich zum Öffnen
   *[no] {""}
  }
answers-let-in-after = { $let_in }, nach { $wait } Warten
answers-no-lunch = keines
answers-lunch = { $at }, { $where }
answers-lunch-home = zu Hause
answers-lunch-car = unterwegs
answers-lunch-outside = im Auto oder davor
answers-lunch-there = dort

answers-kind-tickets = Eintritt
answers-kind-car = Auto
answers-kind-parking = Parken
answers-kind-food = Essen
answers-kind-extras = Extras
answers-kind-reserve = Reserve
