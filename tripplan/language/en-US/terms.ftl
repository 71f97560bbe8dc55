# Words that several files share, and that another country may have a word of its own for.

-stroller = stroller
-diapers = diapers
-students = students
-school-break = school break
-school-breaks = school breaks
-holiday = public holiday
-sunscreen = sunscreen
-no-source = common practice, no source
-liter = liter
