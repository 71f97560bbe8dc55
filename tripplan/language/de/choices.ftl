choices-who = Wer fährt mit?
choices-nobody = Wählen Sie mindestens eine Person.
choices-all-of-us = alle { $people }
choices-both-of-us = wir beide
choices-some-of-us = { $people } von uns

choices-which-days = Zwischen welchen Tagen?
choices-two-days = Wählen Sie einen ersten und einen letzten Tag.
choices-six-weeks = nächste sechs Wochen
choices-six-months = Sechs Monate
choices-a-year = Ein Jahr
choices-eighteen-months = Achtzehn Monate

choices-which-places = Welche Orte?
choices-places = { $places ->
    [one] { $places } Ort
   *[other] { $places } Orte
  }

choices-where-to = Wohin?
choices-which-day = An welchem Tag?
choices-exact = Auf die Minute
choices-exact-help = Probiert jede Minute statt alle fünf.

choices-bad-address = Diese Adresse lässt sich nicht öffnen: { $faults }.
choices-no-such-place = kein Ort von Ihnen heißt „{ $name }“
choices-no-such-day = „{ $text }“ ist kein Tag wie { $example }
choices-day-over = { $day } ist vorbei
choices-day-too-far = { $day } ist zu weit weg

