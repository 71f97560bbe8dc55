"""What must fit together on a price board; one function per rule."""

from collections.abc import Callable, Iterator, Sequence
from decimal import Decimal
from itertools import combinations

from tripplan.documents.places.offer_sentences import ages_in_words
from tripplan.documents.places.offers import Bundle, Discount, Pass, Ticket, also_at
from tripplan.documents.places.place import Place
from tripplan.errors import Finding, Weight
from tripplan.language import wording
from tripplan.planning.admission.terms.registry import terms_of
from tripplan.planning.admission.terms.ticket import sold_singly
from tripplan.values.ages import MONTHS, AgeBand
from tripplan.values.clocks import minute_of_day
from tripplan.values.money import Money, decimals, minor_digits

Found = tuple[str, str, str, Weight]
"""Field, value, message, weight."""


def board_findings(place: Place, file: str) -> tuple[Finding, ...]:
    """Everything wrong or odd about a place's price board.

    Args:
        place: the card.
        file: the file or form it stands in, as the parent knows it.

    Returns:
        Every finding, rule by rule.
    """
    return tuple(
        Finding(file, field, value, message, weight)
        for rule in _RULES
        for field, value, message, weight in rule(place)
    )


def names_twice(place: Place) -> Iterator[Found]:
    """Every offer needs a name of its own, and so does every voucher."""
    for what, named in (("offers", place.offers), ("vouchers", place.vouchers)):
        seen: set[str] = set()
        for number, one in enumerate(named):
            if one.name in seen:
                message = "this name stands on the board twice; every one needs its own"
                yield f"{what}[{number}].name", one.name, message, Weight.FAULT
            seen.add(one.name)


def overlapping_bands(place: Place) -> Iterator[Found]:
    """Two tickets under the same conditions may not be for the same age."""
    tickets = [(n, offer) for n, offer in enumerate(place.offers) if isinstance(offer, Ticket)]
    for (_, first), (number, second) in combinations(tickets, 2):
        shared = next(((a, b) for a in first.bands for b in second.bands if a.overlaps(b)), None)
        if shared and _conditions(first) == _conditions(second):
            message = f"overlaps with '{first.name}' for ages {shared[0]} under the same conditions"
            yield f"offers[{number}].ages", str(shared[1]), message, Weight.FAULT


def _conditions(offer: Ticket) -> dict[str, object]:
    """Everything that decides who may have a ticket and when, but for age."""
    return offer.model_dump(include=_DECIDING)


_DECIDING = {
    *("valid", "first_day", "last_day", "book_days_ahead", "needs", "one_status_covers"),
    *("companions", "at_least", "at_most", "one_free_per", "leader_ages", "longest_stay_minutes", "leave_by"),
    *("good_on", "online_only", "includes", "also_at"),
}


def gaps_between_bands(place: Place) -> Iterator[Found]:
    """Every age should have a single ticket on an ordinary day."""
    tickets = [offer for offer in place.offers if isinstance(offer, Ticket)]
    ordinary = [offer for offer in tickets if _is_ordinary(offer)]
    if not ordinary:
        return
    bands = sorted(
        (band for offer in (*ordinary, *_by_season(tickets)) for band in offer.bands),
        key=lambda band: band.first,
    )
    uncovered = 0
    for band in bands:
        if band.first > uncovered:
            yield _gap(AgeBand(uncovered, band.first - 1))
        if band.last is None:
            return
        uncovered = max(uncovered, band.last + 1)
    if uncovered < FOR_EVERYBODY_MONTHS:
        yield _gap(AgeBand(uncovered))


FOR_EVERYBODY_MONTHS = 100 * MONTHS
"""A band that reaches so far leaves nobody out [months]."""


def _by_season(tickets: Sequence[Ticket]) -> Iterator[Ticket]:
    """Tickets sold at a price in one part of the year or week, with another ticket for the rest of it.

    A ticket between two dates may be all there is while the place is open; one by season or weekday needs a
    second for the same age.
    """
    limited = [
        offer for offer in tickets if offer.price and _is_for_anybody(offer) and not _is_ordinary(offer)
    ]
    for offer in limited:
        others = (other for other in limited if other is not offer)
        if offer.valid is None or any(offer.ages.overlaps(other.ages) for other in others):
            yield offer


