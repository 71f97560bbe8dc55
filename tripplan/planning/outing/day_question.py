"""What the day search is asked: a party with its needs, a place with its ways, on one day."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, time

from tripplan.documents.family.household import Household
from tripplan.documents.family.member import Member
from tripplan.planning.day import DayQuestion, Napper
from tripplan.planning.family.family import Family
from tripplan.planning.opening.hours import DayHours
from tripplan.planning.outing.journeys import Pace, pace_of, ways_of
from tripplan.planning.outing.place_facts import PlaceFacts
from tripplan.planning.outing.stay import stay_for
from tripplan.planning.travel.drive import Journey
from tripplan.planning.travel.morning import usual_ready_minutes
from tripplan.planning.travel.patience import usual_driving_in_a_day, usual_patience
from tripplan.values.ages import ADULT
from tripplan.values.clocks import minute_of_day


@dataclass(frozen=True, eq=False)
class PartyNeeds:
    """What a party brings into a day plan at the ages it has on a day, whatever the place.

    Attributes:
        months: everybody's age [completed months].
        nappers: the usual naps.
        last_wakes: when the last of the party usually wakes, by the clock at home.
        ready_minutes: from then to 'shoes on' [min].
        first_bed: when the first of it should be in bed, likewise.
        patience_minutes: how long at a stretch its most restless bear driving [min]; None for any time.
        most_driving_minutes: the most driving in a day [min].
    """

    months: tuple[int, ...]
    nappers: tuple[Napper, ...]
    last_wakes: time
    first_bed: time
    patience_minutes: int | None
    ready_minutes: int
    most_driving_minutes: int

    @property
    def children(self) -> int:
        """How many are under age."""
        return sum(months not in ADULT for months in self.months)

    @classmethod
    def of(cls, household: Household, party: Sequence[Member], day: date) -> "PartyNeeds":
        """Those of a party on a day."""
        habits = household.habits
        awake = habits.awake_before_bed_minutes
        months = tuple(member.months_on(day) for member in party)
        return cls(
            months=months,
            nappers=tuple(
                Napper(member.name, member.naps, _latest_nap_end(member, awake))
                for member in party
                if member.naps
            ),
            last_wakes=max(member.wakes for member in party),
            first_bed=min(member.bed for member in party),
            patience_minutes=_least_patience(party, months),
            ready_minutes=usual_ready_minutes(months)
            if habits.ready_minutes is None
            else habits.ready_minutes,
            most_driving_minutes=habits.drive_in_a_day_at_most_minutes or usual_driving_in_a_day(months),
        )


def day_question(
    family: Family,
    needs: PartyNeeds,
    facts: PlaceFacts,
    day: date,
    hours: DayHours,
    ways: tuple[Journey, Journey],
) -> DayQuestion:
    """What the day search is asked about one place on a day on which nobody is engaged.

    Args:
        family: people, car, home, calendars.
        needs: of those who go.
        facts: what all days at the place share.
        day: the date, at home and at the place.
        hours: when the place can be visited that day; must be open.
        ways: there and home that day.
    """
    place, household = facts.place, family.household
    own = family.own_figures_for(place.id)
    stay = stay_for(place.visit, needs.months)
    comfortable = (own and own.stay_minutes) or stay.comfortable_minutes
    way_there, way_home = ways
    return DayQuestion(
        day=day,
        home_zone=household.home.zone,
        way_there=way_there,
        way_home=way_home,
        hours=hours,
        nappers=needs.nappers,
        pushchairs=place.visit.pushchairs,
        eats_there=place.visit.own_food or place.visit.food_sold,
        own_food=place.visit.own_food,
        shortest_minutes=min(stay.shortest_minutes, comfortable),
        comfortable_minutes=comfortable,
        habits=household.habits,
        worth=household.worth,
        busy=(),
        currency=household.currency,
        last_wakes=needs.last_wakes,
        first_bed=needs.first_bed,
        patience_minutes=needs.patience_minutes,
        ready_minutes=needs.ready_minutes,
        most_driving_minutes=needs.most_driving_minutes,
        children=needs.children,
    )


def ways_on(family: Family, party: Sequence[Member], facts: PlaceFacts, day: date) -> tuple[Journey, Journey]:
    """The way there and the way home on one day; the arguments are those of `plan_outing`."""
    return ways_at(family, pace_of(family.household, party, day), facts, day)


def ways_at(family: Family, pace: Pace, facts: PlaceFacts, day: date) -> tuple[Journey, Journey]:
    """As `ways_on`, for a party of which it is known how it travels that day."""
    return ways_of(family.household, pace, facts.drive, facts.place.where, day, facts.public_holidays.keys())


def _latest_nap_end(member: Member, awake_minutes: int) -> time:
    """When a shifted nap is over at the latest, so long before bedtime; midnight at the earliest."""
    left = max(0, minute_of_day(member.bed) - awake_minutes)
    return time(left // 60, left % 60)


def _least_patience(party: Sequence[Member], months: Sequence[int]) -> int | None:
    """How long at a stretch the most restless of a party bears driving [min]; None for any time."""
    bears = (
        usual_patience(age) if member.patience_minutes is None else member.patience_minutes
        for member, age in zip(party, months, strict=True)
    )
    return min((minutes for minutes in bears if minutes is not None), default=None)
