recovery-go-on = Weiter zum Ziel: { $place }
recovery-stay-at = Dort bleiben: { $place }
recovery-wake = { $name } wecken und gleich losfahren: { $place }
recovery-sleep-on-and-stay = { $name } weiterschlafen lassen und dort bleiben: { $place }
recovery-sleep-on-then = { $name } weiterschlafen lassen, dann: { $place }
recovery-sleep-on-in-car = { $name } zu Hause im Auto weiterschlafen lassen
recovery-drive-home = Weiter nach Hause
recovery-stay-home = Zu Hause bleiben
recovery-go-home = Jetzt nach Hause fahren
recovery-turn-back = Umkehren
recovery-elsewhere = Woandershin fahren
recovery-instead = Stattdessen: { $place }, { $away } entfernt
recovery-with = { $what } (mit { $who })

recovery-left = Losgefahren { $at } Uhr
recovery-times = { $leave }, dort von { $enter } bis { $leave_place } Uhr ({ $stay })
recovery-home-at = Zu Hause { $at } Uhr
recovery-costs-as-planned = Kostet so viel wie geplant.
recovery-costs = Kostet { $by } { $more ->
    [yes] mehr
   *[no] weniger
  } als geplant.
recovery-tickets-back = { $back } für Karten kommen bei rechtzeitiger Absage zurück.
recovery-tickets-lost = { $lost } für schon bezahlte Karten sind verloren.

recovery-open-air = { $whole ->
    [yes] im Freien
   *[no] teils im Freien
  }
recovery-stays-with = { $who } bleibt zu Hause; krank: { $name }
recovery-home-until = Alle bleiben zu Hause, bis { $name } aufwacht, etwa { $at } Uhr
recovery-in-car-until = Alle bleiben im geparkten Auto, bis { $name } aufwacht, etwa { $at } Uhr; ein Erwachsener ist dabei
recovery-drive = Die Fahrt: { $minutes } ({ $known })
recovery-drive-about = Die Fahrt: { $minutes } ({ $low } bis { $high }; { $known })
recovery-later = { $late } später als geplant
recovery-after = { $late } nach { $what }
recovery-home-by = { $at } Uhr, wenn Sie zu Hause sein wollen
recovery-bedtime = der ersten Schlafenszeit um { $at } Uhr
recovery-slept-already = { $name } hat nach dem Plan schon geschlafen
recovery-tired-at-bedtime = { $name } ist abends müde, wenn ab { $awake } Uhr wach; ungestört dauert der Schlaf bis etwa { $wakes } Uhr

recovery-no-adult-left = niemand ab 18 könnte mitfahren, während ein Erwachsener zu Hause bleibt; krank: { $name }
recovery-nobody-takes-one-home = { $name } ist krank, und niemand kann nur ein Kind nach Hause bringen
recovery-all-open-air = alle anderen Orte sind im Freien
recovery-not-worth-it = lohnt sich nicht mehr
recovery-place-why = { $place }: { $why }

recovery-the-same = gleich viel
recovery-more-or-less = { $by } { $more ->
    [yes] mehr
   *[no] weniger
  }
recovery-rain = { $place }, insgesamt { $total }, { $compared }
recovery-rain-fits = { $place }, insgesamt { $total }, { $compared }; passt zu: { $unit }
