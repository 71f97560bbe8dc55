"""What the family's own outings teach: figures move from the usual to its own.

These are fuel, food, stays, delays, and what weather weighs.

Every figure is learned on the logarithm, because such figures differ by factors (half as much is as far off
as twice as much), by the update in `bayes`. The prior's middle is the household's or the card's own figure;
how much it weighs stands in `_FUEL` and its neighbours.
"""

import math
from collections import defaultdict
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from tripplan.documents.family.car import Car, Fuel
from tripplan.documents.family.household import Household
from tripplan.documents.logbook.entry import LogbookEntry, minutes_between
from tripplan.documents.logbook.settings import Learnable, LogbookSettings
from tripplan.documents.places.own_figures import OwnFigures
from tripplan.documents.places.place import Place
from tripplan.planning.cost.account import meal_price
from tripplan.planning.day.weighing.delays import EARLY_BY_MINUTES
from tripplan.planning.family.family import Family
from tripplan.planning.logbook.bayes import Belief
from tripplan.planning.logbook.weather_learning import learned_worths
from tripplan.values.money import Money
from tripplan.values.ranges import Range
from tripplan.values.units import LITRES_PER_US_GALLON, litres_per_100_km

LEARNED_FROM = 60
"""The newest outings that are looked at; a family changes, and older ones no longer speak for it [-]."""
SHORTEST_STAY = 10
"""A shorter stay was no visit [min]."""
_ROUND_TO = 5


@dataclass(frozen=True)
class _Prior:
    """How sure the usual figure is. No source, our choice.

    Attributes:
        spread: of one outing about the family's own mean, as a share [ln].
        worth: how many outings the usual figure weighs as much as [-].
    """

    spread: float
    worth: float

    def about(self, middle: float) -> Belief:
        return Belief(middle, self.spread, self.worth, self.worth)


_FUEL = _Prior(0.12, 3)
"""Trips of one car differ by about an eighth; the household's figure weighs as three fillings."""
_FOOD = _Prior(0.40, 2)
"""One meal out is soon half as dear again as another; the household's figure is a guess."""
_STAY = _Prior(0.35, 2)
"""A stay is soon a third longer or shorter; the card's figure is for anybody."""
_KIND = _Prior(0.35, 4)
"""The same for all places of a kind, which differ more among each other."""
_DELAY_WORTH = 3
"""Getting off late: the spread is the household's own, from its usual and its one-in-ten delay."""


@dataclass(frozen=True)
class LearnedFigure:
    """One figure, as it is usually and as the family's own outings say.

    Attributes:
        what: which group of figures it belongs to, and is switched with.
        label: what it is, in words.
        unit: of the figures, such as 'mpg'.
        usual: without the logbook: the household's or the card's.
        own: with it.
        likely: what the own figure may be in truth; its middle 90 %.
        outings: how many outings tell.
        told_by: in words, such as 'from your last 6 outings'.
        place: the id of the place it is for; empty for all.
        field: of the household's `worth`, where it is one of these amounts.
    """

    what: Learnable
    label: str
    unit: str
    usual: Decimal
    own: Decimal
    likely: Range
    outings: int
    told_by: str
    place: str = ""
    field: str = ""


def learned_figures(family: Family, entries: Collection[LogbookEntry]) -> tuple[LearnedFigure, ...]:
    """All that outings teach, whether it is switched on or not.

    Args:
        family: with the household's and the cards' own figures, not changed by learning yet.
        entries: the logbook; the newest `LEARNED_FROM` count.
    """
    newest = sorted(entries, key=lambda entry: (entry.day, entry.id))[-LEARNED_FROM:]
    household = family.household
    return (
        *_fuel(household.car, newest),
        *_food(household, newest),
        *_delays(household, newest),
        *_stays(family, newest),
        *_weather(household, newest),
    )


