# Ideas: the places one can go to, and all that is known of one.

places-about = About { $place }
places-all = All ideas
places-prices = Prices
places-visit = Hours and visit
places-weather = Weather through the year
places-drive = The drive, one way
places-none-yet = There are no places here yet. Add the first one above; its name is enough.
places-no-such-place = No place of yours is called “{ $name }”; here are all of them.
