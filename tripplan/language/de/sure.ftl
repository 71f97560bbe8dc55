sure-nothing-else = Es gibt nichts, womit { $place } zu vergleichen wäre.
sure-too-close = Zu knapp, um es zu sagen. Aussicht, am günstigsten zu sein: { $chances }.
sure-chance = { $place } { $odds }
sure-cheapest = { $place } ist wahrscheinlich am günstigsten: { $odds }.
sure-unknown = { $what } ({ $place })
sure-left-out = Nicht bekannt und nicht mitgerechnet: { $unknown }.
