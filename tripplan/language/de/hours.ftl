hours-open = geöffnet nach den Zeiten auf der Karte des Ortes
hours-closed = an dem Tag geschlossen
hours-closed-holiday = an dem Tag geschlossen, einem Feiertag
hours-closed-season = zur Zeit geschlossen; öffnet { $opens }
hours-closed-weekday = { $day }s geschlossen
hours-closed-time-of-year = zu dieser Jahreszeit geschlossen
hours-ask = die Karte lässt offen, ob man kommen darf; fragen Sie den Ort
hours-last-entry-too-early = der letzte Einlass wäre vor der Öffnung
hours-no-entry-time = keine Einlasszeit liegt in den Öffnungszeiten dieses Tages
hours-not-asked = noch nicht gefragt

hours-guess = { $reason }; die Zeiten sind geschätzt, niemand hat sie an der Quelle gelesen

hours-unknown-break = kein Schulkalender sagt, ob an dem Tag Ferien sind; einer der Schulen um { $town } würde es klären
hours-closed-in-doubt = soweit bekannt geschlossen: { $doubt }
hours-sure-ones = { $reason }; die sicheren Zeiten, denn { $doubt }
hours-unless-break = { $reason }, außer es sind Ferien: { $doubt }
