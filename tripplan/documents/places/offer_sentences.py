"""Every rule of a price board as one plain sentence for the parent."""

from datetime import date
from decimal import Decimal

from tripplan.documents.places.offers import (
    AddOn,
    Bundle,
    Companions,
    Discount,
    Fee,
    MustBeAccompanied,
    Offer,
    OfferRules,
    Parking,
    ParkingRate,
    Pass,
    SalesTax,
    Seats,
    Ticket,
    Voucher,
    also_at,
)
from tripplan.language import wording
from tripplan.values.ages import EVERYONE, MONTHS, AgeBand
from tripplan.values.money import Money


def sentence(offer: Offer, currency: str) -> str:
    """An offer as one sentence.

    Args:
        offer: a ticket, bundle or pass of the card.
        currency: the card's ISO 4217 code.
    """
    if isinstance(offer, Ticket):
        parts = _ticket(offer, currency)
    elif isinstance(offer, Discount):
        parts = _discount(offer)
    elif isinstance(offer, Bundle):
        parts = _bundle(offer, currency)
    else:
        parts = _pass(offer, currency)
    parts += [
        f"good at '{one.place}' too "
        + ("on the same day" if one.within_days == 1 else f"within {one.within_days} days")
        for one in also_at(offer)
    ]
    return _finished([*parts, *_limits_in_time(offer)])


def extra_sentence(offer: Bundle, currency: str) -> str:
    """What a person beyond a bundle's seats pays; empty where the bundle takes none."""
    extras = offer.extras
    if extras is None:
        return ""
    limit = f", at most {extras.at_most} with each" if extras.at_most is not None else ""
    price = _price(extras.price, currency)
    return f"Each further person {ages_in_words(extras.ages)} on '{offer.name}': {price}{limit}."


def guest_sentence(offer: Pass) -> str:
    """What a pass grants to people who come along without a seat."""
    guests = wording.counted(offer.guests_at_most, "guest")
    return (
        f"'{offer.name}' takes {_percent(offer.guests_percent_off)} off the single price of up to {guests}."
    )


def leader_sentence(offer: Ticket) -> str:
    """When a group's leader goes free; empty where the offer frees none."""
    if offer.one_free_per is None:
        return ""
    payers = "every paying person" if offer.one_free_per == 1 else f"every {offer.one_free_per} who pay"
    return f"One leader {ages_in_words(offer.leader_ages)} goes free for {payers} '{offer.name}'."


def held_sentence(offer: Pass, valid_until: date) -> str:
    """What a pass that the family already holds is good for."""
    who = "its holders" if offer.named else f"up to {_seats(offer.seats)} of the household"
    return f"'{offer.name}' is already paid until {wording.day(valid_until)} and lets in {who}."


def elsewhere_sentence(offer: Offer, other_place: str, percent_off: Decimal) -> str:
    """What a pass of another place is worth here."""
    worth = "entry is free" if percent_off == 100 else f"{_percent(percent_off)} off the single price"
    return f"With '{offer.name}' of {other_place}, {worth} here."


def fee_sentence(fee: Fee, currency: str) -> str:
    """A fee as one sentence."""
    online = " sold only online" if fee.online_only else ""
    if fee.percent is not None:
        return (
            f"{fee.name}: {_percent(fee.percent)} of the prices of all tickets, bundles and passes{online}."
        )
    if fee.per == "ticket":
        on = f"on every ticket, bundle or pass bought at a price{f' and{online}' if online else ''}"
    else:
        on = f"once per order{f' of anything{online}' if online else ''}"
    return f"{fee.name}: {_price(fee.price or Decimal(0), currency)} {on}."


def tax_sentence(tax: SalesTax) -> str:
    """The sales tax as one sentence."""
    flags = (
        (tax.on_entry, "entry"),
        (tax.on_add_ons, "add-ons"),
        (tax.on_parking, "parking"),
        (tax.on_fees, "fees"),
    )
    taxed = wording.listed([what for on, what in flags if on]) or "nothing on this card"
    return f"Sales tax of {_percent(tax.percent)} is added to {taxed}."


def voucher_sentence(voucher: Voucher, currency: str) -> str:
    """A voucher as one sentence."""
    if voucher.percent_off is not None:
        worth = _percent(voucher.percent_off)
    elif voucher.amount_off is not None:
        worth = _price(voucher.amount_off, currency)
    else:
        worth = "nothing"
    offers = f" {wording.listed(_quoted(voucher.offers))}" if voucher.offers else " entry"
    parts = [f"{voucher.name}: {worth} off{offers}, once per order"]
    if voucher.needs:
        parts.append(f"when somebody shows proof of {_any_of(voucher.needs)}")
    if voucher.people_at_most is not None:
        parts.append(f"for up to {wording.counted(voucher.people_at_most, 'person', 'people')}")
    if voucher.valid is not None:
        parts.append(f"for visits at these times: {voucher.valid}")
    if voucher.book_days_ahead:
        parts.append(f"at least {wording.counted(voucher.book_days_ahead, 'day')} ahead")
    if voucher.last_day is not None:
        parts.append(f"to be used by {wording.day(voucher.last_day)}")
    return _finished(parts)


