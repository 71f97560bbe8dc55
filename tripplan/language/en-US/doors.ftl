# The doors, the titles of the pages behind them, and what stands above every page.

doors-ideas = Ideas
doors-choose = Choose
doors-plan = Plan
doors-today = Today
doors-afterwards = Afterwards
doors-cupboard = Cupboard

doors-page-start = What next?
doors-page-places = Ideas
doors-page-compare = Compare
doors-page-choose-day = Choose a day
doors-page-study-units = Studies
doors-page-day-plan = Day plan
doors-page-calendar = Calendar
doors-page-on-the-day = Today
doors-page-logbook = Afterwards
doors-page-household = Household
doors-page-passes = Passes
doors-page-together = With others
doors-page-records = Records
doors-page-phones = Phones
doors-page-guide = Guide

# What a page of the cupboard is for.
doors-household-what = Who we are, naps, home, car, money
doors-calendars = School and family calendars
doors-calendars-what = School days off, what else we do
doors-passes-what = Is a membership worth it?
doors-together-what = With another family, and settling between us
doors-records-what = What was changed, copies, everything in one file
doors-phones-what = Let a phone show these pages
doors-guide-what = How to use all this

doors-closed = This page is closed. On the computer, start tripplan as its README says; pair a phone anew.
doors-network-open = Everybody in your network can read and change everything here.
doors-network-how = Stop tripplan, start it without an address, and let your phone in on the page Phones.

doors-demo = Demo:
doors-demo-invented = an invented family.
doors-leave-demo = Use my own family
doors-load-demo = Show the demo
doors-own-invented = These are your own records, but the family in them is invented.
doors-put-back = Put back the copy of { $day }
doors-were-put-back = Your records are those of { $day }.
doors-no-copy = There is no copy of today's records: { $trouble }.

doors-no-household = There is no household here yet. Enter your family first; places come next.
doors-enter-household = Enter your household
doors-no-places = There are no places here yet.
doors-add-place = Add a place
