compare-headline = { $outings ->
    [0] Kein Ausflug
    [1] Ein Ausflug
    [2] Zwei Ausflüge
   *[3] Drei Ausflüge
  } für { $people ->
    [one] eine Person
   *[other] { $people } Personen
  }
compare-no-day = Kein Tag in dieser Zeit geht
compare-why-not = Warum nicht?
compare-only-idea = Nur eine Idee: Zeiten und Preise sind geschätzt
compare-plan = { $place } planen
compare-why = Warum { $total }?
compare-close = Schließen

compare-what-it-costs = Was es kostet
compare-tickets = Eintrittskarten
compare-safety = Sicherheit
compare-leave-home = Abfahrt:
compare-and-back = { $leaving }; zurück { $home }
compare-drive = Fahrt, einfach:
compare-cars = Autos:
compare-at-place = Vor Ort:
compare-nap = Mittagsschlaf:
compare-weather = Wetter dort:
compare-crowds = Andrang:

compare-how-sure = Wie sicher ist die Reihenfolge?
compare-all-figures = Alle Zahlen nebeneinander
compare-chart = Gestapelte Balken, einer je Ort: woraus sich die wahrscheinliche Summe ergibt; die Tabelle sagt dasselbe

compare-suggest = Drei vorschlagen

compare-maybe-both = Beide vormerken
compare-maybe-all = Alle { $outings } vormerken
compare-maybe-help = Behalten Sie einen davon auf der Seite Kalender, dann sind die anderen abgesagt.
compare-maybe-none = Alle sind schon geplant.
compare-maybe-saved = { $outings ->
    [one] { $outings } Ausflug ist vorgemerkt.
   *[other] { $outings } Ausflüge sind vorgemerkt; ihre Termine stehen auf der Seite Kalender.
  }
