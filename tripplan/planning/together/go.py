"""Several households on one outing: the price together, each one's part, seats, and how to settle it."""

from collections import Counter
from collections.abc import Iterator, Sequence, Set
from dataclasses import dataclass, replace
from datetime import date, datetime
from itertools import product
from math import prod

from tripplan.documents.family.birth_date import BirthDate
from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.family.member import Member
from tripplan.documents.places.offers import Bundle, Pass, Ticket
from tripplan.documents.places.place import Place
from tripplan.errors import CurrencyMismatch, PlanError, UnknownName
from tripplan.language.sentences import fact
from tripplan.planning.admission.cheapest import cheapest_admission
from tripplan.planning.admission.result import Admission, NoAdmission
from tripplan.planning.passes.candidates import HOLDER_SETS_AT_MOST, holder_sets
from tripplan.planning.together.shapes import (
    AtTheTill,
    CarSeats,
    HouseholdGroup,
    MorePeople,
    Share,
    TillOrder,
    Together,
    Transfer,
)
from tripplan.planning.together.split import fair_shares, fewest_payments
from tripplan.planning.travel.cautions import CHILD_UNDER_MONTHS
from tripplan.values.money import Money

MORE_AT_MOST = 10
"""More people than these are not asked along [people]."""
WORTH_ASKING_PERCENT = 2
"""Everybody's part must fall by this share before more people are suggested [%]. No source, our choice; it
keeps a booking fee that is shared by one more household out of the suggestions.
"""
NEWCOMERS = {"adult": 40, "child": 9}
"""Ages of those who might come along too [years]; in the middle of what boards call adult and child."""

SEAT_CAUTION = fact("cautions-seat-moves-along")


def go_together(
    groups: Sequence[HouseholdGroup],
    place: Place,
    moment: datetime,
    *,
    today: date,
    payer: str | None = None,
    public_holidays: Set[date] = frozenset(),
    days_out_of_school: Set[date] = frozenset(),
    other_places: Sequence[Place] = (),
    more_at_most: int = MORE_AT_MOST,
) -> Together | NoAdmission:
    """Work out an outing of several households.

    Everybody comes in by one order, or each household by its own where that costs less (two vouchers may do
    more than one). A pass lets in people of the household that holds it, others are its guests; passes are
    bought for one household at most. The price is divided by `sentences.rules`; for a household that could
    not have come in alone, the parts that its people have in the common order stand for what it would have
    paid.

    Args:
        groups: the households.
        place: where to.
        moment: the arrival, zone-aware at the place.
        today: for booking deadlines and vouchers.
        payer: the household that pays the rest at the till; the one that leaves the fewest payments to make
            when left out, the first of several.
        public_holidays: the dates PH stands for in the offers' times.
        days_out_of_school: the dates SH stands for.
        other_places: cards of places whose passes are held.
        more_at_most: how many more people to look for, from whom on everybody pays less.

    Returns:
        Everything about it; or why not everybody may enter.

    Raises:
        PlanError: there is no household, two share a name, one has no members, two of its members share a
            name, seats or money paid are negative, or there are too many ways to fill the passes held.
        UnknownName: the payer is none of the households.
        CurrencyMismatch: something was paid in another currency than the place's.
    """
    _check(groups, place, payer)
    till = _Till(place, moment, today, public_holidays, days_out_of_school, tuple(other_places))
    renamed = _with_names_of_their_own(groups)
    alone = [till.alone(group) for group in groups]
    joint = till.joint(renamed)
    singly = [one.total for one in alone if isinstance(one, Admission)]
    apart = len(singly) == len(groups) and (
        isinstance(joint, NoAdmission) or sum(one.minor for one in singly) < joint.total.minor
    )
    if apart:
        orders = tuple(
            TillOrder((group.name,), one)
            for group, one in zip(groups, alone, strict=True)
            if isinstance(one, Admission)
        )
    elif isinstance(joint, Admission):
        orders = (TillOrder(tuple(group.name for group in groups), joint),)
    else:
        return joint
    total = sum((order.admission.total for order in orders), Money.zero(place.currency))
    weights = _weights(renamed, alone, joint)
    parts = fair_shares(total.minor, weights)
    till_by, transfers = _settled(groups, parts, total, payer)
    used_alone = {name for one in alone for name in _for_several(place, one)}
    together = [name for order in orders for name in _for_several(place, order.admission)]
    days_old = [member.months_on(moment.date()) for group in groups for member in group.members]
    return Together(
        orders=orders,
        total=total,
        shares=tuple(
            Share(group.name, one, Money.from_minor(part, place.currency), group.paid)
            for group, one, part in zip(groups, alone, parts, strict=True)
        ),
        group_offers=tuple(name for name in dict.fromkeys(together) if name not in used_alone),
        more=tuple(_more_people(till, renamed, weights, parts, together, more_at_most)),
        seats=CarSeats(len(days_old), sum(group.seats for group in groups)),
        at_the_till=till_by,
        transfers=transfers,
        cautions=(SEAT_CAUTION,) if any(months < CHILD_UNDER_MONTHS for months in days_old) else (),
    )