def add_on_sentence(add_on: AddOn, currency: str) -> str:
    """Something beside entry, as one sentence."""
    price = "free" if add_on.price == 0 else _price(add_on.price, currency)
    parts = [f"{add_on.name}: {price} {'once for the party' if add_on.per == 'party' else 'each'}"]
    if add_on.per == "person" or add_on.ages != EVERYONE:
        parts.append(f"for people {ages_in_words(add_on.ages)}")
    if add_on.least_height is not None:
        parts.append(f"at least {add_on.least_height} tall")
    if add_on.most_height is not None:
        parts.append(f"at most {add_on.most_height} tall")
    if add_on.needs:
        parts.append(f"with proof of {_any_of(add_on.needs)}")
    if add_on.valid is not None:
        parts.append(f"for visits at these times: {add_on.valid}")
    parts += [
        f"{'free' if one.price == 0 else _price(one.price, currency)} with {' or '.join(_quoted(one.offers))}"
        for one in add_on.with_ticket
    ]
    taken = "most families take it" if add_on.usual else "only if you want it"
    return f"{', '.join(parts)}; {taken}."


def parking_sentence(parking: Parking, currency: str) -> str:
    """What leaving the car costs, as one sentence."""
    rates = [_parking_rate(rate, currency) for rate in parking.rates]
    if parking.price is not None:
        flat = "free" if parking.price == 0 else _price(parking.price, currency)
        rates.append(f"otherwise {flat}" if rates else flat)
    elif rates:
        rates.append("otherwise not known")
    said = "; ".join(rates) or "the price is not known and not counted"
    return f"Parking: {said}; {parking.note}" if parking.note else f"Parking: {said}."


def _parking_rate(rate: ParkingRate, currency: str) -> str:
    parts = ["free" if not rate.price and not rate.per_hour else ""]
    if rate.price:
        parts = [_price(rate.price, currency)]
    if rate.per_hour:
        after = f" after the first {wording.minutes(rate.free_minutes)}" if rate.free_minutes else ""
        plus = "and " if rate.price else ""
        parts.append(f"{plus}{_price(rate.per_hour, currency)} for each hour begun{after}")
    if rate.at_most is not None:
        parts.append(f"at most {_price(rate.at_most, currency)}")
    if rate.up_to_minutes is not None:
        parts.append(f"for up to {wording.minutes(rate.up_to_minutes)}")
    if rate.valid is not None:
        parts.append(f"for those who arrive at these times: {rate.valid}")
    return ", ".join(filter(None, parts))


def accompaniment_sentence(rule: MustBeAccompanied) -> str:
    """Who may not enter alone, as one sentence."""
    limit = ""
    if rule.each_minds is not None:
        limit = f", who may bring up to {rule.each_minds}"
    return (
        f"Visitors {ages_in_words(rule.ages)} may only enter with somebody {ages_in_words(rule.by)}{limit}."
    )


def ages_in_words(band: AgeBand) -> str:
    """An age band within a sentence, such as 'aged 3 to 12', 'under 2', 'aged 65 or over', 'of any age'."""
    if band.last is None:
        if band.first == 0:
            return "of any age"
        return f"aged {_age(band.first)} or over"
    end = band.last + 1
    if band.first == 0:
        return f"under {_age(end)}"
    if band.first % MONTHS or end % MONTHS:
        return f"aged {band.first} to {band.last} months"
    first, last = band.first // MONTHS, band.last // MONTHS
    return f"aged {first}" if first == last else f"aged {first} to {last}"


def age_in_words(months: int) -> str:
    """One person's age, such as '7 years' or '9 months' (under two years).

    Args:
        months: age [completed months].
    """
    return wording.counted(months, "month") if months < 2 * MONTHS else f"{months // MONTHS} years"


def _ticket(offer: Ticket, currency: str) -> list[str]:
    price = "free" if offer.price == 0 else f"{_price(offer.price, currency)} each"
    parts = [f"{offer.name}: {price} for people {ages_in_words(offer.ages)}"]
    for other in offer.other_ages:
        each = "free" if other.price == 0 else f"{_price(other.price, currency)} each"
        parts.append(f"{each} for people {ages_in_words(other.ages)}")
    if offer.good_on == "birthday":
        parts.append("only on the visitor's birthday")
    elif offer.good_on == "birth month":
        parts.append("only in the month of the visitor's birthday")
    if offer.needs:
        parts.append(f"with proof of {_any_of(offer.needs)}")
        if offer.one_status_covers > 1:
            parts.append(f"which covers {offer.one_status_covers} people, its holder included")
    if offer.companions is not None:
        parts.append(_companions(offer.companions))
    if offer.at_least > 1:
        together = " together" if offer.other_ages else ""
        parts.append(f"from {offer.at_least} people{together} on")
    if offer.at_most is not None:
        parts.append(f"at most {offer.at_most} to one party")
    if offer.one_free_per is not None:
        leader = f"a leader {ages_in_words(offer.leader_ages)}"
        parts.append(f"with {leader} free for every {wording.counted(offer.one_free_per, 'payer')}")
    return parts


