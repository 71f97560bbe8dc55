"""A place of the map as an idea, or as a card where the map says enough for one."""

from collections.abc import Container
from datetime import date

from tripplan.documents.places.idea import LONGEST_IDEA, Idea, free_id
from tripplan.documents.places.place import Opening, Place, PricesRead, Visit
from tripplan.documents.where import Where
from tripplan.language import wording
from tripplan.nearby.listing import ATTRIBUTION, NearbyPlace

_LONGEST_CONTACT = 60


def source_of(today: date) -> str:
    """Where what is known of it comes from, with the credit that the map's license asks for."""
    return f"from the map, {wording.day(today)}; {ATTRIBUTION}"


def kept_place(
    nearby: NearbyPlace, where: Where, currency: str, taken: Container[str], today: date
) -> Idea | Place:
    """What goes on record of a place on the map.

    Args:
        nearby: the place.
        where: its location, with its time zone.
        currency: the household's.
        taken: the ids of places and ideas on record.
        today: when the map was looked at.

    Returns:
        A card where hours and price are tagged, in the household's currency; else an idea. Either says that
        it is from the map, and hours are marked as not read at their source.
    """
    name = (nearby.name or nearby.kind.capitalize())[:LONGEST_IDEA]
    place_id, source = free_id(name, taken), source_of(today)
    telephone, web = nearby.telephone[:_LONGEST_CONTACT], nearby.web[:500]
    board = nearby.board
    offers = tuple(one.offer for one in board.offers) if board else ()
    priced = (
        bool(offers) and not (board and board.doubts) and (nearby.free or _currency_fits(nearby, currency))
    )
    if nearby.opening_hours and priced:
        return Place(
            id=place_id,
            name=name,
            currency=currency,
            where=where,
            visit=Visit(topics=nearby.topics, indoors=nearby.indoors, pushchairs=nearby.wheelchair != "no"),
            opening=Opening(hours=nearby.opening_hours, checked_on_site=False),
            offers=offers,
            prices_read=PricesRead(on=today, source=source),
            web=web,
            telephone=telephone,
            notes=source,
        )
    told = [
        f"Said to cost {nearby.charge}." if nearby.charge else "",
        "Entry is free." if nearby.free else "",
    ]
    return Idea(
        id=place_id,
        name=name,
        noted_on=today,
        topics=nearby.topics,
        where=where,
        hours=nearby.opening_hours or None,
        money=None,
        web=web,
        telephone=telephone,
        notes=" ".join(filter(None, (f"{nearby.kind.capitalize()}.", *told))),
        source=source,
    )


def _currency_fits(nearby: NearbyPlace, currency: str) -> bool:
    return nearby.board is not None and nearby.board.currency == currency