def _gap(band: AgeBand) -> Found:
    return "offers", str(band), f"no single ticket is for people {ages_in_words(band)}", Weight.WARNING


def _is_ordinary(offer: Ticket) -> bool:
    """Whether a family can have a ticket on any day without proving anything."""
    always = offer.valid is None and offer.first_day is None and offer.last_day is None
    return always and _is_for_anybody(offer)


def _is_for_anybody(offer: Ticket) -> bool:
    return not offer.needs and offer.at_least == 1 and offer.good_on == "any day"


def dear_bundles(place: Place) -> Iterator[Found]:
    """A bundle should not cost more than single tickets for the dearest people who can fill it."""
    tickets = [o for o in place.offers if isinstance(o, Ticket) and _is_ordinary(o) and o.companions is None]
    for number, offer in enumerate(place.offers):
        if not isinstance(offer, Bundle) or offer.also_at:
            continue
        singly = Decimal(0)
        for seat in offer.seats:
            prices = [ticket.price for ticket in tickets if ticket.ages.overlaps(seat.ages)]
            if not prices:
                break
            singly += seat.count * max(prices)
        else:
            if offer.price > singly:
                parts = wording.money(Money(singly, place.currency))
                message = f"is dearer than single tickets for the same people, {parts} at most"
                yield f"offers[{number}].price", str(offer.price), message, Weight.WARNING


def voucher_worth(place: Place) -> Iterator[Found]:
    """A voucher takes off either a percentage or an amount."""
    for number, voucher in enumerate(place.vouchers):
        given = [value for value in (voucher.percent_off, voucher.amount_off) if value is not None]
        if len(given) != 1:
            value = " and ".join(str(one) for one in given)
            message = "a voucher takes off either percent_off or amount_off"
            yield f"vouchers[{number}]", value, message, Weight.FAULT
        if voucher.people_at_most is not None and voucher.percent_off is None:
            message = "only a percentage is taken off for so many people; an amount comes off once"
            yield f"vouchers[{number}].people_at_most", str(voucher.people_at_most), message, Weight.FAULT


def fee_worth(place: Place) -> Iterator[Found]:
    """A fee is either a price or a part of the prices."""
    online = any(offer.online_only for offer in place.offers)
    for number, fee in enumerate(place.fees):
        given = [value for value in (fee.price, fee.percent) if value is not None]
        if len(given) != 1:
            value = " and ".join(str(one) for one in given)
            yield f"fees[{number}]", value, "a fee is either price or percent", Weight.FAULT
        if fee.online_only and not online:
            message = "is never charged, as no offer is sold only online"
            yield f"fees[{number}].online_only", "true", message, Weight.WARNING
    if place.sales_tax is not None and place.sales_tax.on_fees and not place.fees:
        yield "sales_tax.on_fees", "true", "has no effect without a fee", Weight.WARNING


def idle_discounts(place: Place) -> Iterator[Found]:
    """A percentage off must go off some ticket that such people could have alone."""
    for number, offer in enumerate(place.offers):
        if not isinstance(offer, Discount):
            continue
        tickets = [
            other
            for other in place.offers
            if isinstance(other, Ticket)
            and sold_singly(other)
            and (not offer.offers or other.name in offer.offers)
            and any(band.overlaps(offer.ages) for band in other.bands)
        ]
        if not tickets and not set(offer.offers) - {other.name for other in place.offers}:
            message = "there is no single ticket for these people that it could be taken off"
            yield f"offers[{number}].ages", str(offer.ages), message, Weight.FAULT


def unknown_offers(place: Place) -> Iterator[Found]:
    """Vouchers, percentages off and add-ons cheaper with a ticket may only name offers of the card."""
    known = {offer.name for offer in place.offers}
    named: list[tuple[str, tuple[str, ...]]] = [
        *((f"vouchers[{number}]", voucher.offers) for number, voucher in enumerate(place.vouchers)),
        *(
            (f"offers[{number}]", offer.offers)
            for number, offer in enumerate(place.offers)
            if isinstance(offer, Discount)
        ),
        *(
            (f"add_ons[{number}].with_ticket[{index}]", one.offers)
            for number, add_on in enumerate(place.add_ons)
            for index, one in enumerate(add_on.with_ticket)
        ),
    ]
    for field, names in named:
        for index, name in enumerate(names):
            if name not in known:
                message = "no offer on this card has that name"
                yield f"{field}.offers[{index}]", name, message, Weight.FAULT


