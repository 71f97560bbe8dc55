# Haushalt: eine Karte je Person, und Karten für Zuhause, Auto, Geld und Gewohnheiten.

household-stays-here = Das alles bleibt auf diesem Computer.
household-demo-only = Änderungen hier ändern nur das Beispiel.
household-your-family = Ihre Familie
household-three-things = Drei Dinge genügen: ein Name, wo Sie wohnen, und wer dazugehört.
household-what-called = Wie heißt Ihr Haushalt?
household-who-belongs = Wer gehört dazu?
household-birth-or-age = Ein Geburtsdatum, wie Sie es schreiben, oder ein Alter wie 8.
household-name-row = Name { $row }
household-born-row = Geburtsdatum oder Alter { $row }
household-where-live = Wo wohnen Sie?
household-save-first = Speichern und beginnen
household-saved-first = Gespeichert. Als Nächstes kommen die Orte: der erste unter Ideen.
household-or-file = Oder eine Datei einlesen

household-change = { $what } ändern
household-save = { $what } speichern
household-the-home = Zuhause
household-the-weather = übliches Wetter
household-the-car = Auto
household-the-food = Essen
household-the-reserve = Reserve und Extras
household-the-worth = Was Ihnen wichtig ist
household-the-habits = Gewohnheiten
household-the-rush = Stoßzeiten
household-the-stops = Halte
household-the-passes = Jahreskarten

household-add-person = Person hinzufügen
household-new-person = neue Person
household-add = Diese Person hinzufügen
household-added = { $name } ist dabei.
household-naps-later = Schlafzeiten kommen dazu, sobald die Person hier steht.
household-remove = { $name } entfernen
household-removed = { $name } ist entfernt. „Letzte Änderung zurücknehmen“ holt { $name } zurück.
household-add-nap = Schlafzeit für { $name } hinzufügen
household-day-of = wach { $wakes }, Bett { $bed }
household-nap = schläft { $start }, { $length }
household-nap-band = Wach { $wakes } bis { $bed }; schläft { $naps }
household-span = { $start } bis { $end }
household-only-age = Bekannt: { $born }. Mit dem Geburtsdatum stimmen Preise auf den Tag.
household-more-about = Mehr über { $name }: Zeiten, Fahrten, Ermäßigungen
household-usual-naps = Übliche Schlafzeiten dieses Alters eintragen
household-usual-naps-why =
    Zwei Schlafzeiten mit 9 bis 12 Monaten, eine mit 15 bis 24 Monaten, ab vier Jahren meist keine
    (Weissbluth, Sleep 18:82-87, 1995). Die Uhrzeiten sind eine erste Schätzung ohne Quelle.
household-usual-naps-stand = Die üblichen Schlafzeiten stehen unten. Nichts gilt, bevor Sie speichern.

household-home = Zuhause
household-reads = { $currency } · { $units } · { $language }
household-no-car = Kein Auto
household-no-car-cost = Die Fahrkosten bleiben unbekannt.
household-go-by-car = Wir fahren mit dem Auto
household-seats = { $seats ->
    [one] { $seats } Sitz
   *[other] { $seats } Sitze
  }
household-fuel-at = Kraftstoff { $price }

household-money = Geld
household-food-packed = Essen mitgebracht: { $adult } je Erwachsene, { $child } je Kind
household-food-bought = Essen gekauft: { $adult } je Erwachsene, { $child } je Kind
household-reserve = Reserve { $percent } %, Extras { $treats } je Kind
household-nap-worth = Eine Stunde verlorener Schlaf zählt { $nap }, eine Stunde im Auto { $car }
household-usual-figure = Ein leeres Feld bekommt wieder den üblichen Wert.

household-habits = Wie wir fahren
household-hours = Los ab { $out }, zurück bis { $home }
household-rests = Eine Pause nach { $stretch } am Steuer
household-rush-published = Stoßzeiten bei großen Städten
household-rush-own = Eigene Stoßzeiten
household-rush-never = Keine Stoßzeiten
household-fuel-range = Eine Füllung reicht { $range }
household-picks-up = Wir holen { $name } ab
household-stops-back = Auf dem Rückweg: { $what }

