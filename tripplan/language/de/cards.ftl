cards-load-up = { $at } einladen, { $home } zu Hause
cards-usually = meist { $ends }
cards-usually-plus = { $ends }, dazu { $unknown }
cards-drive = { $minutes } Fahrt
cards-money-goes-to = Wohin das Geld geht: { $parts }
cards-likely-cost = wahrscheinliche Kosten [{ $currency }] mit Spanne
