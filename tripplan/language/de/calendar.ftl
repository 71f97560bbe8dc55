# Kalender: wann schulfrei ist, und wann die Familie etwas vorhat.

calendar-school-file = Kalender des Schulbezirks (.ics) oder eine Tabelle (.csv)
calendar-school-table = Eine Tabelle hat die Spalten first day, last day, name und kind; Tage wie 2026-12-24. Der letzte Tag
  darf fehlen, ebenso die Art: no school, short day, first day of school, last day of school, other.
calendar-days-off = { $days ->
    [one] { $days } schulfreier Tag oder Ferien, angekreuzt
   *[other] { $days } schulfreie Tage und Ferien, angekreuzt
  }
calendar-short-days = { $days ->
    [one] { $days } kurzer Tag: Unterricht endet früher oder beginnt später
   *[other] { $days } kurze Tage: Unterricht endet früher oder beginnt später
  }
calendar-family-file = Eine Kalenderdatei (.ics); behalten wird nur, wann Sie belegt sind
calendar-busy-times = { $times ->
    [0] Sie nennt keine Zeit, in der Sie belegt sind.
    [one] { $times } Termin, der Zeit braucht.
   *[other] { $times } Termine, die Zeit brauchen.
  }
calendar-entries = { $entries ->
    [one] Was aus dem { $entries } Eintrag wurde
   *[other] Was aus den { $entries } Einträgen wurde
  }
calendar-window = Gelesen wurden die Tage vom { $first } bis { $last }.

calendar-title = Kalender
calendar-which = Welcher Kalender?
calendar-our-outings = Unsere Ausflüge
calendar-school = Schule
calendar-family = Familie

# Unsere Ausflüge.
calendar-compare = Ausflüge vergleichen
calendar-none-ahead = Kein Ausflug geplant
calendar-ahead = { $outings ->
    [one] { $outings } Ausflug geplant, am { $day }
   *[other] { $outings } Ausflüge geplant, der nächste am { $day }
  }
calendar-over = { $outings ->
    [one] Vorbei: { $outings } Ausflug
   *[other] Vorbei: { $outings } Ausflüge
  }
calendar-download-year = Alle des kommenden Jahres herunterladen (.ics)
calendar-download-year-help = Eine Datei mit allen Ausflügen unten; nochmals eingelesen, verschiebt sie Einträge und
  verdoppelt keinen.
calendar-status-confirmed = fest
calendar-status-tentative = vorläufig
calendar-status-cancelled = abgesagt
calendar-keep-this = Diesen behalten
calendar-keep-this-help = Er steht dann fest, und die anderen vorgemerkten werden abgesagt.
calendar-settled = { $place } am { $day } steht fest.
calendar-download = Herunterladen (.ics)
calendar-download-cancellation = Absage herunterladen (.ics)
calendar-plan-again = Wieder planen
calendar-planned-again = { $place } am { $day } ist wieder geplant.
calendar-cancel = Diesen Ausflug absagen
calendar-called-off = { $place } am { $day } ist abgesagt.
calendar-remove = Entfernen
calendar-remove-help = Nimmt { $place } aus dieser Liste.
calendar-removed = { $place } ist nicht mehr auf der Liste.
calendar-cancellation-how = Öffnen Sie die Absage auf jedem Gerät, das den Eintrag hat; bleibt er trotzdem stehen,
  löschen Sie ihn von Hand. Gekaufte Karten nimmt der Ort vielleicht zurück; fragen Sie dort.
calendar-all-of-us = wir alle { $people }

# Was der Eintrag im Kalender sagt, und woran er erinnert.
calendar-one-entry = ein Eintrag
calendar-three-entries = drei: Hinfahrt, Besuch, Heimweg
calendar-reminders-enough = Erinnerungen genügen
calendar-as-tasks = Aufgaben, für einen Kalender mit Aufgabenliste
calendar-as-entries = kurze Einträge, die jeder Kalender zeigt
calendar-entry-tells = Was der Eintrag sagt
calendar-tell-names = Namen derer, die mitkommen
calendar-tell-home = Unsere Adresse
calendar-tell-costs = Preise, und was es im Ganzen kostet
calendar-who-reads = Wer den Kalender sieht, kann das Angekreuzte lesen. Geburtsdaten stehen nie darin.
calendar-how-firm = Wie fest ist es?
calendar-layout = Einträge
calendar-mark-busy = Die Zeit als belegt eintragen
calendar-color = Farbe
calendar-own-color = die des Kalenders
calendar-entry-reminds = Woran er uns erinnert
calendar-remind-book = Ans Buchen, am Abend vor dem letzten Tag dafür
calendar-remind-pack = Ans Packen, am Abend davor
calendar-remind-ready = Ans Fertigmachen
calendar-remind-minutes = Wie viele Minuten vor der Abfahrt?
calendar-remind-leave = Ans Losfahren, wenn es so weit ist
calendar-to-do-as = Buchen und Packen als
calendar-goes-out = Der Eintrag geht hinaus { $told }. { $reminders }
calendar-goes-with = mit { $what }
calendar-goes-without = ohne { $what }
calendar-goes-names = Namen
calendar-goes-home = Adresse
calendar-goes-prices = Preise
calendar-reminders = Erinnerungen: { $what }.
calendar-no-reminders = Keine Erinnerungen.
calendar-reminds-book = ans Buchen
calendar-reminds-pack = ans Packen
calendar-reminds-ahead = { $time } vorher
calendar-reminds-leave = ans Losfahren

