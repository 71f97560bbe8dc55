# Calendar: when schools are out, and when the family is busy.

calendar-school-file = A district's calendar (.ics), or a table (.csv)
calendar-school-table = A table has the columns first day, last day, name and kind; dates read like 2026-12-24. The last
  day may be empty, and so may the kind: no school, short day, first day of school, last day of school, other.
calendar-days-off = { $days ->
    [one] { $days } day or break without school, ticked
   *[other] { $days } days and breaks without school, ticked
  }
calendar-short-days = { $days ->
    [one] { $days } short day: { -students } go home early or come late
   *[other] { $days } short days: { -students } go home early or come late
  }
calendar-family-file = A calendar file (.ics); only when you are busy is kept
calendar-busy-times = { $times ->
    [0] It names no time when you are busy.
    [one] { $times } time when you are busy.
   *[other] { $times } times when you are busy.
  }
calendar-entries = { $entries ->
    [one] What became of its { $entries } entry
   *[other] What became of its { $entries } entries
  }
calendar-window = Read were the days from { $first } to { $last }.
