# Ideen: wohin man fahren kann, und alles, was über einen Ort bekannt ist.

places-about = Über { $place }
places-all = Alle Ideen
places-prices = Preise
places-visit = Öffnungszeiten und Besuch
places-weather = Das Wetter im Jahr
places-drive = Die Fahrt, einfach
places-none-yet = Hier ist noch kein Ort. Oben lässt sich der erste hinzufügen; der Name genügt.
places-no-such-place = Kein Ort heißt „{ $name }“; hier sind alle.