def _check(groups: Sequence[HouseholdGroup], place: Place, payer: str | None) -> None:
    if not groups:
        raise PlanError("there is no household")
    names = [group.name for group in groups]
    twice = [name for name, count in Counter(names).items() if count > 1]
    if twice:
        raise PlanError(f"every household needs a name of its own; twice: {', '.join(twice)}")
    for group in groups:
        if not group.members:
            raise PlanError(f"nobody of {group.name} comes along")
        if group.seats < 0 or group.paid.amount < 0:
            raise PlanError(f"seats and money paid are not negative: {group.name}")
        if group.paid.currency != place.currency:
            raise CurrencyMismatch(group.paid.currency, place.currency)
    if payer is not None and payer not in names:
        raise UnknownName("household", payer, tuple(names))


def _with_names_of_their_own(groups: Sequence[HouseholdGroup]) -> tuple[HouseholdGroup, ...]:
    """The households with their name behind every name that somebody of another has too."""
    count = Counter(name for group in groups for name in {member.name for member in group.members})

    def own(name: str, group: HouseholdGroup) -> str:
        return f"{name} ({group.name})" if count[name] > 1 else name

    return tuple(
        replace(
            group,
            members=tuple(
                m.model_copy(update={"name": own(m.name, group), "family": m.family or group.name})
                for m in group.members
            ),
            passes=tuple(
                one.model_copy(update={"holders": tuple(own(name, group) for name in one.holders)})
                for one in group.passes
            ),
        )
        for group in groups
    )


@dataclass(frozen=True)
class _Till:
    """One arrival, asked by several parties."""

    place: Place
    moment: datetime
    today: date
    public_holidays: Set[date]
    days_out_of_school: Set[date]
    other_places: tuple[Place, ...]

    def alone(self, group: HouseholdGroup) -> Admission | NoAdmission:
        """The cheapest way in for one household."""
        return self._ask(self.place, group.members, group, group.passes, self.other_places)

    def joint(self, groups: Sequence[HouseholdGroup]) -> Admission | NoAdmission:
        """The cheapest way in for all of them in one order.

        The till knows one household. Whatever a household's pass may let in is therefore written out to its
        people by name, in every way they can fill its seats; and each household in turn is the one that may
        buy passes.
        """
        party = tuple(member for group in groups for member in group.members)
        choices = [choice for group in groups for choice in self._written_out(group)]
        if prod(len(choice) for choice in choices) > HOLDER_SETS_AT_MOST:
            raise PlanError("there are too many ways to fill the seats of the passes held")
        found: list[Admission | NoAdmission] = []
        for passes in product(*choices):
            place, *others = (self._honouring(card, passes) for card in (self.place, *self.other_places))
            held = [one for _, _, one in passes]
            for number, buyer in enumerate(groups):
                if number and not self._pass_for_less(min(found, key=_total)):
                    break
                found.append(self._ask(place, party, buyer, held, tuple(others)))
        return min(found, key=_total)

    def _pass_for_less(self, found: Admission | NoAdmission) -> bool:
        """Whether a way in with a pass bought could cost less; who buys makes no difference otherwise."""
        passes = [offer for offer in self.place.offers if isinstance(offer, Pass)]
        if self.place.vouchers:
            return bool(passes)
        return any(Money(offer.price, self.place.currency).minor < _total(found) for offer in passes)

    def _ask(
        self,
        place: Place,
        party: Sequence[Member],
        buyer: HouseholdGroup,
        held: Sequence[HeldPass],
        others: tuple[Place, ...],
    ) -> Admission | NoAdmission:
        return cheapest_admission(
            place,
            party,
            self.moment,
            today=self.today,
            household_members=tuple(member.name for member in buyer.members),
            held=held,
            public_holidays=self.public_holidays,
            days_out_of_school=self.days_out_of_school,
            other_places=others,
            other_ways=0,
        )

    def _written_out(self, group: HouseholdGroup) -> Iterator[list[tuple[str, Pass, HeldPass]]]:
        """For each pass of a household: id of its place, the pass by name, and to whom; in every way."""
        for held in group.passes:
            offer = next(
                (
                    offer
                    for card in (self.place, *self.other_places)
                    for offer in card.offers
                    if card.id == held.place and offer.name == held.offer and isinstance(offer, Pass)
                ),
                None,
            )
            if offer is None:
                continue
            name = f"{offer.name} ({group.name})"
            card_text = offer.model_copy(update={"name": name, "named": True, "first_day": date.max})
            if offer.named:
                sets: tuple[tuple[str, ...], ...] = (held.holders,)
            else:
                sets = holder_sets(card_text, group.members, self.moment.date())
            ways = [
                (held.place, card_text, held.model_copy(update={"offer": name, "holders": holders}))
                for holders in sets
                if not set(holders).isdisjoint(held.holders)
            ]
            if ways:
                yield ways

    def _honouring(self, card: Place, passes: Sequence[tuple[str, Pass, HeldPass]]) -> Place:
        """The card with passes written out by name; they are not on sale."""
        own = {offer.name: offer for place_id, offer, _ in passes if place_id == card.id}
        return card.model_copy(update={"offers": (*card.offers, *own.values())})


