doors-ideas = Ideen
doors-choose = Wählen
doors-plan = Planen
doors-today = Heute
doors-afterwards = Danach
doors-cupboard = Schrank

doors-page-start = Was kommt als Nächstes?
doors-page-places = Ideen
doors-page-compare = Vergleich
doors-page-choose-day = Tag wählen
doors-page-study-units = Lernen
doors-page-day-plan = Tagesplan
doors-page-calendar = Kalender
doors-page-on-the-day = Heute
doors-page-logbook = Danach
doors-page-household = Haushalt
doors-page-passes = Jahreskarten
doors-page-together = Mit anderen
doors-page-records = Unterlagen
doors-page-phones = Handys
doors-page-guide = Anleitung

doors-household-what = Wer wir sind, Mittagsschlaf, Zuhause, Auto, Geld
doors-calendars = Schul- und Familienkalender
doors-calendars-what = Schulfreie Tage und was wir sonst vorhaben
doors-passes-what = Lohnt sich eine Jahreskarte?
doors-together-what = Mit einer anderen Familie unterwegs, und wer wem was gibt
doors-records-what = Was geändert wurde, Sicherungen, alles in einer Datei
doors-phones-what = Diese Seiten auf einem Handy zeigen
doors-guide-what = Wie das alles geht

doors-closed = Diese Seite ist gesperrt. Starten Sie tripplan am Computer, wie es in README steht; koppeln Sie ein Handy neu.
doors-network-open = Alle in Ihrem Netz können hier alles lesen und ändern.
doors-network-how = Beenden Sie tripplan, starten Sie es ohne Adresse und lassen Sie Ihr Handy auf der Seite Handys herein.

doors-demo = Beispiel:
doors-demo-invented = eine erfundene Familie.
doors-leave-demo = Meine eigene Familie
doors-load-demo = Beispiel ansehen
doors-own-invented = Das sind Ihre eigenen Unterlagen, aber die Familie darin ist erfunden.
doors-put-back = Sicherung vom { $day } zurückholen
doors-were-put-back = Ihre Unterlagen sind jetzt die vom { $day }.
doors-no-copy = Von den heutigen Unterlagen gibt es keine Sicherung: { $trouble }.

doors-no-household = Hier gibt es noch keinen Haushalt. Tragen Sie zuerst Ihre Familie ein, danach die Orte.
doors-enter-household = Haushalt eintragen
doors-no-places = Hier gibt es noch keine Orte.
doors-add-place = Einen Ort eintragen
