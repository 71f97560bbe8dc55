"""A calendar server of the family's own (CalDAV): the only room that speaks with it, when told to."""