def with_logbook(family: Family, entries: Collection[LogbookEntry], settings: LogbookSettings) -> Family:
    """The family as planning should take it: with its own figures in the place of the usual ones.

    Args:
        family: with the household's and the cards' own figures.
        entries: the logbook.
        settings: what may be learned.
    """
    if not entries or set(settings.not_learned) == set(Learnable):
        return family
    figures = [figure for figure in learned_figures(family, entries) if settings.learns(figure.what)]
    notes = [entry.crowd_note for entry in entries] if settings.learns(Learnable.CROWDS) else []
    return replace(
        family,
        household=_changed_household(family.household, figures),
        own_figures=_changed_own_figures(family, figures),
        crowd_notes=(*family.crowd_notes, *(note for note in notes if note is not None)),
    )


# --- what planning is given -------------------------------------------------------------------------------


def _changed_household(household: Household, figures: Sequence[LearnedFigure]) -> Household:
    changes: dict[str, object] = {}
    by_label = {figure.label: figure for figure in figures if not figure.place}
    if household.car is not None and (fuel := by_label.get(CONSUMPTION)):
        told = f"{fuel.told_by}; without them {fuel.usual:f} {fuel.unit}"
        changes["car"] = household.car.model_copy(update={"consumption": fuel.own, "consumption_from": told})
    food: dict[str, object] = {}
    for way, (adult, child) in _MEALS.items():
        figure, grown_up = by_label.get(f"a child's {way} meal"), by_label.get(f"an adult's {way} meal")
        if figure and grown_up:
            food |= {adult: grown_up.own, child: figure.own, f"{way}_from": grown_up.told_by}
    if food:
        changes["food"] = household.food.model_copy(update=food)
    usual, late = by_label.get(USUAL_DELAY), by_label.get(LATE_DELAY)
    if usual and late:
        changes["habits"] = household.habits.model_copy(
            update={
                "usual_delay_minutes": int(usual.own),
                "late_one_day_in_ten_minutes": int(late.own),
                "delays_from": f"{usual.told_by}; without them {usual.usual:f} and {late.usual:f} min",
            }
        )
    worths = {figure.field: figure.own for figure in figures if figure.what is Learnable.WEATHER}
    if worths:
        changes["worth"] = household.worth.model_copy(update=worths)
    return household.model_copy(update=changes) if changes else household


def _changed_own_figures(family: Family, figures: Sequence[LearnedFigure]) -> tuple[OwnFigures, ...]:
    own = {one.place: one for one in family.own_figures}
    for figure in figures:
        if figure.place:
            before = own.get(figure.place, OwnFigures(place=figure.place))
            told = f"{figure.told_by}; without them {figure.usual:f} min"
            own[figure.place] = before.model_copy(update={"stay_minutes": int(figure.own), "stay_from": told})
    return tuple(own.values())


# --- fuel -------------------------------------------------------------------------------------------------

CONSUMPTION = "what the car uses"


def _fuel(car: Car | None, entries: Sequence[LogbookEntry]) -> Iterator[LearnedFigure]:
    """Consumption of the car, learned as its logarithm per 100 km; mpg is its inverse."""
    if car is None or car.consumption is None:
        return
    by_distance = car.fuel is not Fuel.MILES_PER_US_GALLON

    def turned(figure: float) -> float:
        """From the car's unit to litres (or kWh) per 100 km, and back."""
        return figure if by_distance else float(litres_per_100_km(Decimal(str(figure))))

    seen = [used for entry in entries if (used := _used_per_100_km(entry, car.fuel)) is not None]
    if not seen:
        return
    usual = car.consumption
    belief = _FUEL.about(math.log(turned(float(usual)))).after([math.log(used) for used in seen])
    ends = sorted(turned(math.exp(belief.mean_at(chance))) for chance in (0.05, 0.95))
    own = turned(math.exp(belief.mean))
    yield _figure(
        Learnable.FUEL, CONSUMPTION, car.fuel.value, usual, own, ends, len(seen), _last(len(seen)), "0.1"
    )


def _used_per_100_km(entry: LogbookEntry, fuel: Fuel) -> float | None:
    """Litres or kWh per 100 km of one outing, where both were noted in a unit that fits the car."""
    if entry.fuel is None or not entry.km_driven:
        return None
    electric = fuel is Fuel.KWH_PER_100_KM
    if (entry.fuel.unit == "kWh") != electric:
        return None
    amount = entry.fuel.amount * (LITRES_PER_US_GALLON if entry.fuel.unit == "US gal" else 1)
    return float(amount) / entry.km_driven * 100