household-passes = Unsere Jahreskarten
household-no-passes = Noch keine.

household-undo = Letzte Änderung zurücknehmen
household-undo-help = Noch einmal nimmt die Änderung davor zurück.
household-undone = Die letzte Änderung ist zurückgenommen.
household-saved = Gespeichert.

household-more = Mehr
household-lead-food = Was Essen auf einem Ausflug kostet, je Person.
household-lead-habits =
    Nach { $stretch } Minuten Fahrt wird eine Pause von mindestens { $rest } Minuten empfohlen (The Highway Code,
    Großbritannien, Regel 91). Der Plan fährt nie länger ohne eine. Mit einem Kind unter zwei Jahren rastet er
    nach spätestens { $small } Minuten.
household-lead-worth = Was würden Sie zahlen, um es sich zu ersparen? Es ändert die Reihenfolge, nie die Kosten.
household-lead-weather =
    Wetterstationen sagen es in den Vereinigten Staaten, den Niederlanden und um Dublin. Sonst zählt Ihr Wetter
    im Umkreis von 80 km.
household-lead-stops = Gurte und Kindersitze folgen dem Gesetz dort, wo Sie fahren, auch für Mitfahrende.
household-fuel = Kraftstoff
household-comes-along = Jemand fährt mit
household-way-back = Auf dem Rückweg
household-picked-up-where = Wo sie abgeholt werden
household-picked-up-help = Ort, Postleitzahl, Koordinaten oder ein Kartenlink; der Umweg wird dann geschätzt.

household-when-full = Wann sind die Straßen voll, wo Sie fahren?
household-way-published = Nach den veröffentlichten Zahlen, nur bei großen Städten
household-way-own = In den Zeiten unten
household-way-never = Nie
household-add-hours = Weitere Zeiten hinzufügen
household-published-rush =
    Veröffentlicht: an Werktagen das { $factor }-Fache der Zeit, gezählt von { $hours }, im Mittel von 52 großen
    Ballungsräumen der USA (Federal Highway Administration, 2021 Urban Congestion Trends). In New York,
    Los Angeles, Philadelphia, Washington, Boston und Chicago das { $largest }-Fache, dazwischen das { $by_day }-Fache. Ihre Straßen können ganz anders sein.

household-no-pass-sold = Keiner Ihrer Orte verkauft eine Jahreskarte.
household-leave-pass-out = Weglassen: { $offer }, bis { $day }
household-guests-so-far = Gäste mit { $offer } bisher
household-another-pass = Eine weitere Jahreskarte
household-none = keine
household-written-out-to = Auf wen ist sie ausgestellt?
household-until-which-day = Bis zu welchem Tag gilt sie?
household-one-person = Wählen Sie mindestens eine Person
household-held-for = { $offer } von { $place }, für { $holders }, bis { $day }

household-leave-nap-out = diesen Schlaf weglassen
household-leave-hours-out = diese Zeiten weglassen
household-no-hours-left = Es bleiben keine Zeiten übrig; behalten Sie welche, oder wählen Sie eine der anderen Antworten.
household-hours-not-counted = Sie haben die Zeiten unten geändert; sie zählen nur mit der Antwort „{ $answer }“.
household-place-or-longer = Geben Sie einen Ort an, oder um wie viel Weg und Fahrt länger werden, nicht beides.

household-file = Die Datei des Haushalts
household-file-holds = Die Datei enthält Namen und Geburtsdaten; überlegen Sie, wer sie bekommt.
household-file-download = Datei des Haushalts herunterladen
household-file-bring = Eine Haushaltsdatei einlesen
household-file-take = Diesen Haushalt übernehmen
household-file-takes = Er ersetzt den gespeicherten; Orte und Kalender bleiben.
household-file-coordinates = einem Ort nach Koordinaten
household-file-preview = { $name }, in { $town }: { $people }.
household-file-taken = Der Haushalt aus der Datei ist übernommen.
