days-title = An welchem Tag?
days-no-day = Kein Tag geht
days-no-such-day = Kein solcher Tag
days-none-in-time = In dieser Zeit geht kein Tag.
days-none-as-wished = Kein Tag in dieser Zeit ist so, wie Sie ihn wünschen.
days-wished = Gewünscht: { $wishes }.
days-nearly = Fast so gut
days-every-day = Alle Tage, die gehen
days-why-full = Warum so voll oder leer?
days-plan-day = { $day } planen
days-all-places = alle Orte
days-all-of-them = alle
days-our-wishes = Wünsche
days-what-matters = was zählt

days-best = top
days-good = gut
days-fair = mittel
days-poor = mäßig
days-never = nein
days-legend = Ein Druck auf einen Tag zeigt den Plan für seinen besten Ort. Punkt: Schule findet statt.
days-told = { $day }: { $grade }, { $place }, { $total }

days-first-of = { $shown } von { $all }, zuerst die besten jedes Ortes; in der Datei unten stehen alle.
days-day = Tag
days-place = Ort
days-total = insgesamt [{ $currency }]
days-unknown = etwas unbekannt
days-hassle = Kosten und Mühe [{ $currency }]
days-leave = Abfahrt
days-back = zurück
days-there = dort [min]
days-driving = Fahrt [min]
days-dark = im Dunkeln [min]
days-nap-kept = Schlaf bleibt [min]
days-nap-lost = Schlaf fehlt [min]
days-packed = überfüllt [%]
days-school = Schule findet statt
days-download = Diese Tabelle herunterladen

days-not-as-wished = { $days ->
    [one] { $days } weiterer Tag geht, aber nicht so, wie Sie ihn wünschen.
   *[other] { $days } weitere Tage gehen, aber nicht so, wie Sie sie wünschen.
  }
days-passed-over = { $days ->
    [one] { $days } Tag geht nicht, und warum
   *[other] { $days } Tage gehen nicht, und warum
  }
days-ask-one = Nach einem Tag fragen:
days-can-be-done = Das geht, für { $total }.
days-opens = öffnet { $day }

days-verdict-can-go = geht an { $days ->
    [one] { $days } Tag
   *[other] { $days } Tagen
  }
days-verdict-over = vorbei an { $days ->
    [one] { $days } Tag
   *[other] { $days } Tagen
  }
days-verdict-currency = Preise in anderer Währung an { $days ->
    [one] { $days } Tag
   *[other] { $days } Tagen
  }
days-verdict-closed = geschlossen an { $days ->
    [one] { $days } Tag
   *[other] { $days } Tagen
  }
days-verdict-hours = Öffnungszeiten unbekannt an { $days ->
    [one] { $days } Tag
   *[other] { $days } Tagen
  }
days-verdict-booking = zu spät zum Buchen an { $days ->
    [one] { $days } Tag
   *[other] { $days } Tagen
  }
days-verdict-busy = Familie hat etwas vor an { $days ->
    [one] { $days } Tag
   *[other] { $days } Tagen
  }
days-verdict-time = zu wenig Zeit für Fahrt und Besuch an { $days ->
    [one] { $days } Tag
   *[other] { $days } Tagen
  }
days-verdict-tickets = keine Karte lässt alle hinein an { $days ->
    [one] { $days } Tag
   *[other] { $days } Tagen
  }
days-verdict-weather = meist kälter oder heißer, als Sie zulassen, an { $days ->
    [one] { $days } Tag
   *[other] { $days } Tagen
  }

days-today = Was können wir heute noch machen?
days-today-close = Schließen: was wir heute noch machen können
days-free-from = Wir haben Zeit ab
days-free-until = Wieder zu Hause bis
days-free-ends-first = Die freie Zeit endet, bevor sie beginnt.
days-nothing-fits = Zwischen { $start } und { $end } Uhr passt nichts.
days-why-nowhere = Warum sonst nirgends?
days-why-not = Warum nicht?

days-weekdays = An welchen Wochentagen?
days-budget = Höchstens ausgeben [{ $currency }]
days-any-amount = beliebig viel
days-bad-amount = Ein Betrag sieht aus wie 120 oder 9,50.
days-drive = Eine Fahrt dauert höchstens
days-drive-any = so lange wie nötig
days-nap = Vom Mittagsschlaf bleibt mindestens
days-as-it-comes = wie es kommt
days-nap-half = die Hälfte
days-nap-three-quarters = drei Viertel
days-nap-all = alles
days-chance-packed = Gefahr, dass es überfüllt ist
days-at-most-in = höchstens 1 von { $in_all }
days-where = Wo wir sein wollen
days-anywhere = egal
days-indoors = drinnen, oder beides
days-outdoors = draußen, oder beides
days-home-any = wie im Haushalt steht
days-unit = Passend zu welchem Lernthema?
days-unit-none = keinem bestimmten
days-in-session = Nur, solange die meisten Schulen der Umgebung Unterricht haben
days-no-dark = Keine Fahrt im Dunkeln

days-weights-lead = Was würden Sie zahlen, damit Ihnen jedes davon erspart bleibt? Das ändert die Reihenfolge, nie die Kosten.
days-keep-weights = Im Haushalt behalten
days-weights-kept = Diese Beträge stehen jetzt im Haushalt.
days-weights-bad = Ein Betrag sieht aus wie 12 oder 9,50: { $fields }.

# Orte, die fehlen, weil die Familie vor kurzem dort war oder hingeht.
days-lately = Nicht dabei, weil in den letzten { $weeks } Wochen besucht oder geplant: { $visits }.
days-visit = { $place } ({ $day })
days-lately-too = Diese auch
days-lately-again = Mit --again auch diese.
