# An outing as a card, and what its bar of money and its chart are made of.

cards-load-up = load up { $at }, home { $home }
# $ends: "$84 to $93".
cards-usually = usually { $ends }
cards-usually-plus = { $ends }, plus { $unknown }
cards-drive = { $minutes } drive
cards-money-goes-to = What the money goes to: { $parts }
cards-likely-cost = likely cost [{ $currency }], with its range
