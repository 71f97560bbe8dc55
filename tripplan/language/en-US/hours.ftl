# Whether a place can be visited on a day, and how that is known; parts of sentences, without a full stop.

hours-open = open by the hours on the place card
hours-closed = closed that day
hours-closed-holiday = closed that day, a { -holiday }
hours-closed-season = closed for the season; opens { $opens }
hours-closed-weekday = closed on { $day }s
hours-closed-time-of-year = closed at that time of the year
hours-ask = the card leaves open whether one may come; ask the place
hours-last-entry-too-early = the last entry would be before opening
hours-no-entry-time = no entry time lies within that day's hours
hours-not-asked = not asked for yet

# Hours that nobody has read at their source. $reason: one of the above.
hours-guess = { $reason }; the hours are a guess, nobody has read them at their source

# Hours that hang on a school break of which nobody knows. $doubt: the next one.
hours-unknown-break = no school calendar on record says whether that day is in a break; one of the schools around
  { $town } would settle it
hours-closed-in-doubt = closed as far as anybody knows: { $doubt }
hours-sure-ones = { $reason }; the hours that are sure, as { $doubt }
hours-unless-break = { $reason }, unless it is in a break: { $doubt }
