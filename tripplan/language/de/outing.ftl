outing-over = der Tag ist vorbei
outing-no-rate = die Preise sind in { $currency }, Sie rechnen in { $own }; tragen Sie beim Haushalt einen Kurs ein
outing-book-ahead = Besuche müssen { $days ->
    [one] einen Tag
   *[other] { $days } Tage
  } vorher gebucht werden
outing-idea-without-price = bisher nur eine Idee: was der Eintritt kostet, weiß niemand
outing-not-admitted = { $text }
outing-barred = dort { $known ->
    [forecast] fühlt es sich zu der Stunde nach der Vorhersage
    [typed] würde es sich zu der Stunde
   *[usual] fühlt es sich zu der Stunde gewöhnlich
  } wie { $felt } { $known ->
    [typed] anfühlen
   *[usual] an
  }; für draußen für draußen haben Sie { $limits } eingestellt
outing-never-below = nie unter { $felt }
outing-never-above = nie über { $felt }
outing-nobody-called = im Haushalt heißt niemand { $name }
outing-at-any-time = Zu jeder anderen Zeit: { $reason }.
