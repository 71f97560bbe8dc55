# Ideen: wohin man fahren kann, und alles, was über einen Ort bekannt ist.

places-about = Über { $place }
places-all = Alle Ideen
places-prices = Preise
places-visit = Öffnungszeiten und Besuch
places-weather = Das Wetter im Jahr
places-drive = Die Fahrt, einfach
places-none-yet = Hier ist noch kein Ort. Oben lässt sich der erste hinzufügen; der Name genügt.
places-no-such-place = Kein Ort heißt „{ $name }“; hier sind alle.

places-ideas = Ideen
places-an-idea = { $name }: eine Idee
places-fits = Passt zu: { $topics }.
places-fill-in = { $name } ausfüllen
places-fill-in-help = Zeiten und Preise machen einen Ort daraus; seine Pläne bleiben.
places-remove-idea = { $name } entfernen
places-idea-removed = { $name } ist nicht mehr auf der Wunschliste.

places-card-guide = Wie eine Karte eines Ortes geschrieben ist
places-card-guide-lead = Eine Karte ist eine kleine Textdatei, die man weitergeben kann. Dies ist eine; jedes Feld
  beschreibt die Anleitung.
places-card-guide-download = Anleitung herunterladen
places-share = Orte mit einer anderen Familie teilen
places-share-which = Welche Orte?
places-share-all = alle
places-share-only = Nur was auf den Karten steht, geht mit: keine Namen, Alter, Pläne, Fahrten oder eigenen Zahlen.
places-share-download = { $cards ->
    [one] { $cards } Karte als eine Datei herunterladen
   *[other] { $cards } Karten als eine Datei herunterladen
  }

# Ein Ort unter seiner Adresse.
places-ask-before = Fragen Sie vor der Fahrt nach, ob das noch gilt.
places-download-card = Karte herunterladen
places-remove = Diesen Ort entfernen
places-removed = { $place } ist entfernt.
places-when-open = Wann geöffnet ist
places-visit-like = Wie ein Besuch ist
places-crowds = Andrang
places-mind = Bitte beachten
places-questions = Fragen an die Kinder
places-own-drive = Kennen Sie den Weg besser, tragen Sie ihn ein; er zählt dann statt der Schätzung.
places-own-distance = Entfernung, einfach
places-own-distance-in = { $unit ->
    [mi] Entfernung, einfach, in Meilen
   *[km] Entfernung, einfach, in km
  }
places-own-minutes = Minuten, einfach
places-own-minutes-without = Minuten, einfach, ohne Pausen
places-own-drive-use = Meine Zahlen verwenden
places-own-drive-forget = Meine Zahlen vergessen
places-own-drive-forgotten = Ihre Zahlen für den Weg zu { $place } sind vergessen.
places-own-drive-counts = Ihre Zahlen für { $place } zählen jetzt.

# Sein Wetter im Jahr.
places-year-unknown = Hier weiß niemand, wie es dort meist ist: Keine Wetterstation liegt nahe. Sie können die zwölf
  Monate eintragen, bei der Karte oben oder für alle Orte um zu Hause unter Haushalt.
places-year-show = Sein Jahr zeigen
places-year-chart = Das Jahr an { $place }: Temperaturen, nasse Tage und Tageslicht nach Monaten; die Tabelle darunter
  sagt dasselbe
places-year-table = Das Jahr an { $place } nach Monaten
places-year = Am kältesten ist { $coldest }, meist { $cold }; am wärmsten { $warmest }, { $warm }. Am nassesten ist
  { $wettest } mit { $days } nassen Tagen.
places-year-temperatures = von bis
places-year-wet = nasse Tage
places-year-snow = mit Schnee
places-year-light = Tageslicht
places-year-hours = Tageslicht [h]

# Was seine Karte sagt.
places-days-hours = { $days }: { $hours }.
places-open-again = Wieder geöffnet am { $day }.
places-never-open = Kein offener Tag im kommenden Jahr.
places-as-written = Wie auf der Karte geschrieben: { $hours }
places-last-entry = Letzter Einlass { $time } vor Schluss.
places-entry-only = Einlass nur um { $times }.
places-quiet-hours = Ruhige Stunden: { $hours }
places-book-ahead = { $days ->
    [one] { $days } Tag vorher zu buchen.
   *[other] { $days } Tage vorher zu buchen.
  }
