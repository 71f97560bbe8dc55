# The weather of one visit. $there, $felt: "14 to 25 °F". $wet, $snow: "about 1 in 4".

weather-not-known = not known there
weather-there = { $known ->
    [forecast] forecast
    [typed] by your word
   *[usual] usually
  } { $there }{ $differs ->
    [yes] , feels like { $felt }
   *[no] {""}
  }, rain or snow: { $wet }{ $may_snow ->
    [yes] , snow: { $snow }
   *[no] {""}
  }
weather-in-short = { $there }, wet: { $wet }

weather-note = Weather at that time: { $there }.
weather-weighs = { $weighs } is what being outdoors in it counts as{ $half ->
    [yes] , for half of the visit
   *[no] {""}
  }.
weather-usual-from = Usual figures from { $source }; the day itself may be far from them.
weather-forecast-from = { $source }, as of { $day }, { $at }{ $said ->
    [yes] : “{ $words }”
   *[no] {""}
  }.
weather-credit = { $credit }.
weather-counts-for-nothing = What the weather is usually like there is not known, so it is not counted; the place's card can
  hold its twelve months.

weather-just-now = just now
weather-old = { $age } old
weather-days-old = { $days } days old
