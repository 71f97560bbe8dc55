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
from tripplan.language.sentences import say
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
        yield say("places-days-hours", days=wording.days(days[0], days[-1]), hours=hours)
    if not any(day in open_days(place, today, week[-1], holidays, out) for day in week):
        later = open_days(place, today, last, holidays, out)
        yield say("places-open-again", day=later[0]) if later else say("places-never-open")


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
    yield say("places-as-written", hours=str(opening.hours))
    if opening.last_entry_minutes_before_close:
        yield say("places-last-entry", time=timedelta(minutes=opening.last_entry_minutes_before_close))
    if opening.entry_times:
        yield say("places-entry-only", times=tuple(opening.entry_times))
    if place.visit.quiet_hours:
        yield say("places-quiet-hours", hours=str(place.visit.quiet_hours))
    if opening.book_days_ahead:
        yield say("places-book-ahead", days=opening.book_days_ahead)
    if not opening.checked_on_site:
        yield say("places-hours-guessed")


def _day_hours(hours: DayHours) -> str:
    if hours.openness is not Openness.OPEN:
        return hours.reason.text
    return wording.listed(
        [wording.from_to(wording.clock(s.opens), wording.clock(s.closes)) for s in hours.spans]
    )


def visit_sentences(place: Place) -> Iterator[str]:
    """What a visit is like."""
    visit = place.visit
    if visit.topics:
        yield say("places-to-study", topics=tuple(visit.topics))
    yield say(
        "places-stay",
        stay=timedelta(minutes=visit.comfortable_minutes),
        least=timedelta(minutes=visit.shortest_minutes),
    )
    for stay in visit.stays:
        yield say(
            "places-stay-of-some",
            who=ages_in_words(stay.ages),
            stay=timedelta(minutes=stay.comfortable_minutes),
            least=timedelta(minutes=stay.shortest_minutes),
        )
    for show in visit.shows:
        lasts, starts = timedelta(minutes=show.minutes), tuple(show.starts)
        if show.days:
            days = str(show.days)
            yield say(
                "places-show-on", name=show.name, starts=starts, days=days, lasts=lasts, worth=show.worth_it
            )
        else:
            yield say("places-show", name=show.name, starts=starts, lasts=lasts, worth=show.worth_it)
    yield say("places-strollers" if visit.pushchairs else "places-no-strollers")
    yield say("places-food", own=visit.own_food, sold=visit.food_sold)
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
        yield say("places-all-alike")
    elif visit.who_comes == "families":
        yield say("places-families-come")
    else:
        yield say("places-all-ages-come")
    if visit.fullest_days in ("saturdays", "sundays"):
        yield say(f"places-fullest-{visit.fullest_days}")
    if place.busiest_months:
        names = tuple(wording.month(month) for month in sorted(place.busiest_months))
        yield say("places-busiest", months=names)
    if place.opening.school_groups:
        yield say("places-classes", times=str(place.opening.school_groups))
    for special in sorted(place.special_days, key=lambda special: special.day):
        if special.day >= today:
            factor = f"{special.crowd_factor.normalize():f}"
            yield say("places-special-day", day=special.day, name=special.name, factor=factor)


def source_sentence(place: Place) -> str:
    """Where the prices were read, and when."""
    read = place.prices_read
    spread = read.give_or_take_percent
    told = say("places-prices-read", day=read.on, source=read.source)
    return f"{told} {say('places-prices-moved', percent=f'{spread.normalize():f}')}" if spread else told
