weather-not-known = dort nicht bekannt
weather-there = { $known ->
    [forecast] vorhergesagt
    [typed] nach Ihrer Angabe
   *[usual] gewöhnlich
  } { $there }{ $differs ->
    [yes] , gefühlt { $felt }
   *[no] {""}
  }, Regen oder Schnee: { $wet }{ $may_snow ->
    [yes] , Schnee: { $snow }
   *[no] {""}
  }
weather-in-short = { $there }, nass: { $wet }

weather-note = Wetter zu der Zeit: { $there }.
weather-weighs = { $weighs } zählt es, dabei draußen zu sein{ $half ->
    [yes] , für den halben Besuch
   *[no] {""}
  }.
weather-usual-from = Gewöhnliche Werte: { $source }; der Tag selbst kann weit davon abweichen.
weather-forecast-from = { $source }, Stand { $day }, { $at }{ $said ->
    [yes] : „{ $words }“
   *[no] {""}
  }.
weather-credit = { $credit }.
weather-counts-for-nothing = Das gewöhnliche Wetter dort ist nicht bekannt und zählt nicht; auf der Karte des Ortes können
  seine zwölf Monate stehen.

weather-just-now = gerade eben
weather-old = { $age } alt
weather-days-old = { $days } Tage alt