# --- food -------------------------------------------------------------------------------------------------

_MEALS: Mapping[str, tuple[str, str]] = {
    "packed": ("packed_adult", "packed_child"),
    "bought": ("bought_adult", "bought_child"),
}


def _food(household: Household, entries: Sequence[LogbookEntry]) -> Iterator[LearnedFigure]:
    """What a meal costs, as a factor on the household's figures for grown-ups and children alike."""
    for way, names in _MEALS.items():
        factors = [factor for entry in entries if (factor := _food_factor(household, entry, way)) is not None]
        if not factors:
            continue
        belief = _FOOD.about(0.0).after([math.log(factor) for factor in factors])
        factor = math.exp(belief.mean)
        ends = [math.exp(belief.mean_at(chance)) for chance in (0.05, 0.95)]
        for who, name in zip(("an adult", "a child"), names, strict=True):
            usual: Decimal = getattr(household.food, name)
            own = Money(usual * Decimal(str(factor)), household.currency).rounded().amount
            yield LearnedFigure(
                Learnable.FOOD,
                f"{who}'s {way} meal",
                household.currency,
                usual,
                own,
                Range(
                    min(ends[0] * float(usual), float(own)),
                    float(own),
                    max(ends[1] * float(usual), float(own)),
                ),
                len(factors),
                _last(len(factors)),
            )


def _food_factor(household: Household, entry: LogbookEntry, way: str) -> float | None:
    """How many times the household's figure one meal cost; None where the entry does not tell."""
    paid = entry.paid_for("food")
    if entry.food != way or paid is None or not paid.amount or entry.currency != household.currency:
        return None
    party = [member for member in household.members if member.name in entry.party]
    expected = meal_price(household, party, entry.day, bought=way == "bought")
    return float(paid.amount / expected.amount) if expected.amount else None


# --- getting off ------------------------------------------------------------------------------------------

USUAL_DELAY, LATE_DELAY = "how late we get off on a usual day", "how late on one day in ten"


def _delays(household: Household, entries: Sequence[LogbookEntry]) -> Iterator[LearnedFigure]:
    """Usual and one-in-ten delay, by the shifted lognormal of `day.delays`.

    The delay and five minutes together are lognormal; whoever left early counts as on time. The prior's
    spread is that which the household's two figures imply. The usual delay is the middle of the mean's
    posterior, the one-in-ten delay the 90 % point of the next departure.
    """
    habits = household.habits
    usual, late = habits.usual_delay_minutes, habits.late_one_day_in_ten_minutes
    seen = [
        max(0, delay)
        for entry in entries
        if entry.as_planned is not None
        and (delay := minutes_between(entry.as_planned.wheels_turn, entry.moments.left_home)) is not None
    ]
    if not seen:
        return
    middle = math.log(usual + EARLY_BY_MINUTES)
    spread = (math.log(late + EARLY_BY_MINUTES) - middle) / _ONE_IN_TEN
    prior = Belief(middle, max(spread, _SMALLEST_SPREAD), _DELAY_WORTH, _DELAY_WORTH)
    belief = prior.after([math.log(delay + EARLY_BY_MINUTES) for delay in seen])

    def minutes(logarithm: float, most: int) -> float:
        return min(max(math.exp(logarithm) - EARLY_BY_MINUTES, 0.0), most)

    own = round(minutes(belief.mean, 180))
    ends = [minutes(belief.mean_at(chance), 180) for chance in (0.05, 0.95)]
    told = _last(len(seen))
    yield _figure(Learnable.DELAYS, USUAL_DELAY, "min", Decimal(usual), own, ends, len(seen), told, "1")
    one_in_ten = max(own, round(minutes(belief.next_one(0.9), 360)))
    lower, upper = (
        minutes(point + belief.next_one(0.9) - belief.mean, 360)
        for point in (belief.mean_at(0.05), belief.mean_at(0.95))
    )
    yield _figure(
        Learnable.DELAYS, LATE_DELAY, "min", Decimal(late), one_in_ten, [lower, upper], len(seen), told, "1"
    )


