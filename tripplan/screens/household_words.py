"""What the fields of a household are called on the screen, and in which forms they stand."""

from dataclasses import dataclass
from datetime import time

from tripplan.planning.household import Fuel
from tripplan.screens.where_form import where_labels


@dataclass(frozen=True)
class Field:
    """One field of a form.

    Attributes:
        path: where it stands in the household, with dots.
        label: what it is called.
        explained: a word of help; may be empty.
        clock: whether it is a time of day.
    """

    path: str
    label: str
    explained: str = ""
    clock: bool = False


@dataclass(frozen=True)
class Section:
    """Some fields that are saved together.

    Attributes:
        name: names the form.
        title: its heading.
        lead: a sentence above the fields.
        fields: in order.
    """

    name: str
    title: str
    lead: str
    fields: tuple[Field, ...]


FOOD = (
    Field("food.packed_adult", "Packed at home, for an adult"),
    Field("food.packed_child", "Packed at home, for a child"),
    Field("food.bought_adult", "Bought there, for an adult"),
    Field("food.bought_child", "Bought there, for a child"),
    Field("food.free_under_months", "Children under this age eat along, in months"),
)

SECTIONS = (
    Section(
        "habits",
        "How you travel",
        "Rests, lunch and the earliest start that suits your family. No more than two hours of driving "
        "without a rest is advised.",
        (
            Field("habits.earliest_departure", "Nobody leaves before", clock=True),
            Field("habits.home_by", "Everybody is home by", clock=True),
            Field(
                "habits.load_up_minutes",
                "Minutes from 'shoes on' to driving off",
                "Left empty, it goes by the number of small children.",
            ),
            Field("habits.drive_at_most_minutes", "Longest stretch of driving, in minutes"),
            Field("habits.rest_minutes", "Length of a rest, in minutes"),
            Field(
                "habits.detour_percent",
                "Extra driving on the way, in percent",
                "A petrol station, a wrong turn, grandmother's house.",
            ),
            Field("habits.lunch", "Everybody gets hungry at", clock=True),
            Field("habits.lunch_minutes", "Lunch takes, in minutes"),
        ),
    ),
    Section(
        "worth",
        "What a nuisance is worth to you",
        "With these, days are weighed against money: what would you gladly pay to be spared each of them? "
        "They change the order of the days, never the cost.",
        (
            Field("worth.lost_nap_hour", "An hour of a child's nap lost"),
            Field("worth.full_house", "A day that is certainly crowded"),
            Field("worth.hour_in_car", "An hour in the car"),
            Field("worth.missed_hour_there", "An hour too short at the place"),
        ),
    ),
    Section(
        "reserve",
        "Reserve and treats",
        "What nobody thought of, and souvenirs you plan for.",
        (
            Field("reserve_percent", "Reserve, in percent of the rest"),
            Field("treats_per_child", "Treats for each child"),
        ),
    ),
)

FUELS = {
    Fuel.MILES_PER_US_GALLON: "miles per US gallon",
    Fuel.LITRES_PER_100_KM: "litres per 100 km",
    Fuel.KWH_PER_100_KM: "kWh per 100 km",
    Fuel.RATE_PER_MILE: "a rate per mile",
    Fuel.RATE_PER_KM: "a rate per km",
}
RATES = (Fuel.RATE_PER_MILE, Fuel.RATE_PER_KM)

CAR = (
    Field("car.name", "What you call it"),
    Field("car.seats", "Seats with a belt, the driver's included"),
)
CONSUMPTION = (
    Field("car.consumption", "Consumption", "In the unit chosen above."),
    Field("car.fuel_price", "Price of fuel", "For a US gallon, a litre or a kWh; empty if you do not know."),
    Field("car.fuel_price_give_or_take_percent", "The price may be off by, in percent"),
)
RATE = (Field("car.rate", "Rate per mile or km", "Only for the two kinds of rate."),)

NAP = {
    "start": "usually begins at",
    "minutes": "usual length in minutes",
    "slack_minutes": "minutes it may move either way",
    "falls_asleep_minutes": "minutes to fall asleep in car or pushchair",
    "shortest_minutes": "shortest sleep that counts, in minutes",
    "in_car": "sleeps in the moving car",
    "in_pushchair": "sleeps in pushchair or carrier",
}
NEW_NAP: dict[str, str | bool | time] = {
    "start": time(12, 30),
    "minutes": "90",
    "slack_minutes": "30",
    "falls_asleep_minutes": "10",
    "shortest_minutes": "20",
    "in_car": True,
    "in_pushchair": False,
}

LABELS = {
    "name": "Name of the household",
    "currency": "Currency",
    "units": "Distances in",
    "members": "People",
    "members.name": "Name",
    "members.born": "Birth date",
    "members.statuses": "What may change a ticket's price",
    "members.wakes": "Usually wakes at",
    "members.bed": "In bed by",
    "members.needs": "What to think of",
    "members.naps": "Nap",
    **{f"members.naps.{name}": label for name, label in NAP.items()},
    "car": "Car",
    "car.fuel": "How its running cost is given",
    "passes": "Pass",
    "passes.holders": "Who it is written out to",
    "passes.valid_until": "Until which day it counts",
    "food.way": "Food on the way",
    **where_labels("home"),
    "home": "Home",
    **{field.path: field.label for field in (*FOOD, *CAR, *CONSUMPTION, *RATE)},
    **{field.path: field.label for section in SECTIONS for field in section.fields},
}
"""What a field is called, by its path in the household without indices."""
