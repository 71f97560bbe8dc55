crowds-plenty-of-room = ruhig
crowds-some-company = etwas Betrieb
crowds-well-filled = gut besucht
crowds-packed = überfüllt

crowds-risk = { $word }; Gefahr eines überfüllten Tages: { $odds }

crowds-reason = { $cause }: { NUMBER($factor, minimumFractionDigits: 1, maximumFractionDigits: 1) }-mal so voll wie { $than }

crowds-ordinary-day = ein gewöhnlicher Schultag
crowds-weekday = { $day }
crowds-holiday = Feiertag ({ $name })
crowds-in-lieu = viele haben frei ({ $name })
crowds-bridge-day = Brückentag
crowds-long-weekend = gehört zu einem langen Wochenende
crowds-on-break = in den Schulferien
crowds-likely-on-break = wahrscheinlich in den Schulferien

crowds-students = die Schulkinder der Umgebung
crowds-most-students = die meisten Schulkinder der Umgebung
crowds-some-students = { NUMBER($share, style: "percent", maximumFractionDigits: 0) } der Schulkinder der Umgebung
crowds-no-school = keine Schule: { $students }
crowds-short-school-day = früher Schulschluss: { $students }
crowds-school-unknown = kein Schulkalender bekannt: { $students } haben vielleicht frei
crowds-school-likely = kein Schulkalender bekannt: { $students } haben wahrscheinlich Schule
crowds-no-school-likely = kein Schulkalender bekannt: { $students } haben wahrscheinlich frei

crowds-season = Jahreszeit
crowds-season-by-card = Jahreszeit, nach den vollsten Monaten auf der Karte des Ortes
crowds-season-in-doubt = Jahreszeit, schwer zu sagen, wo die Winter warm sind
crowds-before-christmas = in der Adventszeit
crowds-christmas-and-new-year = Weihnachten und Jahreswechsel
crowds-free-entry = ein Tag mit freiem Eintritt
crowds-school-classes = Schulklassen kommen ({ $hours })
crowds-special-day = { $name }
crowds-your-notes = { $notes ->
    [one] nach Ihrer Notiz zu diesem Ort
   *[other] nach Ihren { $notes } Notizen zu diesem Ort
  }

crowds-than-weekday = an einem gewöhnlichen Werktag
crowds-than-such-weekday = sonst an so einem Werktag
crowds-than-weekend = an einem anderen Wochenende
crowds-than-school-day = an einem Schultag
crowds-than-whole-school-day = an einem ganzen Schultag
crowds-than-average = im Durchschnitt des Jahres
crowds-than-paid = an einem Tag, der Eintritt kostet
crowds-than-without-classes = an einem Schultag ohne sie
crowds-than-usual = an einem gewöhnlichen Tag
crowds-than-elsewhere = nach Zählungen anderswo

crowds-table-zoo = ein städtischer Zoo, 440 Tage der Jahre 1990 und 1991
crowds-table-bicycles = Ausflügler auf Leihrädern einer Stadt, 2011 und 2012
crowds-table-walkers = Spaziergänger in einem Uferpark, 2015 und 2016
crowds-table-museum = ein städtisches Museum, 2015 bis 2019
crowds-table-park-museum = ein Museum in einem Park, 2015 bis 2018
crowds-table-town-house = ein historisches Stadthaus, 2015 bis 2018
crowds-source = anderswo gezählt, nicht an diesem Ort: { $tables }
crowds-source-with-notes = anderswo gezählt, nicht an diesem Ort: { $tables }. Ihre eigenen Notizen zählen mit: etwa vier zu einer Art von Tagen wiegen ebenso viel

crowds-against-plan = Wie voll: erwartet { $planned } (Gefahr eines überfüllten Tages: { $odds }), war { $real }.