places-hours-guessed = Diese Zeiten sind geraten; niemand hat sie an der Quelle gelesen.
places-to-study = Zu lernen: { $topics }.
places-stay = { $stay } fühlen sich vollständig an; weniger als { $least } lohnen die Fahrt nicht.
places-stay-of-some = Für Besucher ({ $who }): { $stay } sind angenehm, weniger als { $least } lohnen die Fahrt nicht.
places-show = { $name } um { $starts }, { $lasts }{ $worth ->
    [yes] .
   *[no] ; darum herum wird nichts geplant.
  }
places-show-on = { $name } um { $starts } ({ $days }), { $lasts }{ $worth ->
    [yes] .
   *[no] ; darum herum wird nichts geplant.
  }
places-strollers = Mit dem Kinderwagen kommt man überall hin.
places-no-strollers = Nicht überall kommt man mit dem Kinderwagen hin.
places-food = { $own ->
    [yes] Mitgebrachtes darf man essen
   *[no] Eigenes Essen ist nicht erlaubt
  }; { $sold ->
    [yes] es gibt etwas zu kaufen.
   *[no] es wird nichts verkauft.
  }
places-all-alike = Alle Tage sind dort etwa gleich: Wochenenden und Schulferien machen keinen Unterschied.
places-families-come = Es kommen meist Familien mit Kindern, so dass Schulferien ihn füllen wie Wochenenden.
places-all-ages-come = Es kommen Leute jeden Alters, so dass Schulferien ihn nur wenig füllen.
places-fullest-saturdays = Samstags ist es am vollsten.
places-fullest-sundays = Sonntags ist es am vollsten.
places-busiest = Am meisten los ist in diesen Monaten: { $months }.
places-classes = In der Schulzeit kommen Klassen meist zu diesen Zeiten: { $times }
places-special-day = { $day }: { $name }, das { $factor }-Fache der üblichen Besucher.
places-prices-read = Preise gelesen am { $day }: { $source }.
places-prices-moved = Sie können sich seither um { $percent } % geändert haben.

# Die eigenen Zahlen der Familie.
places-own = Unsere eigenen Zahlen
places-own-take = Außer dem Eintritt nehmen wir { $what }.
places-own-take-nothing = Außer dem Eintritt nehmen wir nichts.
places-own-gone = Nicht mehr auf der Karte, daher nicht gezählt: { $what }.
places-own-tolls = Maut und Fähren, hin und zurück: { $price }.
places-own-stay = { $stay } fühlen sich für uns vollständig an.
places-own-extra = { $name }: { $price } für uns alle.
places-own-extra-about = { $name }: { $price } für uns alle, plus oder minus { $percent } %.
places-own-none = Keine; Maut ist nicht bekannt.
places-own-none-usual = Keine; die üblichen Extras zählen, und Maut ist nicht bekannt.
places-own-change = Unsere eigenen Zahlen ändern
places-own-usual = Wir nehmen, was die meisten Familien nehmen
places-own-otherwise = Sonst nehmen wir
places-own-otherwise-help = Zählt nur, wenn der Haken oben nicht gesetzt ist.
places-own-nothing = nichts
places-own-save = Unsere Zahlen speichern
places-own-forget = Unsere Zahlen vergessen
places-own-forgotten = Unsere Zahlen für { $place } sind gelöscht.
places-own-count = Unsere Zahlen für { $place } zählen jetzt.
places-own-digits = { $currency } hat { $digits } Nachkommastellen

# Was der Eintritt für die Familie ausmacht.
places-not-within-a-year = öffnet binnen eines Jahres nicht
places-must-be-booked = { $days ->
    [one] Besuche sind { $days } Tag vorher zu buchen
   *[other] Besuche sind { $days } Tage vorher zu buchen
  }
places-for-us-closed = Für uns: { $why }.
places-closed-on = Am { $day }: { $why }.
places-not-all-of-us = Am { $day } darf niemand uns alle einlassen.
places-not-all-of-us-at = Am { $day } um { $clock } darf niemand uns alle einlassen.
places-for-us-short = Für uns: { $price } am { $day }.
places-for-us-is = Für uns sind das { $price } am { $day } um { $clock }.
places-for-us-day = Für uns sind das ... an welchem Tag?
places-for-us-day-help = Leer zählt der nächste offene Tag. Extras und Parken gehören nicht zum Eintritt.
places-next-best = Am nächstbesten
places-what-changes = Was es ändert
places-way-more = { $price }, { $more } mehr: { $what }.
places-way-same = { $price }, ebenso viel: { $what }.
