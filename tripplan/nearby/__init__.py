"""Places to go near home, out of an OpenStreetMap extract that the family brings; nothing is fetched."""
