start-three-steps = Drei Schritte zum ersten Ausflug
start-step-who = Wer
start-step-where = Wo
start-step-idea = Eine erste Idee

start-headline = { $when }, { $place }: um { $at } Uhr einladen
start-under-way = { $place }: um { $at } Uhr wieder zu Hause
start-day-today = Heute
start-day-tomorrow = Morgen
start-about = etwa { $total }
start-go-through-day = Durch den Tag gehen
start-open-plan = Plan öffnen

start-home-again = Um { $at } Uhr wieder zu Hause
start-booked = Gebucht: { $what }
start-nothing-to-book = Nichts vorab zu buchen
start-was-to-book = War zu buchen bis { $day }
start-to-book = Noch zu buchen, bis { $day }

start-how-was = Wie war { $place }?
start-log-it = Eintragen
start-ideas-waiting = { $ideas ->
    [one] { $ideas } Idee wartet
   *[other] { $ideas } Ideen warten
  }
start-look-at-ideas = Ideen ansehen

start-left-of-budget = Übrig von { $budget } in diesem Jahr
start-spent-and-planned = ausgegeben { $spent }, geplant { $planned }
start-spent = ausgegeben
start-planned = geplant
start-spent-this-year = Dieses Jahr ausgegeben
