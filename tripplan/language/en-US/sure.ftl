# How sure it is which outing is the cheapest. $odds: "about 2 in 3".

sure-nothing-else = There is nothing to compare { $place } with.
sure-too-close = Too close to call. The chance to be the cheapest: { $chances }.
sure-chance = { $place } { $odds }
sure-cheapest = { $place } is likely the cheapest: { $odds }.
sure-unknown = { $what } at { $place }
sure-left-out = Not known and left out: { $unknown }.
