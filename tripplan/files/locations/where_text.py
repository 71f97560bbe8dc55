"""What a parent answers to "Where is it?": town, ZIP code, address, coordinates or the address of a map."""

import re
from dataclasses import dataclass

from holidays.countries.united_states import US

from tripplan.documents.where import Point, Where
from tripplan.files.locations.gazetteer import NotFound, locate, parse_coordinates
from tripplan.files.locations.geo_address import is_geo_address
from tripplan.files.locations.map_links import is_link

_COUNTRY_AT_END = re.compile(r",\s*(?:USA?|U\.S\.A?\.|United States(?: of America)?)$", re.IGNORECASE)
_ZIP_AT_END = re.compile(r"(?:(?P<before>.*[^\W\d_].*?)[\s,]+)?(?P<postal_code>\d{5}(?:-\d{4})?)")
_CODE_AT_END = re.compile(r"(?P<before>.+?)(?:\s*,\s*(?P<any_case>[A-Za-z]{2})|\s+(?P<capitals>[A-Z]{2}))")
_WORD = re.compile(r"[^\W\d_]{2}")


@dataclass(frozen=True)
class WhereText:
    """The parts of a location that a text names; what it does not name is empty.

    Attributes:
        point: where it lies, if the text holds coordinates; it then names nothing else.
        address: street and number.
        town: the town.
        subdivision: ISO 3166-2 code of the state without the country, such as IL.
        postal_code: a US ZIP code.
    """

    point: Point | None = None
    address: str = ""
    town: str = ""
    subdivision: str = ""
    postal_code: str = ""


def read_where(text: str) -> WhereText:
    """Tell apart the ways to write down a location.

    Args:
        text: coordinates in any form that `parse_coordinates` reads; a ZIP code; or a town, with or without
            a street before it and a US state by code or name and a ZIP code after it.

    Returns:
        The parts; whether there is such a town is not looked up here.

    Raises:
        ValueError: it can only be meant as coordinates, a geo: address or a map's link, and cannot be read.
    """
    written = _COUNTRY_AT_END.sub("", " ".join(text.split()))
    if is_link(written) or is_geo_address(written):
        return WhereText(parse_coordinates(written))
    zip_at_end = _ZIP_AT_END.fullmatch(written)
    if zip_at_end is None and (not _WORD.search(written) or _reads_as_coordinates(written)):
        return WhereText(parse_coordinates(written))
    postal_code = ""
    if zip_at_end is not None:
        written, postal_code = zip_at_end["before"] or "", zip_at_end["postal_code"]
    before, subdivision = _without_state(written.strip(" ,"))
    street, _, town = before.rpartition(",")
    if not street[:1].isdigit():
        street, town = "", before
    return WhereText(None, street.strip(), town.strip(), subdivision, postal_code)


def locate_text(text: str, home: Where) -> Where | NotFound:
    """Look up, offline, where a text says that something lies; what it leaves out is as at home.

    Args:
        text: as `read_where` reads it; a street in it is not looked at.
        home: gives the country, and the state where the text names none.

    Returns:
        The place with its coordinates, or why it was not found.

    Raises:
        ValueError: as `read_where`, or the parts do not make a location.
    """
    told = read_where(text)
    return locate(
        Where(
            country=home.country,
            subdivision=told.subdivision or home.subdivision,
            town=told.town,
            postal_code=told.postal_code,
            latitude=told.point.latitude if told.point else None,
            longitude=told.point.longitude if told.point else None,
        )
    )


def _reads_as_coordinates(text: str) -> bool:
    try:
        parse_coordinates(text)
    except ValueError:
        return False
    return True


def _without_state(text: str) -> tuple[str, str]:
    """What stands before the state at the end of a text, and the state's code, if there is one."""
    before, _, last = text.rpartition(",")
    for name, code in US.subdivisions_aliases.items():
        if before and last.strip().casefold() == name.casefold():
            return before.strip(), code
    coded = _CODE_AT_END.fullmatch(text)
    if coded is None:
        return text, ""
    code = (coded["any_case"] or coded["capitals"]).upper()
    if coded["capitals"] and code not in US.subdivisions:
        return text, ""
    return coded["before"], code
