"""What the fields of a household are called on the screen, and in which forms they stand."""

from dataclasses import dataclass
from datetime import time

from tripplan.planning.car import Fuel
from tripplan.planning.travel.rests import (
    ADVISED_REST_MINUTES,
    ADVISED_STRETCH_MINUTES,
    SMALL_CHILD_STRETCH_MINUTES,
)
from tripplan.screens.widgets.where_form import where_labels


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
    Field(
        "food.packed_from",
        "Where the two figures for packed food come from, and when you looked",
        "Such as 'receipts of November 2026'; empty if they are just your own guess.",
    ),
    Field(
        "food.bought_from",
        "Where the two figures for bought food come from, and when you looked",
        "Such as 'menu of the farm's café, October 2026'; empty if they are just your own guess.",
    ),
    Field("food.free_under_months", "Children under this age eat along, in months"),
)

HABITS = Section(
    "habits",
    "How you travel",
    f"Rests, lunch and the earliest start that suits your family. After {ADVISED_STRETCH_MINUTES} minutes of "
    f"driving a rest of at least {ADVISED_REST_MINUTES} minutes is advised (The Highway Code, Great "
    "Britain, rule 91), and the plan never drives longer without one. With a child under two it rests "
    f"after {SMALL_CHILD_STRETCH_MINUTES} minutes at the latest; small children often need one sooner.",
    (
        Field("habits.earliest_departure", "Nobody leaves before", clock=True),
        Field("habits.home_by", "Everybody is home by", clock=True),
        Field(
            "habits.load_up_minutes",
            "Minutes from 'shoes on' to driving off",
            "Left empty, it goes by the number of small children.",
        ),
        Field(
            "habits.drive_at_most_minutes",
            "Longest stretch of driving, in minutes",
            f"Usually {ADVISED_STRETCH_MINUTES}; with small children stop more often.",
        ),
        Field("habits.rest_minutes", "Length of a rest, in minutes", f"Usually {ADVISED_REST_MINUTES}."),
        Field(
            "habits.detour_percent",
            "Extra driving on the way, in percent",
            "A wrong turn, a look for the entrance; stops are told apart below.",
        ),
        Field("habits.lunch", "Everybody gets hungry at", clock=True),
        Field("habits.lunch_minutes", "Lunch takes, in minutes"),
        Field(
            "habits.awake_before_bed_minutes",
            "A late nap is over before bedtime by, in minutes",
            "So that the child is tired by then; a nap that usually ends later may.",
        ),
        Field(
            "habits.usual_delay_minutes",
            "Usual delay in getting off, in minutes",
            "On half of all days you get off no later than this after the planned minute.",
        ),
        Field(
            "habits.late_one_day_in_ten_minutes",
            "One day in ten, later by more than, in minutes",
            "For the chance to make a timed entry and to be home in time.",
        ),
        Field(
            "habits.delays_from",
            "Where both delays come from, and since when",
            "Such as 'noted at the door since September'; empty if they are just your own guess.",
        ),
    ),
)
WORTH = Section(
    "worth",
    "What a nuisance is worth to you",
    "With these, days are weighed against money: what would you gladly pay to be spared each of them? "
    "They change the order of the days, never the cost.",
    (
        Field("worth.lost_nap_hour", "An hour of a child's nap lost"),
        Field("worth.full_house", "A day that is certainly crowded"),
        Field("worth.hour_in_car", "An hour in the car"),
        Field("worth.missed_hour_there", "An hour too short at the place"),
        Field(
            "worth.hour_beyond_comfortable",
            "An hour there after the comfortable stay is over",
            "A small amount, so that nobody is kept longer than need be.",
        ),
        Field("worth.hour_late_lunch", "Lunch on an outing an hour later than usual"),
        Field(
            "worth.missed_entry",
            "Coming too late for a timed entry, or for the last one",
            "Its chance weighs a share of it, so the plan leaves as much time to spare as that is worth.",
        ),
        Field("worth.missed_show", "Missing a show you want to see"),
        Field(
            "worth.hour_past_home_by",
            "An hour later home than the time you set",
            "Every plan is home by then if nothing goes wrong. The chance that something does weighs, so the "
            "plan leaves as much time to spare as that is worth.",
        ),
        Field("worth.hour_past_bedtime", "An hour on the road after the first bedtime"),
        Field("worth.hour_among_classes", "An hour there while school classes fill the place"),
        Field("worth.quiet_hour", "An hour of a place's quiet time that you miss", "Usually nothing."),
        Field(
            "worth.hour_past_patience",
            "An hour of driving longer at a stretch than the children bear",
            "How long each of them bears stands with the people.",
        ),
    ),
)
RESERVE = Section(
    "reserve",
    "Reserve and treats",
    "What nobody thought of, and souvenirs you plan for.",
    (
        Field("reserve_percent", "Reserve, in percent of the rest"),
        Field("treats_per_child", "Treats for each child"),
    ),
)
SECTIONS = (HABITS, WORTH, RESERVE)

RUSH = {
    "days": "on these days",
    "start": "begin at",
    "end": "are over at",
    "factor": "how many times as long the same road takes",
}
STOPS = {
    "fuel_range_km": "One filling takes you this far",
    "fuel_minutes": "A fuel stop takes, in minutes",
    "pick_up": "Pick-up on the way",
    "pick_up.name": "Who is picked up",
    "pick_up.where": "Where they are picked up",
    "pick_up.extra_km": "Or how much longer it makes the way",
    "pick_up.extra_minutes": "Or how much longer it makes the drive, in minutes",
    "pick_up.stop_minutes": "The stop itself takes, belts and seats included, in minutes",
    "pick_up.brought_home": "They are also brought home",
    "way_back": "What the stop on the way back is for",
    "way_back_minutes": "The stop on the way back takes, in minutes",
}

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
    Field(
        "car.consumption_from",
        "Where the consumption comes from, and when you looked",
        "Such as 'the car's display, November 2026'; empty if it is just your own figure.",
    ),
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
    "stays_asleep_when_moved": "sleeps on when lifted out of the car, into pushchair or bed",
}
NEW_NAP: dict[str, str | bool | time] = {
    "start": time(12, 30),
    "minutes": "90",
    "slack_minutes": "30",
    "falls_asleep_minutes": "10",
    "shortest_minutes": "20",
    "in_car": True,
    "in_pushchair": False,
    "stays_asleep_when_moved": False,
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
    "members.patience_minutes": "Bears driving at a stretch, in minutes",
    "members.toilet_minutes": "Needs a toilet at least every so many minutes",
    "members.naps": "Nap",
    **{f"members.naps.{name}": label for name, label in NAP.items()},
    "car": "Car",
    "car.fuel": "How its running cost is given",
    "passes": "Pass",
    "passes.holders": "Who it is written out to",
    "passes.valid_until": "Until which day it counts",
    "food.way": "Food on the way",
    "habits.rush_hours": "Rush hours",
    **{f"habits.rush_hours.{name}": label for name, label in RUSH.items()},
    **{f"habits.stops.{name}": label for name, label in STOPS.items()},
    **where_labels("home"),
    "home": "Home",
    **{field.path: field.label for field in (*FOOD, *CAR, *CONSUMPTION, *RATE)},
    **{field.path: field.label for section in SECTIONS for field in section.fields},
}
"""What a field is called, by its path in the household without indices."""