# Einträge vieler Arten.
calendar-remove-named = { $name } entfernen
calendar-is-removed = { $name } ist entfernt.
calendar-is-added = { $name } ist hinzugefügt.
calendar-is-replaced = { $name } ist ersetzt.
calendar-a-file = Eine Datei
calendar-type-in = Eintippen
calendar-built-in = Eingebaut
calendar-save = Speichern

# Die eigene Woche.
calendar-own-week = Ihre eigene Woche
calendar-every-week = Jede Woche
calendar-working-hours = Arbeitszeiten
calendar-late-evenings = Späte Abende
calendar-late-nothing = nichts
calendar-late-later = wir fahren am nächsten Tag später los
calendar-late-not-free = der nächste Tag ist nicht frei
calendar-late-what = Was macht ein Termin, der spät endet, mit dem nächsten Tag?
calendar-late-saved = Was ein später Abend bewirkt, ist gespeichert.
calendar-no-member = { $name } gehört nicht mehr dazu; diese Zeiten zählen für niemanden.
calendar-out-of-week = Es ist aus Ihrer Woche genommen.
calendar-block-same-name = Ein Termin mit demselben Namen ersetzt den früheren.
calendar-block-saved = { $name } steht in Ihrer Woche.
calendar-work-saved = Die Arbeitszeiten von { $name } stehen in Ihrer Woche.
calendar-add-block = Diesen Termin hinzufügen
calendar-add-hours = Diese Zeiten hinzufügen
calendar-not-during = Nicht an diesen Tagen
calendar-not-during-lines = Nicht an diesen Tagen, je eine Zeile

# Wann die Familie etwas vorhat.
calendar-not-over = Über diese Zeiten wird kein Ausflug geplant.
calendar-add-busy = Eintragen, wann Sie belegt sind
calendar-how-known = Woher ist es bekannt?
calendar-nothing-in-way = Nichts von Ihnen steht im Weg
calendar-busy-on = Belegt an { $taken } der nächsten { $days } Tage
calendar-addresses = Ihre E-Mail-Adressen, mit Kommas dazwischen (freiwillig)
calendar-addresses-help = Damit bekannt ist, welche Einladungen Sie abgelehnt haben. Sie dienen nur dem Lesen und werden
  nicht behalten.
calendar-never-busy = nie belegt.
calendar-busy-from-to = { $named ->
    [yes] { $times }, { $first } bis { $last }, mit dem, was sie sind.
   *[no] { $times }, { $first } bis { $last }, nur die Zeiten.
  }
calendar-from-source = Aus { $source }.
calendar-read-up-to = Gelesen bis { $day }.
calendar-nothing-to-keep = Darin ist nichts zu behalten.
calendar-read-before = Diese Datei wurde schon gelesen, als „{ $name }“; Speichern ersetzt, was sie enthielt.
calendar-what-called = Wie nennen Sie diesen Kalender?
calendar-name-of = Name des Kalenders
calendar-keep-names = Auch behalten, was in den Einträgen steht
calendar-not-in-way = Welche Einträge stehen einem Ausflug nicht im Weg?
calendar-not-in-way-help = Ein Geburtstag, eine Erinnerung: Sie bleiben weg. Wählen Sie sie beim nächsten Einlesen wieder aus.
calendar-none-of-them = keiner
calendar-same-name = Ein Kalender mit demselben Namen ersetzt den früheren.
calendar-save-calendar = Diesen Kalender speichern
calendar-no-title = (ohne Titel)
calendar-so-often = { $title } ({ $times }-mal)

# Feiertage und örtliche Tage.
calendar-holidays = Feiertage und lange Wochenenden
calendar-no-holidays = Für diese Länder sind keine Feiertage bekannt.
calendar-fairs = Feste und örtliche freie Tage
calendar-fairs-listed = Feste und örtliche freie Tage: { $days }
calendar-fairs-lead = Ein Fest, ein Umzug oder ein örtlicher freier Tag füllt die Orte in der Nähe.
calendar-column-day = Tag
calendar-column-holiday = Feiertag
calendar-column-where = wo
calendar-column-row = freie Tage am Stück
calendar-around-town = in und um einen Ort
calendar-add-day = Diesen Tag hinzufügen
calendar-name-a-town = Nennen Sie einen Ort mit Bundesland, eine Postleitzahl oder Koordinaten, oder wählen Sie einen Ort.

# Wann schulfrei ist.
calendar-school-lead = Haben die Schulen um einen Ort frei, ist er voller. Fügen Sie Ihren Schulkalender hinzu.
calendar-add-school = Einen Schulkalender hinzufügen
calendar-how-have = Wie haben Sie ihn?
calendar-no-school-yet = Noch kein Schulkalender
calendar-none-off = Kein schulfreier Tag im { $month }
calendar-days-off-in = { $days ->
    [one] { $days } schulfreier Tag im { $month }
   *[other] { $days } schulfreie Tage im { $month }
  }
calendar-listed-off = { $days ->
    [one] { $days } Mal Ferien oder freier Tag
   *[other] { $days } Mal Ferien und freie Tage
  }
calendar-listed-short = { $days ->
    [one] { $days } kurzer Schultag
   *[other] { $days } kurze Schultage
  }
calendar-next-off = Als Nächstes frei: { $days }
calendar-so-many-students = { $students } Schulkinder
calendar-guess = Das nächste Jahr aus diesem schätzen
calendar-guess-help = Ferien rücken auf dieselben Wochentage im Jahr darauf. Geschätzt ist eine Chance, nie gewiss.
calendar-not-guessed = Es wurde nichts geschätzt: { $why }.
calendar-guessed = Für { $name } ist das Jahr darauf geschätzt.
