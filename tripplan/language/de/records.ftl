# Aufzeichnungen: was wo liegt, eine Kopie für anderswo, was Dinge zurückholt, und der Verlauf.

records-here = Alles liegt auf diesem Computer
records-demo-here = Das Beispiel liegt auf diesem Computer
records-holds = { $records ->
    [one] { $records } Eintrag
   *[other] { $records } Einträge
  }, zuletzt geändert { $when }
records-nothing = Noch ist nichts eingetragen.
records-where = Liegt in { $path }

records-save-copy = Kopie sichern
records-copy-holds = Eine Datei mit allem. Sie enthält Namen und Geburtsdaten.
records-download = Kopie von allem sichern
records-bring-back = Zurückholen
records-bring-back-what = { $days ->
    [0] Eine Datei, die Sie gesichert haben
    [one] Die Kopie von { $days } Tag, oder eine gesicherte Datei
   *[other] Kopien von { $days } Tagen, oder eine gesicherte Datei
  }
records-open-bring-back = Eine Kopie zurückholen
records-about-copies = die Kopien
records-no-demo-copies = Vom Beispiel gibt es keine Kopien. „Beispiel zeigen“ im Schrank stellt es wieder her.
records-own-first = Für eigene Dateien wechseln Sie oben zuerst zu Ihrer eigenen Familie.
records-copies-kept = Die letzten sieben Kopien bleiben, davor jede siebte. Sie liegen in { $folder }.
records-copy-of = Die Kopie vom
records-pick-day = Tag wählen
records-copy-on = { $day } ({ $records } Einträge)
records-put-back = Diese Kopie zurückholen
records-is-back = Die Kopie vom { $day } ist zurückgeholt.
records-unreadable-copy = Diese Kopie lässt sich nicht lesen. Bitte wählen Sie einen anderen Tag.
records-bring-file = Eine Datei mit allem
records-file-holds = Die Datei hat { $records } Einträge von { $of }. Mit ihr an deren Stelle:
records-agree = Dies an die Stelle von allem hier setzen
records-replace = Alles ersetzen
records-replaced = Alles kommt jetzt aus der Datei.
records-the-same = Sie enthält genau das, was jetzt hier steht.
records-unchanged = { $records } bleiben, wie sie sind. Es lässt sich danach zurücknehmen.

records-history = Was geändert wurde
records-last = Zuletzt: { $said }
records-open-history = Änderungen ansehen
records-about-history = die Änderungen
records-changed = Geändert: { $what }.
records-and-more = { $count } weitere
records-also-more = Und { $count } weitere.
records-take-back = Zurücknehmen: { $said }
records-taken-back-already = Es wurde seitdem wieder geändert, oder ist schon zurückgenommen.
records-older = Ältere zeigen
records-new = neu
records-removed = entfernt
records-cannot-read = geändert; diese Version von tripplan kann das Frühere nicht lesen
records-from-to = { $field }: von { $before } zu { $after }
records-order = nur die Reihenfolge wurde geändert

records-safe = Wer das lesen kann
records-safe-what = Wer diesen Computer unter Ihrem Namen benutzt.
records-open-safe = Endgültig löschen
records-about-safe = Löschen
records-not-encrypted =
    Ihre Aufzeichnungen sind nicht verschlüsselt. Schalten Sie die Verschlüsselung Ihres Systems ein, und sperren
    Sie den Bildschirm. Kopien anderswo sind nur so sicher wie der Ort.
records-nothing-to-delete = Nichts wurde entfernt oder geändert, also gibt es nichts endgültig zu löschen.
records-deleting-takes = Was Sie entfernt haben, lässt sich zurücknehmen, ist also noch da. Um ein Kind zu löschen,
    entfernen Sie es zuerst unter Haushalt. Endgültig gelöscht wird:
records-earlier-states = frühere Stände der Einträge ({ $count }), mit der Liste der Änderungen
records-was-removed = was entfernt wurde: { $what }
records-everything-of = alles von { $people }, nicht mehr im Haushalt
records-name-in = der Name in { $what }
records-copies-before = frühere Kopien und Dateien ({ $count }); was bleibt, wird neu kopiert
records-name-stands = { $people }: der Name steht in { $what }. Ändern Sie das selbst.
records-elsewhere = Ausgegebene Dateien, Blätter und Kalendereinträge anderswo bleiben; löschen Sie diese selbst.
records-agree-delete = Das alles endgültig löschen; es lässt sich nicht zurücknehmen
records-delete = Jetzt endgültig löschen
records-deleted = Endgültig gelöscht. Was übrig ist, wurde neu kopiert.
records-outing = { $place } am { $day }
