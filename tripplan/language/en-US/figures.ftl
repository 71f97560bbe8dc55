# How figures are said. Money, dates, clocks, percentages and lists follow CLDR without any words of ours.

# Between two figures: "8 to 10".
figures-span = { $low } to { $high }

# A chance: "about 1 in 7", and its ends.
figures-odds = about { $of } in { $in_all }
figures-almost-none = almost none
figures-almost-certain = almost certain
