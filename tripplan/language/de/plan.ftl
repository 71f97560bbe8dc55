plan-limit-leaving = nicht vor { $earliest } losfahren
plan-limit-home = bis { $latest } zu Hause sein
plan-limit-stay = mindestens { $shortest } bleiben
plan-limit-taken = anderes an dem Tag
plan-limit-taken-by = anderes an dem Tag ({ $names })
plan-limit-driving = höchstens { $most } am Tag fahren
plan-limit-entry = Zeiten, zu denen alle mit einer Karte hineinkommen

plan-limits-together = das geht nicht zusammen: { $limits }
plan-nobody-let-in = mit { $drive } Anfahrt käme an dem Tag niemand mehr hinein
plan-too-long = { $over } zu lang: Fahrt und Öffnungszeiten lassen nicht zu: { $stay } und { $home }
plan-too-late = { $over } zu spät: Fahrt und Öffnungszeiten lassen nicht zu: { $leaving }, { $stay } und { $home }
plan-stay-too-long = höchstens { $left } blieben übrig: { $stay } geht nicht
plan-drives-too-long = hin und zurück sind es { $least }: { $driving } geht nicht
plan-no-room = { $taken } lässt dafür keine Zeit
plan-no-offer-then = zu den Zeiten, die bleiben, kommen nicht alle mit einer Karte hinein

plan-leaves-before = { $leaves } ist zu früh: Vor { $earliest } sind nicht alle fertig.
plan-drives-more = Hin und zurück sind es { $drives } Fahrt; mehr als { $most } am Tag wollen Sie nicht fahren.
plan-home-after = Sie wären um { $home } zu Hause, { $over } nach { $latest }, wann Sie zu Hause sein wollen.
plan-taken = { $span } ist schon etwas anderes.
plan-taken-by = { $span } ist schon etwas anderes: { $name }.
plan-span = { $start } bis { $end }
plan-closed-then = Um { $leaves } gehen passt nicht: Geöffnet ist { $spans }.
plan-after-last-entry = Sie wären um { $arrives } dort, nach dem letzten Einlass um { $last }.
plan-after-last-timed-entry = Sie wären um { $arrives } dort, nach der letzten Einlasszeit um { $last }.
plan-nobody-let-in-then = In der Zeit, in der dann geöffnet ist, wird niemand eingelassen.
plan-stay-too-short = Bei Einlass um { $enters } blieben nur { $left }; ein Besuch dauert mindestens { $shortest }.
plan-no-offer-between = Von { $enters } bis { $leaves } kommen nicht alle mit einer Karte der Preistafel hinein.
plan-weather-not-allowed = Von { $enters } bis { $leaves } wäre es draußen kälter oder heißer, als Sie es zulassen.

plan-change-leaving = Ab { $then } statt { $now } losfahren
plan-change-up = Alle um { $then } statt { $now } wach
plan-change-driving = Bis zu { $most } am Tag fahren
plan-change-home = Bis { $then } statt { $now } zu Hause sein
plan-change-entry = Einlass { $minutes } Minuten nach dem letzten
plan-change-lunch = Mittagessen um { $then } statt { $now }
plan-change-nap-end = Schläfchen { $minutes } Minuten näher an der Schlafenszeit enden lassen
plan-change-nap = { $name }: Mittagsschlaf bis zu { $minutes } Minuten weiter weg von der gewohnten Zeit
plan-change-makes-possible = { $change }: Damit ginge der Tag.
plan-change-helps = { $change }: Das hilft am meisten, { $saves } weniger, den Aufwand mitgerechnet.
plan-nothing-helps = 15 Minuten mehr Spielraum helfen bei keiner der Grenzen.

