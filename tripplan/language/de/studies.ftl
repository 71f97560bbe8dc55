# Für den Unterricht: was wann gelernt wird, welche Orte passen, und die Ausflüge des Halbjahrs.

studies-headline = { $outings ->
    [0] Noch passt kein Ausflug
    [one] Ein Ausflug für den Unterricht
   *[other] { $outings } Ausflüge für den Unterricht
  }
studies-what = Was lernen Sie gerade?
studies-begin = Sagen Sie, was die Kinder wann lernen. Jedes Thema bekommt einen Ausflug, der passt.

studies-at-most = höchstens { $money }
studies-no-budget = kein Budget
studies-two-a-week = auch zwei je Woche
studies-one-a-week = einer je Woche
studies-limits = die Grenzen
studies-total = { $total } insgesamt
studies-left = { $left } übrig von { $budget }
studies-left-unsure = { $left } übrig von { $budget }; es könnte nicht reichen
studies-lower-bound = Manche Kosten sind unbekannt, es kann also mehr werden.
studies-none-worked-out = Es lassen sich keine Ausflüge berechnen: { $why }.
studies-obstacles = Nicht alle Ausflüge passen. Eines davon müsste nachgeben:
studies-exact = Genau für diese Tage. Ein Preis, ein Kalender oder das Wetter kann es noch ändern.

studies-keep-all = Alle { $outings } vormerken
studies-keep = { $place } vormerken
studies-kept-all = { $outings } Ausflüge sind geplant; der Kalender hat ihre Einträge.
studies-kept = { $place } am { $day } ist geplant; der Kalender hat den Eintrag.
studies-weeks = { $first } bis { $last }
studies-plan = { $place } planen
studies-planned = geplant
studies-fixed = von Ihnen festgelegt
studies-also-fit = auch: { $places }
studies-no-place = Noch passt kein Ort: keine Karte nennt eines der Themen.
studies-counts-too = „{ $topic }“ zählt auch

studies-change = { $unit } ändern
studies-why = Warum { $total }?
studies-free = { $unit } wieder freigeben
studies-freed = „{ $unit }“ ist wieder frei.
studies-fix = { $place } am { $day } behalten
studies-is-fixed = „{ $unit }“ ist festgelegt: { $place } am { $day }.
studies-not-day = Nicht am { $day }
studies-not-on = „{ $unit }“ geht am { $day } nicht zu { $place }.
studies-not-place = Nicht { $place }
studies-not-to = „{ $unit }“ geht nicht zu { $place }.
studies-allow = Ausgeschlossenes wieder zulassen ({ $count })
studies-allowed = Für „{ $unit }“ ist nichts mehr ausgeschlossen.
studies-pick-yourself = Ort oder Tag selbst wählen
studies-where-to = Wohin?
studies-wherever = wo es am besten ist
studies-when = Wann? Leer: wann es am besten ist.
studies-plan-so = { $unit } so planen
studies-picked = „{ $unit }“ ist geplant, wie Sie es gewählt haben.
studies-other-places = Die anderen Orte zeigen
studies-no-other = Kein anderer Ort ließe für alles Übrige einen Tag.
studies-instead = Stattdessen zu { $place }
studies-goes-to = „{ $unit }“ geht zu { $place }.

studies-edit = Themen, Wochen und Budget von { $unit }
studies-save-unit = { $unit } speichern
studies-add = Thema hinzufügen
studies-add-this = Dieses Thema hinzufügen
studies-new = neues Thema
studies-remove = { $unit } entfernen
studies-at-most-units = Höchstens { $units } passen in einen Plan; lassen Sie diesmal einige aus.

studies-budget = Budget für alle Ausflüge, in { $currency }
studies-budget-help = Leer: keine Grenze für das Ganze.
studies-careful = Vorsichtig: das obere Ende jeder Spanne zählen
studies-several = Zwei Ausflüge dürfen in einer Woche sein
studies-same-place = Ein Ort darf zweimal besucht werden
studies-weigh = So wenig wie möglich von
studies-weigh-felt = Kosten und Mühe
studies-weigh-money = Geld allein
studies-weigh-help = Was verlorener Schlaf oder Gedränge Ihnen wert ist, steht unter Haushalt.
studies-first = Erster Tag des Halbjahrs
studies-last = Letzter Tag des Halbjahrs
studies-without = Themen, die diesmal keinen Ausflug bekommen
studies-none = keine
studies-save-limits = Grenzen speichern
studies-limits-saved = Die Grenzen sind gespeichert.