def unknown_inclusions(place: Place) -> Iterator[Found]:
    """What an offer includes is an add-on or a show of the card."""
    known = {add_on.name for add_on in place.add_ons} | {show.name for show in place.visit.shows}
    for number, offer in enumerate(place.offers):
        for index, name in enumerate(offer.includes):
            if name not in known:
                message = "no show or thing beside entry on this card has that name"
                yield f"offers[{number}].includes[{index}]", name, message, Weight.FAULT


def offers_by_themselves(place: Place) -> Iterator[Found]:
    """No offer contradicts itself or has a rule without effect."""
    for number, offer in enumerate(place.offers):
        for field, value, message, weight in terms_of(offer).faults():
            yield f"offers[{number}].{field}", value, message, weight


def dearer_with_a_ticket(place: Place) -> Iterator[Found]:
    """What costs more with a ticket than without was probably meant otherwise."""
    for number, add_on in enumerate(place.add_ons):
        for index, one in enumerate(add_on.with_ticket):
            if one.price >= add_on.price:
                message = f"is no less than without such a ticket, {add_on.price}"
                field = f"add_ons[{number}].with_ticket[{index}].price"
                yield field, str(one.price), message, Weight.WARNING


def heights_that_cross(place: Place) -> Iterator[Found]:
    """The greatest height for an add-on may not lie below the least."""
    for number, add_on in enumerate(place.add_ons):
        least, most = add_on.least_height, add_on.most_height
        if least is not None and most is not None and most.cm < least.cm:
            message = f"lies below the least height, {least}"
            yield f"add_ons[{number}].most_height", str(most), message, Weight.FAULT


def impossible_dates(place: Place) -> Iterator[Found]:
    """The last day an offer is sold for may not lie before the first."""
    for number, offer in enumerate(place.offers):
        if offer.first_day is not None and offer.last_day is not None and offer.last_day < offer.first_day:
            message = f"lies before the first day, {offer.first_day}"
            yield f"offers[{number}].last_day", str(offer.last_day), message, Weight.FAULT


def impossible_companions(place: Place) -> Iterator[Found]:
    """Somebody on the board must be able to be the companion that an offer asks for."""
    for number, offer in enumerate(place.offers):
        if not isinstance(offer, Ticket) or offer.companions is None:
            continue
        rule = offer.companions
        others = (other for other in place.offers if other is not offer)
        ways = [entrance for other in others for entrance in terms_of(other).entrances()]
        if not any(one.ages.overlaps(rule.ages) and (one.pays or not rule.must_pay) for one in ways):
            way = "pay their way in" if rule.must_pay else "come in"
            message = f"by no other offer can people {ages_in_words(rule.ages)} {way}"
            yield f"offers[{number}].companions.ages", str(rule.ages), message, Weight.FAULT


def only_pass_holders(place: Place) -> Iterator[Found]:
    """Somebody without a pass should be able to enter."""
    if all(isinstance(offer, Pass) for offer in place.offers):
        message = "only holders of a pass can enter; is a ticket missing?"
        yield "offers", wording.listed([offer.name for offer in place.offers]), message, Weight.WARNING


def honoured_at_home(place: Place) -> Iterator[Found]:
    """A pass or ticket is worth something elsewhere only at other places."""
    for number, offer in enumerate(place.offers):
        named = [("elsewhere", one.place) for one in offer.elsewhere] if isinstance(offer, Pass) else []
        named += [("also_at", one.place) for one in also_at(offer)]
        for index, (what, other) in enumerate(named):
            if other == place.id:
                message = "this is the place's own card; name another place"
                yield f"offers[{number}].{what}[{index}].place", other, message, Weight.FAULT