def _discount(offer: Discount) -> list[str]:
    tickets = wording.listed(_quoted(offer.offers)) if offer.offers else "the single price"
    who = f"people {ages_in_words(offer.ages)}"
    parts = [f"{offer.name}: {_percent(offer.percent_off)} off {tickets} for {who}"]
    if offer.needs:
        parts.append(f"with proof of {_any_of(offer.needs)}")
        if offer.one_status_covers > 1:
            parts.append(f"which covers {offer.one_status_covers} people, its holder included")
    if offer.at_most is not None:
        parts.append(f"for at most {offer.at_most} of one party")
    return parts


def _companions(rule: Companions) -> str:
    paying = "paying companion" if rule.must_pay else "companion"
    status = f" with proof of {_any_of(rule.needs)}" if rule.needs else ""
    return f"up to {rule.each_allows} for each {paying} {ages_in_words(rule.ages)}{status}"


def _bundle(offer: Bundle, currency: str) -> list[str]:
    price = "free" if offer.price == 0 else _price(offer.price, currency)
    parts = [f"{offer.name}: {price} for up to {_seats(offer.seats)} together"]
    if offer.extras is not None:
        limit = f" (at most {offer.extras.at_most})" if offer.extras.at_most is not None else ""
        who = ages_in_words(offer.extras.ages)
        parts.append(f"{_price(offer.extras.price, currency)} for each further person {who}{limit}")
    if offer.must_include is not None:
        parts.append(f"with somebody {ages_in_words(offer.must_include)} among them")
    if offer.needs:
        parts.append(f"with proof of {_any_of(offer.needs)} by one of them")
    if offer.at_least > 1:
        parts.append(f"with at least {offer.at_least} of its seats taken")
    if offer.one_family:
        parts.append("all of one family")
    if offer.per_car:
        parts.append("one for each car, infants counted")
    elif offer.counts_everybody:
        parts.append("infants counted")
    if offer.at_most is not None:
        parts.append(f"at most {offer.at_most} to one {'family' if offer.one_family else 'party'}")
    return parts


def _pass(offer: Pass, currency: str) -> list[str]:
    whose = "named persons" if offer.named else "of the household"
    price, months = _price(offer.price, currency), wording.counted(offer.months, "month")
    parts = [f"{offer.name}: {price} for {months} of visits by up to {_seats(offer.seats)} {whose}"]
    if offer.guests_at_most:
        off = _percent(offer.guests_percent_off)
        guests = wording.counted(offer.guests_at_most, "guest")
        in_all = (
            f" on a visit and {offer.guests_per_year} in all" if offer.guests_per_year is not None else ""
        )
        parts.append(f"{off} off the single price of up to {guests}{in_all}")
    if offer.parking_included:
        parts.append("parking included")
    for other in offer.elsewhere:
        worth = "free entry" if other.percent_off == 100 else f"{_percent(other.percent_off)} off"
        many = f" for up to {other.at_most}" if other.at_most is not None else ""
        parts.append(f"{worth} at '{other.place}'{many}")
    return parts


def _limits_in_time(offer: OfferRules) -> list[str]:
    parts = []
    if offer.valid is not None:
        parts.append(f"good only at these times: {offer.valid}")
    if offer.first_day is not None:
        parts.append(f"from {wording.day(offer.first_day)}")
    if offer.last_day is not None:
        parts.append(f"until {wording.day(offer.last_day)}")
    if offer.book_days_ahead:
        parts.append(f"to be booked at least {wording.counted(offer.book_days_ahead, 'day')} ahead")
    if offer.includes:
        parts.append(f"with {wording.listed(_quoted(offer.includes))}")
    if offer.online_only:
        parts.append("sold only online")
    if offer.longest_stay_minutes is not None:
        parts.append(f"for a stay of at most {wording.minutes(offer.longest_stay_minutes)}")
    if offer.leave_by is not None:
        parts.append(f"to leave by {wording.clock(offer.leave_by)}")
    return parts


def _seats(seats: tuple[Seats, ...]) -> str:
    return wording.listed(
        [f"{wording.counted(seat.count, 'person', 'people')} {ages_in_words(seat.ages)}" for seat in seats]
    )


def _age(months: int) -> str:
    return f"{months} months" if months % MONTHS else str(months // MONTHS)


def _price(amount: Decimal, currency: str) -> str:
    return wording.money(Money(amount, currency))


def _percent(value: Decimal) -> str:
    return f"{value.normalize():f} %"


def _any_of(statuses: tuple[str, ...]) -> str:
    names = _quoted(statuses)
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} or {names[-1]}"


def _quoted(names: tuple[str, ...]) -> list[str]:
    return [f"'{name}'" for name in names]


def _finished(parts: list[str]) -> str:
    return f"{', '.join(parts)}."