_ONE_IN_TEN = 1.2815515655446004
"""The 90 % point of the standard normal distribution."""
_SMALLEST_SPREAD = 0.05
"""A family that says it always leaves as late still may be surprised [ln]."""


# --- stays ------------------------------------------------------------------------------------------------


def _stays(family: Family, entries: Sequence[LogbookEntry]) -> Iterator[LearnedFigure]:
    """How long the family stays, place by place, as a factor on the card's comfortable stay.

    Two levels: all stays at places of a kind (indoors, outdoors, both) move the kind's factor; the stays at
    one place then move that place's own factor, which starts from the kind's as the other places tell it.
    """
    factors: dict[str, list[float]] = defaultdict(list)
    cards = {place.id: place for place in family.places}
    for entry in entries:
        card = cards.get(entry.place or "")
        stay = entry.moments.stay_minutes
        if card is not None and stay is not None and stay >= SHORTEST_STAY and card.visit.comfortable_minutes:
            factors[card.id].append(math.log(stay / _usual_stay(family, card)))
    for place in family.places:
        if not place.visit.comfortable_minutes:
            continue
        here = factors.get(place.id, [])
        elsewhere = [
            factor
            for other, seen in factors.items()
            if other != place.id and cards[other].visit.indoors == place.visit.indoors
            for factor in seen
        ]
        if not here and not elsewhere:
            continue
        kind = _KIND.about(0.0).after(elsewhere)
        belief = _STAY.about(kind.mean).after(here)
        usual = _usual_stay(family, place)

        def minutes(logarithm: float, usual: int = usual) -> float:
            return min(max(usual * math.exp(logarithm), SHORTEST_STAY), 24 * 60)

        own = _ROUND_TO * round(minutes(belief.mean) / _ROUND_TO)
        ends = [minutes(belief.mean_at(chance)) for chance in (0.05, 0.95)]
        yield _figure(
            Learnable.STAYS,
            f"how long we stay at {place.name}",
            "min",
            Decimal(usual),
            own,
            ends,
            len(here) or len(elsewhere),
            _stays_told(len(here), len(elsewhere), _KINDS[place.visit.indoors]),
            "1",
            place.id,
        )


_KINDS = {
    "indoors": "indoor places",
    "outdoors": "outdoor places",
    "both": "places that are both indoors and out",
}


def _usual_stay(family: Family, place: Place) -> int:
    own = family.own_figures_for(place.id)
    typed = own.stay_minutes if own else None
    return typed or place.visit.comfortable_minutes


def _stays_told(here: int, elsewhere: int, kind: str) -> str:
    there = "from your last stay there" if here == 1 else f"from your last {here} stays there"
    others = f"{elsewhere} at other {kind}" if here else f"from your last {elsewhere} stays at {kind}"
    if not here:
        return others if elsewhere > 1 else f"from your last stay at {kind}"
    return f"{there} and {others}" if elsewhere else there


# --- weather ----------------------------------------------------------------------------------------------


def _weather(household: Household, entries: Sequence[LogbookEntry]) -> Iterator[LearnedFigure]:
    """What an hour in cold, heat and wet weighs; see `weather_learning`."""
    for one in learned_worths(household, entries):
        low, high = min(one.ends[0], float(one.own)), max(one.ends[1], float(one.own))
        yield LearnedFigure(
            Learnable.WEATHER,
            one.label,
            household.currency,
            one.usual,
            one.own,
            Range(low, float(one.own), high),
            one.outings,
            _last(one.outings),
            field=one.field,
        )


# --- what they have in common -----------------------------------------------------------------------------


def _last(count: int) -> str:
    return "from your last outing" if count == 1 else f"from your last {count} outings"


def _figure(
    what: Learnable,
    label: str,
    unit: str,
    usual: Decimal,
    own: float,
    ends: Sequence[float],
    outings: int,
    told_by: str,
    step: str,
    place: str = "",
) -> LearnedFigure:
    """A figure rounded to a step, its range never short of it."""
    rounded = Decimal(str(own)).quantize(Decimal(step))
    low, high = min(ends[0], float(rounded)), max(ends[1], float(rounded))
    return LearnedFigure(
        what, label, unit, usual, rounded, Range(low, float(rounded), high), outings, told_by, place
    )