def _total(found: Admission | NoAdmission) -> float:
    """What it costs [smallest coin]; without end where nobody may enter."""
    return found.total.minor if isinstance(found, Admission) else float("inf")


def _weights(
    groups: Sequence[HouseholdGroup], alone: Sequence[Admission | NoAdmission], joint: Admission | NoAdmission
) -> list[int]:
    """What each household would have paid, or what its people's parts of the common order come to."""
    weights = []
    for group, one in zip(groups, alone, strict=True):
        if isinstance(one, Admission):
            weights.append(one.total.minor)
        elif isinstance(joint, Admission):
            weights.append(sum(joint.shares[member.name].minor for member in group.members))
    return weights


def _settled(
    groups: Sequence[HouseholdGroup], parts: Sequence[int], total: Money, payer: str | None
) -> tuple[AtTheTill | None, tuple[Transfer, ...]]:
    """Who settles with the place, and who then pays whom."""
    rest = total.minor - sum(group.paid.minor for group in groups)
    choices = []
    for number, group in enumerate(groups):
        if payer in (None, group.name):
            balances = [one.paid.minor - part for one, part in zip(groups, parts, strict=True)]
            balances[number] += rest
            choices.append((number, fewest_payments(balances)))
    number, payments = min(choices, key=lambda choice: len(choice[1]))
    till = AtTheTill(groups[number].name, Money.from_minor(rest, total.currency)) if rest else None
    return till, tuple(
        Transfer(groups[one].name, groups[other].name, Money.from_minor(amount, total.currency))
        for one, other, amount in payments
    )


def _for_several(place: Place, admission: Admission | NoAdmission) -> tuple[str, ...]:
    """The group prices and bundles that an admission uses."""
    if isinstance(admission, NoAdmission):
        return ()
    several = {
        offer.name
        for offer in place.offers
        if isinstance(offer, Bundle) or (isinstance(offer, Ticket) and offer.at_least > 1)
    }
    return tuple(line.name for line in admission.purchases if line.name in several)


def _more_people(
    till: _Till,
    groups: Sequence[HouseholdGroup],
    weights: Sequence[int],
    parts: Sequence[int],
    used: Sequence[str],
    at_most: int,
) -> Iterator[MorePeople]:
    """For adults and for children, the fewest more with whom every household that pays pays clearly less."""
    taken = {member.name for group in groups for member in group.members}
    currency, day = till.place.currency, till.moment.date()
    if not any(parts):
        return
    for who, years in NEWCOMERS.items():
        born = BirthDate(year=day.year - years, month=day.month, day=1)
        names = [
            name for number in range(len(taken) + at_most) if (name := f"guest {number + 1}") not in taken
        ]
        for count in range(1, at_most + 1):
            members = tuple(Member(name=name, born=born) for name in names[:count])
            newcomers = HouseholdGroup(f"{count} more", members, 0, Money.zero(currency))
            everybody = (*groups, newcomers)
            joint = till.joint(everybody)
            if isinstance(joint, NoAdmission):
                continue
            (weight,) = _weights([newcomers], [till.alone(newcomers)], joint)
            amounts = fair_shares(joint.total.minor, [*weights, weight])[:-1]
            if all(
                100 * after <= (100 - WORTH_ASKING_PERCENT) * before
                for after, before in zip(amounts, parts, strict=True)
            ):
                yield MorePeople(
                    count=count,
                    who=who,
                    total=joint.total,
                    amounts=tuple(Money.from_minor(amount, currency) for amount in amounts),
                    offers=tuple(name for name in _for_several(till.place, joint) if name not in used),
                )
                break