def stays_too_short(place: Place) -> Iterator[Found]:
    """A ticket for a stay shorter than any worth the drive, or one to leave too early, is never used."""
    least = min([place.visit.shortest_minutes, *(stay.shortest_minutes for stay in place.visit.stays)])
    first = min(map(minute_of_day, place.opening.entry_times), default=0)
    for number, offer in enumerate(place.offers):
        longest = offer.longest_stay_minutes
        if longest is not None and longest < least:
            message = f"is never used, as a stay under {wording.minutes(least)} is not worth the drive"
            yield f"offers[{number}].longest_stay_minutes", str(longest), message, Weight.WARNING
        if offer.leave_by is not None and minute_of_day(offer.leave_by) < first + least:
            message = f"is never used, as nobody can have stayed {wording.minutes(least)} by then"
            yield f"offers[{number}].leave_by", f"{offer.leave_by:%H:%M}", message, Weight.WARNING


def parking_by_time(place: Place) -> Iterator[Found]:
    """Each price of parking by time can come to count, and none contradicts itself."""
    rates = place.parking.rates
    for number, rate in enumerate(rates):
        field = f"parking.rates[{number}]"
        if rate.free_minutes is not None and rate.per_hour is None:
            message = "has no effect without a price for each hour"
            yield f"{field}.free_minutes", str(rate.free_minutes), message, Weight.WARNING
        if rate.at_most is not None and rate.at_most < rate.price:
            message = f"is less than the price that is always paid, {rate.price}"
            yield f"{field}.at_most", str(rate.at_most), message, Weight.FAULT
        for other in rates[:number]:
            as_long = other.up_to_minutes is None or (
                rate.up_to_minutes is not None and rate.up_to_minutes <= other.up_to_minutes
            )
            if as_long and other.valid in (None, rate.valid):
                message = "never counts, as a line above fits whenever this one does"
                value = rate.valid or str(rate.up_to_minutes or rate.price)
                yield field, value, message, Weight.FAULT
                break


def nobody_to_mind(place: Place) -> Iterator[Found]:
    """Somebody who may not enter alone cannot mind others under the same rule."""
    for number, rule in enumerate(place.must_be_accompanied):
        covered = rule.ages.first <= rule.by.first and (
            rule.ages.last is None or (rule.by.last is not None and rule.by.last <= rule.ages.last)
        )
        if covered:
            message = f"these people may not enter alone themselves, being {rule.ages}"
            yield f"must_be_accompanied[{number}].by", str(rule.by), message, Weight.FAULT


def small_change(place: Place) -> Iterator[Found]:
    """No price is finer than the currency's smallest coin."""
    digits = minor_digits(place.currency)
    for field, price in _prices(place):
        if price is not None and decimals(price.normalize()) > digits:
            message = f"{place.currency} has {digits} decimal places"
            yield field, str(price), message, Weight.FAULT


def _prices(place: Place) -> Iterator[tuple[str, Decimal | None]]:
    for number, offer in enumerate(place.offers):
        if not isinstance(offer, Discount):
            yield f"offers[{number}].price", offer.price
        if isinstance(offer, Bundle) and offer.extras is not None:
            yield f"offers[{number}].extras.price", offer.extras.price
        for index, other in enumerate(offer.other_ages if isinstance(offer, Ticket) else ()):
            yield f"offers[{number}].other_ages[{index}].price", other.price
    for number, fee in enumerate(place.fees):
        yield f"fees[{number}].price", fee.price
    for number, add_on in enumerate(place.add_ons):
        yield f"add_ons[{number}].price", add_on.price
        for index, one in enumerate(add_on.with_ticket):
            yield f"add_ons[{number}].with_ticket[{index}].price", one.price
    for number, voucher in enumerate(place.vouchers):
        yield f"vouchers[{number}].amount_off", voucher.amount_off
    yield "parking.price", place.parking.price
    for number, rate in enumerate(place.parking.rates):
        for name in ("price", "per_hour", "at_most"):
            yield f"parking.rates[{number}].{name}", getattr(rate, name)


_RULES: tuple[Callable[[Place], Iterator[Found]], ...] = (
    names_twice,
    overlapping_bands,
    gaps_between_bands,
    dear_bundles,
    voucher_worth,
    fee_worth,
    idle_discounts,
    unknown_offers,
    unknown_inclusions,
    offers_by_themselves,
    dearer_with_a_ticket,
    heights_that_cross,
    impossible_dates,
    impossible_companions,
    only_pass_holders,
    honoured_at_home,
    stays_too_short,
    parking_by_time,
    nobody_to_mind,
    small_change,
)
