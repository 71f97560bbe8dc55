"""A place card in plain sentences."""

from collections.abc import Iterator, Sequence
from datetime import date, timedelta
from itertools import groupby

from tripplan.documents.calendars.calendars import SchoolCalendar
from tripplan.documents.calendars.local_days import LocalDay
from tripplan.documents.places.offer_sentences import (
    accompaniment_sentence,
    add_on_sentence,
    ages_in_words,
    fee_sentence,
    parking_sentence,
    sentence,
    tax_sentence,
    voucher_sentence,
)
from tripplan.documents.places.place import Place
from tripplan.language import wording
from tripplan.planning.opening.hours import DayHours, Openness, hours_on, open_days
from tripplan.screens.places.for_us import LOOK_AHEAD, calendar_days

_DAY = timedelta(days=1)


def board_sentences(place: Place) -> Iterator[str]:
    """Everything that costs money, one sentence each."""
    currency = place.currency
    yield from (sentence(offer, currency) for offer in place.offers)
    yield from (add_on_sentence(add_on, currency) for add_on in place.add_ons)
    yield from (fee_sentence(fee, currency) for fee in place.fees)
    if place.sales_tax is not None:
        yield tax_sentence(place.sales_tax)
    yield from (voucher_sentence(voucher, currency) for voucher in place.vouchers)
    yield from (accompaniment_sentence(rule) for rule in place.must_be_accompanied)
    yield parking_sentence(place.parking, currency)


def coming_days_sentences(
    place: Place, schools: Sequence[SchoolCalendar], today: date, local_days: Sequence[LocalDay] = ()
) -> Iterator[str]:
    """When it is open on the coming seven days by the card, and when again if it is open on none of them.

    Args:
        place: the card.
        schools: for hours that differ in school breaks.
        today: the first of the seven days.
        local_days: what the parent listed; on some of them the place may keep the hours of a public holiday.
    """
    last = today + LOOK_AHEAD
    holidays, out = calendar_days(place, schools, today, last, local_days)
    week = [today + _DAY * n for n in range(7)]
    said = [(_day_hours(hours_on(place, day, holidays, out)), day) for day in week]
    for hours, group in groupby(said, key=lambda pair: pair[0]):
        days = [day for _, day in group]
        yield f"{wording.days(days[0], days[-1])}: {hours}."
    if not any(day in open_days(place, today, week[-1], holidays, out) for day in week):
        later = open_days(place, today, last, holidays, out)
        yield f"Open again on {wording.day(later[0])}." if later else "No open day in the coming year."


def hours_sentences(
    place: Place, schools: Sequence[SchoolCalendar], today: date, local_days: Sequence[LocalDay] = ()
) -> Iterator[str]:
    """When it is open: the coming seven days by the card, then what the card says of all the year.

    Args:
        place: the card.
        schools: for hours that differ in school breaks.
        today: the first of the seven days.
        local_days: what the parent listed; on some of them the place may keep the hours of a public holiday.
    """
    yield from coming_days_sentences(place, schools, today, local_days)
    opening = place.opening
    yield f"As written on the card: {opening.hours}"
    if opening.last_entry_minutes_before_close:
        yield f"Last entry {wording.minutes(opening.last_entry_minutes_before_close)} before closing."
    if opening.entry_times:
        yield f"Entry only at {wording.listed([f'{entry:%H:%M}' for entry in opening.entry_times])}."
    if place.visit.quiet_hours:
        yield f"Quiet hours: {place.visit.quiet_hours}"
    if opening.book_days_ahead:
        yield f"To be booked {wording.counted(opening.book_days_ahead, 'day')} ahead."
    if not opening.checked_on_site:
        yield "These hours are a guess; nobody has read them at their source."


def _day_hours(hours: DayHours) -> str:
    if hours.openness is not Openness.OPEN:
        return hours.reason.text
    return wording.listed([f"{wording.clock(s.opens)} to {wording.clock(s.closes)}" for s in hours.spans])


def visit_sentences(place: Place) -> Iterator[str]:
    """What a visit is like."""
    visit = place.visit
    if visit.topics:
        yield f"To study: {wording.listed(visit.topics)}."
    yield (
        f"A stay of {wording.minutes(visit.comfortable_minutes)} feels complete; less than "
        f"{wording.minutes(visit.shortest_minutes)} is not worth the drive."
    )
    for stay in visit.stays:
        yield (
            f"For people {ages_in_words(stay.ages)} {wording.minutes(stay.comfortable_minutes)} is "
            f"comfortable, less than {wording.minutes(stay.shortest_minutes)} not worth the drive."
        )
    for show in visit.shows:
        starts = wording.listed([f"{start:%H:%M}" for start in show.starts])
        days = f" ({show.days})" if show.days else ""
        told = "" if show.worth_it else "; nothing is planned around it"
        yield f"{show.name} at {starts}{days}, {wording.minutes(show.minutes)}{told}."
    yield "A stroller can go all the way round." if visit.pushchairs else "Not all of it with a stroller."
    food = "You may eat what you bring" if visit.own_food else "Own food is not allowed"
    yield f"{food}; {'there is something to buy' if visit.food_sold else 'nothing is sold'}."
    if place.notes:
        yield place.notes


def crowd_sentences(place: Place, today: date) -> Iterator[str]:
    """What fills the place besides weekends and holidays.

    Args:
        place: the card.
        today: special days before it are over and left out.
    """
    visit = place.visit
    if visit.fullest_days == "all_alike":
        yield "All days are about alike there: weekends and school breaks make no difference."
    elif visit.who_comes == "families":
        yield "Mostly families with children come, so school breaks fill it like weekends."
    else:
        yield "People of all ages come, so school breaks fill it only a little."
    if visit.fullest_days in ("saturdays", "sundays"):
        yield f"{visit.fullest_days.title()} are the fullest days."
    if place.busiest_months:
        names = [wording.month(month) for month in sorted(place.busiest_months)]
        yield f"Busiest in {wording.listed(names)}."
    if place.opening.school_groups:
        yield f"In term, school classes usually come at these times: {place.opening.school_groups}"
    for special in sorted(place.special_days, key=lambda special: special.day):
        if special.day >= today:
            factor = f"{special.crowd_factor.normalize():f}"
            yield f"{wording.day(special.day)}: {special.name}, {factor} times the usual visitors."


def source_sentence(place: Place) -> str:
    """Where the prices were read, and when."""
    read = place.prices_read
    spread = read.give_or_take_percent
    moved = f" They may have moved by {spread.normalize():f} % since." if spread else ""
    return f"Prices read on {wording.day(read.on)}: {read.source}.{moved}"
