packing-own = { $thing }

packing-for = { $names }
packing-about-so-many = etwa { $number } für { $names }
packing-for-so-many = für { $number }
packing-with-needs = mit dem, was für { $names } notiert ist
packing-drinks = { $number }{ $hot ->
    [yes] ; an einem heißen Tag für jeden etwa ein Becher alle 20 Minuten, und Nachschub
   *[no] {""}
  }{ $let_in ->
    [no] ; fragen, ob sie mit hinein dürfen
   *[yes] {""}
  }
packing-babies-in-shade = { $names } im Schatten lassen; in der Kinderarztpraxis nach Sonnencreme fragen
packing-not-eaten-inside = nicht drinnen: eigenes Essen ist dort nicht erlaubt
packing-coats-off = dicke Jacken unter den Gurten des Kindersitzes ausziehen
packing-look-at-forecast = am Tag davor in die Vorhersage sehen
packing-pair-each = ein Paar für jedes Kind
packing-wash-hands = Hände waschen nach dem Anfassen und vor dem Essen

packing-papers = Karten oder Buchung, Jahreskarten, Nachweise von Alter oder Ermäßigung, Geldkarte und Bargeld
packing-papers-why = bei jedem Ausflug; { -no-source }
packing-phone = Geladenes Telefon und Kabel
packing-phone-why = bei jedem Ausflug; { -no-source }
packing-first-aid = Verbandszeug und Arzneien
packing-first-aid-why = bei jedem Ausflug; { -no-source }
packing-child-seat = Kindersitz
packing-child-seat-why = unter 4; welcher Sitz passt, bestimmen das Recht des Landes und die Anleitung des Sitzes
packing-booster = Sitzerhöhung oder Kindersitz
packing-booster-why = 4 bis 11; Großbritannien verlangt einen bis 12 Jahre oder 135 cm (GOV.UK, Child car seats: the
  law); es gilt das Recht des Landes, in dem Sie fahren
packing-diapers = Windeln, Feuchttücher, Wickelunterlage, Beutel
packing-diapers-why = unter zweieinhalb: eine alle zwei Stunden und zwei mehr; { -no-source }
packing-clothes = Ein ganzer Satz Kleidung zum Wechseln
packing-clothes-why = unter 5; { -no-source }
packing-bottles = Milch, Flaschen, Babynahrung
packing-bottles-why = unter 1; { -no-source }
packing-bib = Lätzchen, Löffel, Trinkbecher
packing-bib-why = 6 Monate bis unter 3 Jahre; { -no-source }
packing-stroller = Kinderwagen
packing-stroller-why = unter 4, wo der Ort Kinderwagen hineinlässt; { -no-source }
packing-stroller-cover = Regen- und Sonnenschutz für den Kinderwagen
packing-stroller-cover-why = unter 4, wo ein Teil des Besuchs im Freien ist; { -no-source }
packing-carrier = Trage oder Tuch
packing-carrier-why = unter 3, wo Kinderwagen nicht überall hinkommen; { -no-source }
packing-lovey = Kuscheltier oder Schnuller und leichte Decke
packing-lovey-why = für alle, die Mittagsschlaf halten; { -no-source }
packing-car-games = Etwas zur Beschäftigung im Auto
packing-car-games-why = 3 bis 12, Fahrten ab { $minutes } min; { -no-source }
packing-trash-bags = Beutel für Abfall und Reiseübelkeit
packing-trash-bags-why = 2 bis 12, Fahrten ab { $minutes } min; { -no-source }
packing-notebook = Heft und Stifte
packing-notebook-why = 5 bis 17, für das, was es zu lernen gibt; { -no-source }
packing-water = Wasserflaschen
packing-water-why = für alle; { -no-source }
packing-lunch = Mittagessen und Kleinigkeiten zum Mitnehmen
packing-lunch-why = gegessen wird unterwegs, die Familie bringt es mit, und eigenes Essen ist erlaubt (Karte des Ortes)
packing-car-snacks = Kleinigkeiten fürs Auto
packing-car-snacks-why = eigenes Essen ist drinnen nicht erlaubt (Karte des Ortes)
packing-coats = Jacken, Mützen und Handschuhe
packing-coats-why = gefühlt unter 5 °C, oder Winter, wo es niemand weiß; dass dicke Jacken die Gurte locker lassen, ist
  allgemeiner Rat, aus dem Gedächtnis
packing-blanket = Eine Decke und ein warmes Getränk im Auto
packing-blanket-why = Winter, Fahrten ab { $minutes } min; { -no-source }
packing-rain-jackets = Regenjacken und etwas Warmes
packing-rain-jackets-why = zum Teil im Freien, nicht Winter: eine Vorhersage ist hier nicht bekannt; { -no-source }
packing-sun-hats = Sonnenhüte und Sonnencreme
packing-sun-hats-why = zum Teil im Freien, gefühlt ab 18 °C, sonst Frühling und Sommer; { -no-source }
packing-spare-socks = Socken und Fäustlinge zum Wechseln
packing-spare-socks-why = zum Teil im Freien, Regen oder Schnee an jedem vierten Tag oder öfter, gefühlt unter 10 °C;
  { -no-source }
packing-repellent = Mückenschutz und lange Hosen
packing-repellent-why = zum Teil im Freien in hohem Gras oder Wald, nicht Winter; { -no-source }
packing-underground = Warme Jacken für unter der Erde
packing-underground-why = die Karte spricht von Höhle, Bergwerk oder dergleichen, wo es immer kühl ist; { -no-source }
packing-grip = Rutschfeste Schuhe, trockene Socken
packing-grip-why = die Karte spricht von nassem Boden, Wasser oder einer Höhle; { -no-source }
packing-soap = Seife oder feuchte Tücher
packing-soap-why = die Karte spricht von Tieren: Hände waschen vor dem Essen; { -no-source }
packing-ears = Gehörschutz
packing-ears-why = unter 12, und die Karte spricht von Lärm; { -no-source }