plan-lost-nap = verlorener Mittagsschlaf
plan-early-start = früh losfahren
plan-driving = Fahrt
plan-waiting = warten auf den Einlass
plan-impatience = längere Fahrt am Stück, als die Kinder mögen
plan-short-stay = verkürzter Besuch
plan-long-stay = länger bleiben als angenehm
plan-among-classes = Schulklassen um Sie herum
plan-outdoors = Zeit draußen bei diesem Wetter
plan-quiet-hour-unused = nicht genutzte ruhige Stunde
plan-lunch = Mittagessen
plan-early-lunch = früheres Mittagessen als sonst
plan-late-lunch = späteres Mittagessen als sonst
plan-late-for-timed-entry = zu spät zur Einlasszeit kommen
plan-late-for-last-entry = zu spät zum letzten Einlass kommen
plan-missed-show = { $show } verpassen
plan-home-late = später zu Hause als gewünscht
plan-home-after-bedtime = erst nach der Schlafenszeit zu Hause

plan-minutes-of = { $minutes } { $what }
plan-average-of = im Mittel { NUMBER($minutes, minimumFractionDigits: 1, maximumFractionDigits: 1) } min { $what }
plan-chance-of = die Gefahr: { $what } ({ NUMBER($chance, style: "percent", minimumFractionDigits: 1, maximumFractionDigits: 1) })

plan-part = { $what } { $felt }
plan-smaller-parts = Kleineres { $felt }
plan-money-part = { $spent } in Geld
plan-best-weighs-nothing = Der beste Plan ist ohne Aufwand: aller Schlaf bleibt, keine Fahrt, ein angenehmer Besuch.
plan-best-weighs-least = { $weighs } ist nach dem, was Ihnen wichtig ist, am wenigsten von allen Zeiten: { $parts }.
plan-best-starts-latest = { $weighs } ist nach dem, was Ihnen wichtig ist, fast am wenigsten, bei spätestem Aufbruch: { $parts }.

plan-difference-nap = { $by } { $more ->
    [yes] mehr
   *[no] weniger
  } Mittagsschlaf
plan-difference-awake = { $by } { $more ->
    [yes] mehr
   *[no] weniger
  } wach dort
plan-difference-stay = { $by } { $more ->
    [yes] länger
   *[no] kürzer
  } dort
plan-difference-driving = { $by } { $more ->
    [yes] mehr
   *[no] weniger
  } Fahrt
plan-difference-money = { $by } { $more ->
    [yes] mehr
   *[no] weniger
  } Geld
plan-no-difference = ebenso viel Schlaf und ebenso lange dort
plan-is-best = Das ist der beste Plan.
plan-weighs-more = { $by } mehr als der beste Plan, den Aufwand mitgerechnet: { $changes }.
plan-weighs-less = { $by } weniger als der beste Plan, den Aufwand mitgerechnet: { $changes }.
plan-weighs-same = Ebenso gut wie der beste Plan: { $changes }.

plan-step-load-up = einsteigen für die { $there ->
    [yes] Hinfahrt
   *[no] Heimfahrt
  }
plan-step-drive = { $there ->
    [yes] Hinfahrt
   *[no] Heimfahrt
  }
plan-step-rest = Pause auf der { $there ->
    [yes] Hinfahrt
   *[no] Heimfahrt
  }
plan-step-lunch-on-the-way = Mittagessen bei einer Pause auf der { $there ->
    [yes] Hinfahrt
   *[no] Heimfahrt
  }
plan-step-unload = aussteigen
plan-step-wait = warten auf den Einlass
plan-step-visit = Besuch
plan-step-lunch = Mittagessen
plan-step-lunch-outside = Mittagessen im Auto oder davor
plan-step-show = { $show }

plan-chance-of-timed-entry = Aussicht auf die Einlasszeit um { $at }: { $odds }.
plan-chance-of-last-entry = Aussicht auf den letzten Einlass um { $at }: { $odds }.
plan-sure-by = Mit Aufbruch bis { $leaves } sind es etwa 9 von 10.
plan-never-sure = Mit keinem Aufbruch an dem Tag sind es 9 von 10.
plan-chance-of-home = Aussicht, bis { $latest } zu Hause zu sein: { $odds }.
plan-chance-of-bed = Aussicht, vor der ersten Schlafenszeit um { $bed } zu Hause zu sein: { $odds }.
plan-usually-home = So spät dran wie sonst sind Sie an der Hälfte der Tage bis { $half } zu Hause, an neun von zehn bis { $most }.
