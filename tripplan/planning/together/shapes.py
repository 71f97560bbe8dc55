"""What is asked about an outing of several households, and what is answered."""

from dataclasses import dataclass

from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.family.member import Member
from tripplan.language.sentences import Fact
from tripplan.planning.admission.result import Admission, NoAdmission
from tripplan.values.money import Money


@dataclass(frozen=True)
class HouseholdGroup:
    """One household on a common outing.

    Attributes:
        name: what it is called; no two of an outing share a name.
        members: who comes along.
        seats: places with a belt in the cars it brings, the drivers' included; 0 for none.
        paid: what it has paid in advance for everybody.
        passes: annual passes it holds.
    """

    name: str
    members: tuple[Member, ...]
    seats: int
    paid: Money
    passes: tuple[HeldPass, ...] = ()


@dataclass(frozen=True)
class TillOrder:
    """One order at the till.

    Attributes:
        groups: the households it lets in.
        admission: what is bought; a name that several households have is followed by the household's.
    """

    groups: tuple[str, ...]
    admission: Admission


@dataclass(frozen=True)
class Share:
    """One household's part of the price.

    Attributes:
        group: the household.
        alone: what it would have bought by itself, or why it could not have come in.
        amount: its part of the total.
        paid: what it has paid in advance.
    """

    group: str
    alone: Admission | NoAdmission
    amount: Money
    paid: Money

    @property
    def less_than_alone(self) -> Money | None:
        """What going together saves the household; None where it could not have come in alone."""
        return self.alone.total - self.amount if isinstance(self.alone, Admission) else None


@dataclass(frozen=True)
class MorePeople:
    """The fewest more people with whom every household that pays would pay less.

    Attributes:
        count: how many more.
        who: 'adult' or 'child'.
        total: what everybody together would pay, the newcomers included.
        amounts: what each household would pay, in order.
        offers: group prices and bundles that are used then and not before.
    """

    count: int
    who: str
    total: Money
    amounts: tuple[Money, ...]
    offers: tuple[str, ...]


@dataclass(frozen=True)
class CarSeats:
    """Seats in the cars against people.

    Attributes:
        people: how many ride; a baby needs a seat of its own.
        seats: how many seats there are.
    """

    people: int
    seats: int

    @property
    def missing(self) -> int:
        """How many people have no seat."""
        return max(0, self.people - self.seats)


@dataclass(frozen=True)
class AtTheTill:
    """Who settles with the place on the day.

    Attributes:
        group: the household that does.
        amount: what is left to pay; negative where money paid in advance comes back.
    """

    group: str
    amount: Money


@dataclass(frozen=True)
class Transfer:
    """One payment between two households.

    Attributes:
        payer: who pays.
        receiver: who is paid.
        amount: how much; more than nothing.
    """

    payer: str
    receiver: str
    amount: Money


@dataclass(frozen=True)
class Together:
    """An outing of several households.

    Attributes:
        orders: one for everybody, or one for each household where that is cheaper.
        total: what they come to.
        shares: each household's part, in order; they add up to the total.
        group_offers: group prices and bundles used together that no household would use alone.
        more: with how many more adults, or children, every household pays less; empty where with none.
        seats: seats in the cars against people.
        at_the_till: who pays the rest; None where everything is paid.
        transfers: who pays whom once the place has its money; as few as there can be.
        cautions: for safety on the way.
        rates: at which prices in another currency are counted.
    """

    orders: tuple[TillOrder, ...]
    total: Money
    shares: tuple[Share, ...]
    group_offers: tuple[str, ...]
    more: tuple[MorePeople, ...]
    seats: CarSeats
    at_the_till: AtTheTill | None
    transfers: tuple[Transfer, ...]
    cautions: tuple[Fact, ...]
    rates: tuple[Fact, ...] = ()

    @property
    def saving(self) -> Money | None:
        """What going together saves in all; None where somebody could not have come in alone."""
        less = [share.less_than_alone for share in self.shares]
        known = [one for one in less if one is not None]
        return sum(known[1:], known[0]) if len(known) == len(less) else None
