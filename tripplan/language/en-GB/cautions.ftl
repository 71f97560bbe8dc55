cautions-car-seat = Every child rides in the seat that fits age, height and weight, babies facing backwards. The law
  where you drive and the seat's manual decide which.
cautions-parked-car = Never leave a child alone in a parked car, not for a minute, and look before you
  lock it: on a warm day it can heat up by 11 °C in 10 minutes and 19 °C in 30, windows ajar or not. A nap in the parked car needs an adult inside and
  cooling. If a child looks unwell from heat, call the emergency number at once.
cautions-baby-in-seat = Take a baby out of the seat at every stop, at least every two hours; on arrival move a sleeping
  baby to a firm, flat surface. Your child's doctor or health visitor has the last word.
cautions-newborn-in-seat = In the first four weeks some advise no more than about 30 minutes in a car seat at a time.
  Ask your midwife or doctor before a longer drive.
