passes-order = Am { $day } kaufen, { $place }: { $what }. Das macht { $price }.
passes-for-household = { $count ->
    [one] „{ $name }“
   *[other] { $count } x „{ $name }“
  } für den Haushalt, gültig bis { $until }
passes-for = { $count ->
    [one] „{ $name }“
   *[other] { $count } x „{ $name }“
  } für { $holders }, gültig bis { $until }
passes-for-groups = { $count } x „{ $name }“ für { $groups }, gültig bis { $until }
passes-group = ({ $holders })

passes-no-visit-can-be = Keiner der geplanten Besuche ist möglich.
passes-visits = { $count } { $count ->
    [one] Besuch
   *[other] Besuche
  }
passes-none-pays = Geplant: { $visits }. Dafür lohnt sich keine Jahreskarte; ohne eine zu kaufen macht das zusammen { $total }.
passes-all-in = Damit { $count ->
    [one] kostet
   *[other] kosten
  } { $visits } zusammen { $total }, Jahreskarten eingeschlossen.
passes-not-without = Manche davon sind ohne Jahreskarte nicht möglich.
passes-saved = Ohne Jahreskarte zu kaufen wären es { $singly }; gespart werden { $saving }.
passes-counted = Gezählt werden Eintritt, Jahreskarten und Parken. Eine Jahreskarte zählt ab dem Tag des Kaufs; was an einem Tag an einem Ort gekauft wird, ist eine Bestellung.
passes-parking-unknown = Das Parken ist nicht bekannt und bleibt weg: { $places }.

passes-entry = Eintritt { $amount }
passes-parking = Parken { $amount }
passes-visit = { $day }, { $place }: { $parts }
passes-visit-with = { $day }, { $place }: { $parts } mit { $passes }
passes-name = „{ $name }“
passes-visit-alone = { $visit }.
passes-visit-instead = { $visit }, statt zusammen { $singly }.
passes-visit-not-without = { $visit }; ohne käme niemand hinein.
passes-left-out = { $day }, { $place }, bleibt weg: { $why }.

passes-of = „{ $name }“ ({ $place })
passes-of-holders = „{ $name }“ ({ $place }) für { $holders }
passes-needed = { $card }, { $price }, ist für einen Besuch nötig.
passes-never-pays = { $card }, { $price }, lohnt sich bei solchen Besuchen nie: Sie spart dabei nichts.
passes-paid-after = { $card }, { $price }, hätte sich bei solchen Besuchen erst so gelohnt: { $after }; wo sie zählt ({ $visits }), würde sie { $saved } sparen.
passes-paid-back = { $card }, { $price }, hat sich am { $day } bezahlt gemacht, mit Besuch Nummer { $number }; geplant: { $visits }, gespart: { $saved }.
passes-would-be-paid-back = { $card }, { $price }, hätte sich am { $day } bezahlt gemacht, mit Besuch Nummer { $number }; geplant: { $visits }, gespart wären { $saved }.
