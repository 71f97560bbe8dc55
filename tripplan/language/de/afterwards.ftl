# Danach: einen Ausflug notieren, was notiert ist, und was es ergibt.

afterwards-headline-one = Wie war { $place }?
afterwards-to-log = { $outings } Ausflüge zu notieren
afterwards-so-far = { $outings ->
    [one] { $outings } Ausflug
   *[other] { $outings } Ausflüge
  } bisher
afterwards-how-was-yours = Wie war Ihr Ausflug?
afterwards-log = { $place } notieren
afterwards-log-another = Noch einen Ausflug notieren
afterwards-log-first = Einen Ausflug notieren
afterwards-planned = geplant { $planned }
afterwards-show-all = Alle { $outings } Ausflüge zeigen
afterwards-show-fewer = Weniger zeigen
afterwards-table = Alle Ausflüge als Tabelle (.csv)
afterwards-more-about = Mehr über { $place }
afterwards-change = { $place } ändern
afterwards-remove = { $place } entfernen
afterwards-removed = { $place } am { $day } ist gelöscht.
afterwards-outings-show = Was Ihre Ausflüge zeigen
afterwards-record = Lernnachweis
afterwards-outdoors = draußen { $how }
afterwards-there = { $stay } dort
afterwards-not-noted = Geld nicht notiert
afterwards-other = sonstiges { $amount }
afterwards-money-went-to = Wofür das Geld war: { $what }
afterwards-table-planned = Geplant
afterwards-table-was = War
afterwards-as-planned = Es lief wie geplant: eintragen
afterwards-as-planned-help = Zeiten, Geld, Strecke und Schlaf wie im Plan. Ändern Sie, was anders war.
afterwards-learned = Was haben Sie gelernt?
afterwards-learned-help = Gilt für jedes Schulkind, von dem sonst nichts steht.
afterwards-more = Mehr: wer, Zeiten, Schlaf, jedes Kind
afterwards-save = Speichern
afterwards-close-unsaved = Schließen ohne Speichern
afterwards-how-was-on = Wie war { $place }, { $day }?
afterwards-times = Zeiten
afterwards-money = Geld
afterwards-car = Das Auto
afterwards-notes = Notizen
afterwards-car-took = { $what }, in { $unit }
afterwards-car-took-help = Mit der Strecke sagt es, was Ihr Auto wirklich braucht.
afterwards-nap-of = Schlaf von { $name }
afterwards-planned-minutes = geplant: { $minutes }
afterwards-no-nap = 0 für keinen
afterwards-elsewhere = woanders
afterwards-plan-said = geplant: { $what }
afterwards-pick-day = Wählen Sie den Tag
afterwards-day = Tag
afterwards-logged = { $place } am { $day } ist notiert.
afterwards-switch-on = Schalten Sie ein, wonach Pläne gehen sollen. Je mehr Ausflüge, desto mehr zählt Ihre Zahl.
afterwards-notes-of-crowds = { $notes ->
    [one] { $notes } Notiz
   *[other] { $notes } Notizen
  } darüber, wie voll es war.
afterwards-plan-with-own = Mit eigenen Zahlen planen: { $what }
afterwards-not-enough = Noch nicht genug Ausflüge.
afterwards-own-on = Eigene Zahlen zählen jetzt: { $what }.
afterwards-own-off = Eigene Zahlen zählen nicht mehr: { $what }.
afterwards-years-budget = Budget des Jahres
afterwards-on-day = am Tag
afterwards-money-went = Wofür das Geld war
afterwards-about-money = das Geld des Jahres
afterwards-set-budget = Budget des Jahres festlegen
afterwards-change-budget = Budget des Jahres ändern
afterwards-about-budget = das Budget
afterwards-since = seit { $day }
afterwards-year-before = das Jahr davor
afterwards-which-year = Welches Jahr?
afterwards-planned-and-paid = Geplant und bezahlt
afterwards-may-cost = Was Ausflüge im Jahr kosten dürfen, in { $currency }
afterwards-no-budget = Leer: kein Budget.
afterwards-year-begins = Das Jahr beginnt im
afterwards-grades-of = Klassenstufe von { $name }, falls gefragt
afterwards-save-budget = Budget speichern
afterwards-budget-saved = Das Budget ist gespeichert.
afterwards-grades = Klassenstufen
afterwards-grades-example = Klasse 1-6
