cautions-bitter-cold = bitterkalt
cautions-very-cold = sehr kalt
cautions-cold = kalt
cautions-hot = heiß
cautions-very-hot = sehr heiß
cautions-dangerously-hot = gefährlich heiß

cautions-in-cold = { $forecast ->
    [yes] Nach der Vorhersage
   *[no] Gewöhnlich
  } fühlt es sich dort { $feels } an: trockene Schichten, Mütze und Fäustlinge, und jede halbe
  Stunde aufwärmen. Taube, weiße oder harte Haut, oder ein Kind, das schläfrig ist oder heftig zittert: hineingehen und
  ärztliche Hilfe holen. Örtliche Warnungen und Ihre Ärztin oder Ihr Arzt haben das letzte Wort.
cautions-in-bitter-cold = { $forecast ->
    [yes] Nach der Vorhersage
   *[no] Gewöhnlich
  } fühlt es sich dort { $feels } an: trockene Schichten, Mütze und Fäustlinge, und alle
  10 bis 15 Minuten aufwärmen, oder drinnen bleiben. Taube, weiße oder harte Haut, oder ein Kind, das schläfrig ist oder
  heftig zittert: hineingehen und ärztliche Hilfe holen. Örtliche Warnungen und Ihre Ärztin oder Ihr Arzt haben das
  letzte Wort.
cautions-in-heat = { $forecast ->
    [yes] Nach der Vorhersage
   *[no] Gewöhnlich
  } fühlt es sich dort { $feels } an: Schatten, Pausen und alle 15 bis 20 Minuten etwas zu
  trinken. Ein Kind, dem schwindlig ist, das erbricht, heiß und verwirrt oder schlaff ist: den Notruf wählen und
  sofort kühlen. Örtliche Warnungen und Ihre Ärztin oder Ihr Arzt haben das letzte Wort.
cautions-baby-in-sun = Babys unter sechs Monaten: Schatten und leichte Kleidung statt Sonne, Milch statt Wasser; ein
  abgedeckter Kinderwagen wird heiß. Fragen Sie in der Kinderarztpraxis nach Sonnencreme und Getränken.
cautions-thunder = Bei Donner ins Haus oder ins Auto gehen und nach dem letzten Donner 30 Minuten warten; vor der Abfahrt
  die örtlichen Warnungen ansehen.
cautions-icy-roads = Ein Teil der Fahrt liegt im Dunkeln, und { $forecast ->
    [yes] für die Nacht ist Frost vorhergesagt
   *[no] in solchen Nächten friert es meist
  }: Die Straßen können glatt
  sein. Sehen Sie vor der Abfahrt nach dem Straßenzustand und fahren Sie bei einer Warnung an einem anderen Tag.

cautions-car-seat = Jedes Kind fährt in dem Sitz, der zu Alter, Größe und Gewicht passt, Babys rückwärtsgerichtet. Welcher
  das ist, bestimmen das Recht des Landes und die Anleitung des Sitzes.
cautions-tired-driver = Ausgeruht fahren: mindestens 15 Minuten Pause nach je zwei Stunden, und keine lange Fahrt zwischen
  Mitternacht und 6 Uhr. Wer müde wird, hält am nächsten sicheren Ort. Das Recht des Landes geht vor.
cautions-parked-car = Lassen Sie nie ein Kind allein im geparkten Auto, keine Minute, und sehen Sie nach, ehe Sie es
  abschließen: An einem warmen Tag kann es sich in
  10 Minuten um 11 °C und in 30 Minuten um 19 °C aufheizen, auch bei einem Spalt offener Fenster. Für ein Schläfchen im
  geparkten Auto bleibt ein Erwachsener darin und kühlt. Sieht ein Kind nach Hitze krank aus, wählen Sie sofort
  den Notruf.
cautions-baby-in-seat = Nehmen Sie ein Baby bei jedem Halt aus dem Sitz, mindestens alle zwei Stunden; legen Sie ein
  schlafendes Baby am Ziel auf eine feste, flache Unterlage. Ihre Kinderärztin oder Ihr Kinderarzt hat das letzte Wort.
cautions-newborn-in-seat = In den ersten vier Wochen raten manche zu höchstens etwa 30 Minuten am Stück im Kindersitz.
  Fragen Sie vor einer längeren Fahrt Hebamme oder Ärztin oder Arzt.

cautions-of-place = { $text }
cautions-needs = Fragen Sie den Ort, was er bei dem tun kann, was für { $names } notiert ist.

cautions-asleep-in-car = Lassen Sie nie ein Kind allein im geparkten Auto, auch nicht schlafend und keine Minute: Es heizt
  sich schnell auf. Das Recht des Landes geht vor.
cautions-ill-child = Fragen Sie eine Ärztin oder einen Arzt, wenn Sie bei einem kranken Kind unsicher sind; rufen Sie im
  Notfall Hilfe.
cautions-while-driving = Lassen Sie das jemanden ansehen, der nicht fährt, oder halten Sie zuerst an; niemand soll sich
  beeilen, um aufzuholen.

cautions-seat-moves-along = Jedes Kind fährt in dem Sitz, der zu Alter, Größe und Gewicht passt, auch im Auto einer anderen
  Familie: Der Kindersitz zieht mit um. Welcher das ist, bestimmen das Recht des Landes und die Anleitung des Sitzes.
