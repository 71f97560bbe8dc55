# What can hurt somebody, what to do about it, and who has the last word.

# Weather. $feels: one of the next six. $forecast: yes where the weather is forecast, and not the usual.
cautions-bitter-cold = bitter cold
cautions-very-cold = very cold
cautions-cold = cold
cautions-hot = hot
cautions-very-hot = very hot
cautions-dangerously-hot = dangerously hot

cautions-in-cold = It { $forecast ->
    [yes] is forecast to feel
   *[no] usually feels
  } { $feels } there: dry layers, hats and mittens, and warm up every half hour. Numb,
  white or hard skin, or a child that is drowsy or shivers hard: go in and get medical help. Local warnings and your
  doctor have the last word.
cautions-in-bitter-cold = It { $forecast ->
    [yes] is forecast to feel
   *[no] usually feels
  } { $feels } there: dry layers, hats and mittens, and warm up every 10 to 15
  minutes, or stay indoors. Numb, white or hard skin, or a child that is drowsy or shivers hard: go in and get medical
  help. Local warnings and your doctor have the last word.
cautions-in-heat = It { $forecast ->
    [yes] is forecast to feel
   *[no] usually feels
  } { $feels } there: shade, rests, and something to drink every 15 to 20 minutes. A
  child that is dizzy, vomits, is hot and confused or limp: call the emergency number and cool it at once. Local warnings and
  your doctor have the last word.
cautions-baby-in-sun = Babies under six months: shade and light clothes instead of sun, milk instead of water; a
  covered { -stroller } gets hot. Ask your doctor about { -sunscreen } and drinks.
cautions-thunder = When thunder roars, go indoors or into the car, and wait 30 minutes after the last thunder; watch
  for local warnings before you leave.
cautions-icy-roads = Part of the drive is in the dark and it { $forecast ->
    [yes] is forecast to freeze
   *[no] usually freezes
  } that night: roads may be icy. Look at the
  road report before you leave, and drive another day if it warns.

# The drive.
cautions-car-seat = Every child rides in the seat that fits age, height and weight, babies facing backward. The law
  where you drive and the seat's manual decide which.
cautions-tired-driver = Drive rested: at least 15 minutes' break after every two hours, and no long drive between
  midnight and 6 in the morning. Whoever gets sleepy stops at the next safe place. The law where you drive comes first.
cautions-parked-car = Never leave a child alone in a parked car, not for a minute, and look before you
  lock it: on a warm day it can heat up by 19 °F in 10 minutes and 34 °F in 30, windows cracked or not. A nap in the parked car needs an adult inside and
  cooling. If a child looks unwell from heat, call the emergency number at once.
cautions-baby-in-seat = Take a baby out of the seat at every stop, at least every two hours; on arrival move a sleeping
  baby to a firm, flat surface. Your child's doctor has the last word.
cautions-newborn-in-seat = In the first four weeks some advise no more than about 30 minutes in a car seat at a time.
  Ask your doctor before a longer drive.

# What the place card or the family's own notes say.
cautions-of-place = { $text }
cautions-needs = Ask the place what it can do about the needs noted for { $names }.

# A day that has gone wrong.
cautions-asleep-in-car = Never leave a child alone in a parked car, not even asleep and not for a minute: it heats up
  fast. Follow local law.
cautions-ill-child = Ask a doctor if you are in doubt about a child that is ill; in an emergency call for help.
cautions-while-driving = Let somebody who is not driving look at this, or stop first; nobody should hurry to catch up.

# Riding in another family's car.
cautions-seat-moves-along = Every child rides in the seat that fits age, height and weight, also in another family's
  car: move the child seat along. The law where you drive and the seat's manual decide which.
