notes-drive = { $text }
notes-tickets = { $text }
notes-rate = 1 { $currency } wird als { $worth } gerechnet, eingetragen am { $day }.
notes-dearer-price = Gerechnet wird der höhere Preis, denn { $doubt }.
notes-holiday-at-home = Zu Hause ist Feiertag ({ $name }), dort nicht.
notes-holidays-not-known = Feiertage dieses Landes sind nicht bekannt; beim Andrang fehlen sie.
notes-age-in-doubt = Ohne den Geburtstag von { $names } zählt das höhere Alter.
notes-no-adult = Niemand in dieser Gruppe ist 18 oder älter.
notes-height-asked = Wie groß ist { $name }? „{ $what }“ ist nur für Personen, die { $limits } sind; gerechnet wird es, bis die Größe bei Ihrem Haushalt steht.
notes-height-from = mindestens { $height } groß
notes-height-to = höchstens { $height } groß
notes-too-short = { $name } ist mit { $height } zu klein für „{ $what }“ (ab { $least }); es ist nicht gerechnet.
notes-too-tall = { $name } ist mit { $height } zu groß für „{ $what }“ (bis { $most }); es ist nicht gerechnet.
notes-height-old = { $name } war am { $day } { $height } groß: für „{ $what }“ noch einmal messen.
notes-two-places-left-out = Karten für zwei Orte sind nicht berücksichtigt: Mit den Jahreskarten sind es zu viele Möglichkeiten.
notes-own-stay = { $own } dort gelten als ganzer Besuch, die Karte sagt { $card }: { $source }.
notes-typed-in = für diesen Ort eingetragen
notes-stay-by-age = { $name } wird zuerst müde: { $comfortable } sind angenehm, unter { $shortest } lohnt die Fahrt nicht.
notes-at-work = { $name } arbeitet an dem Tag ({ $start } bis { $end }); geplant und gerechnet ist ohne, wie Sie es wollten.
notes-calendar-ends = Der Familienkalender „{ $name }“ reicht nur von { $first } bis { $last }: Ob Sie frei sind, sagt er nicht.

notes-another-zone = Die Uhr dort geht { $by } { $ahead ->
    [yes] vor
   *[no] nach
  }.
notes-clocks-change = Die Uhr wird zu Hause in der Nacht { $night ->
    [before] davor
   *[after] danach
  } { $by } { $forward ->
    [yes] vorgestellt
   *[no] zurückgestellt
  }.

notes-much-driving = Überlegen Sie es sich: { $drives } Fahrt für { $there }{ $asleep ->
    [yes] {" "}wach
   *[no] {""}
  } dort.
notes-late-home = Bis { $latest } zu Hause zu sein ist unwahrscheinlich: { $odds }, wenn Sie so spät dran sind wie sonst.
notes-asleep-there = { $name } verschläft { $asleep } von { $visit } dort.

notes-show-missed = { $show } um { $starts }: in diesem Plan nicht zu sehen.
notes-show-beside = { $show } ist um { $starts } zu sehen; der Plan richtet sich nicht danach.
notes-show-seen = { $show }: zu sehen von { $start } bis { $end }{ $sleepers ->
    [0] {""}
    [one] ; { $asleep } verschläft es
   *[other] ; { $asleep } verschlafen es
  }{ $may_be_late ->
    [yes] ; Gefahr, zu spät zu kommen: { $late }
   *[no] {""}
  }.
notes-among-classes = Schulklassen kommen meist von { $start } bis { $end }: { $inside } davon sind Sie dort.
notes-after-classes = Schulklassen kommen meist von { $start } bis { $end }; Sie gehen danach hinein, um { $enters }.
notes-before-classes = Schulklassen kommen meist von { $start } bis { $end }; Sie sind vorher weg, um { $leaves }.
notes-quiet-hour = Ruhige Stunde von { $start } bis { $end }: { $there ->
    [yes] { $inside } davon sind Sie dort
   *[no] dann sind Sie nicht dort
  }.

notes-cheaper = { $saves } weniger: { $changes }.
notes-in-from = hinein ab { $at }
notes-in-before = hinein vor { $at }
notes-out-by = hinaus bis { $at }
notes-out-after = hinaus nach { $at }
notes-inside-at-most = höchstens { $stay } drinnen
notes-inside-more-than = länger als { $stay } drinnen

notes-only-an-idea = Bisher ist das nur eine Idee.
notes-hours-not-known = Nicht bekannt: wann geöffnet ist; vorerst gilt täglich 9 bis 17 Uhr.
notes-hours-not-checked = Die Zeiten sind noch nicht geprüft.
notes-entry-not-known = Nicht bekannt: was Eintritt und Parken kosten; sie sind nicht mitgerechnet.
notes-entry-guessed = Eintritt und Parken: etwa { $about } haben Sie geschätzt.
notes-drive-guessed = Die Fahrt: etwa { $about } haben Sie geschätzt.
notes-place-not-known = Nicht bekannt: wo es ist; vorerst gelten etwa 45 min Fahrt.
notes-to-ask = Zu erfragen: { $questions }
notes-to-ask-of = { $place }, zu erfragen: { $questions }
notes-ask-hours = An welchen Tagen geöffnet, von wann bis wann?
notes-ask-mondays = Montags geschlossen?
notes-ask-holidays = An Feiertagen geschlossen?
notes-ask-adult = Preis für Erwachsene?
notes-ask-child = Preis für ein Kind von { $years } Jahren?
notes-ask-baby = Preis für ein Baby?
notes-ask-family-ticket = Familienkarte?
notes-ask-parking = Parken?
notes-ask-address = Straße und Hausnummer?
