compare-maybe-help = Keep one of them on the Calendar page, and the others are cancelled.
