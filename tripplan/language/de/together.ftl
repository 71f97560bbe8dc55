together-entry = Der Eintritt kostet { $total } { $how }.
together-entry-saves = Der Eintritt kostet { $total } { $how }, { $saves } weniger als einzeln.
together-one-order = in einer Bestellung
together-order-each = mit einer Bestellung je Haushalt; das ist billiger als eine für alle
together-one-household = für den Haushalt
together-reached = Zusammen bekommen Sie { $offers }.
together-offer = „{ $name }“

together-pays = { $group } zahlt { $amount }
together-pays-paid = { $group } zahlt { $amount } ({ $paid } schon bezahlt)
together-not-alone = { $part }; allein kämen sie nicht hinein: { $why }.
together-as-alone = { $part }, wie allein.
together-instead = { $part } statt { $alone } allein.

together-rule = Jeder Haushalt zahlt im Verhältnis zu dem, was er allein bezahlt hätte; wer frei hineingekommen wäre, zahlt nichts. Cents, die beim Runden übrig bleiben, bekommt, wer dabei am meisten verloren hat.
together-rule-not-alone = Für einen Haushalt, der allein nicht hineinkäme, zählt der Anteil seiner Leute an der gemeinsamen Bestellung.

together-more = Mit { $who } zahlen alle weniger: { $parts }.
together-more-reached = Mit { $who } zahlen alle weniger (dann gibt es { $offers }): { $parts }.
together-more-adults = { $count } { $count ->
    [one] weiteren Erwachsenen
   *[other] weiteren Erwachsenen
  }
together-more-children = { $count } { $count ->
    [one] weiteren Kind
   *[other] weiteren Kindern
  }
together-less = { $group } { $amount } statt { $before }

together-people = { $count } { $count ->
    [one] Person
   *[other] Personen
  }
together-seats = Die Autos haben { $seats } Plätze für { $people }.
together-seats-missing = { $missing } { $missing ->
    [one] Platz fehlt
   *[other] Plätze fehlen
  }: { $people }, { $seats } in den Autos.

together-paid-too-much = { $back } wurden zu viel bezahlt; { $group } bekommt das vom Ort zurück.
together-pays-rest = { $group } zahlt die übrigen { $amount } an der Kasse.
together-nobody-owes = Dann schuldet niemand jemandem etwas.
together-transfer = { $payer } zahlt { $amount } an { $receiver }.
