# Fields of forms. Their English words stand in `documents/`, at each field, and go from there into the schema; a
# language's own stand in its `fields.ftl`: `fields-member-born`, with `-help` its help, `-called` its name in sentences,
# and with the value behind it the name of a choice.

fields-in-unit = { $label }, in { $unit }
fields-minutes = minutes
fields-hours = hours
fields-days = days
fields-months = months
fields-miles = miles
