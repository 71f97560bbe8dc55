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
