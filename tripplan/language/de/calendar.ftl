# Kalender: wann schulfrei ist, und wann die Familie etwas vorhat.

calendar-school-file = Kalender des Schulbezirks (.ics) oder eine Tabelle (.csv)
calendar-school-table = Eine Tabelle hat die Spalten first day, last day, name und kind; Tage wie 2026-12-24. Der letzte Tag
  darf fehlen, ebenso die Art: no school, short day, first day of school, last day of school, other.
calendar-days-off = { $days ->
    [one] { $days } schulfreier Tag oder Ferien, angekreuzt
   *[other] { $days } schulfreie Tage und Ferien, angekreuzt
  }
calendar-short-days = { $days ->
    [one] { $days } kurzer Tag: Unterricht endet früher oder beginnt später
   *[other] { $days } kurze Tage: Unterricht endet früher oder beginnt später
  }
calendar-family-file = Eine Kalenderdatei (.ics); behalten wird nur, wann Sie belegt sind
calendar-busy-times = { $times ->
    [0] Sie nennt keine Zeit, in der Sie belegt sind.
    [one] { $times } Termin, der Zeit braucht.
   *[other] { $times } Termine, die Zeit brauchen.
  }
calendar-entries = { $entries ->
    [one] Was aus dem { $entries } Eintrag wurde
   *[other] Was aus den { $entries } Einträgen wurde
  }
calendar-window = Gelesen wurden die Tage vom { $first } bis { $last }.
