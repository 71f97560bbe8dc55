"""What a hassle is worth to the parent."""

from decimal import Decimal
from typing import Annotated

from tripplan.documents.field_spec import FieldSpec
from tripplan.documents.model import Written
from tripplan.documents.written_money import Price


class Worth(Written):
    """What a hassle is worth to this parent, so that days can be weighed against money."""

    lost_nap_hour: Annotated[Price, FieldSpec("An hour of a child's nap lost")] = Decimal("12.00")
    """Paying this much to save one hour of a child's nap would be fair."""
    full_house: Annotated[Price, FieldSpec("A day that is certainly crowded")] = Decimal("20.00")
    """Paying this much to avoid a day that is certainly among the busiest would be fair."""
    hour_in_car: Annotated[Price, FieldSpec("An hour in the car")] = Decimal("6.00")
    """Paying this much to spend an hour less in the car would be fair."""
    hour_early_departure: Annotated[
        Price,
        FieldSpec(
            "Leaving home an hour earlier than a good hour",
            help="What a good hour to leave home is stands with how you travel.",
        ),
    ] = Decimal("6.00")
    """Paying this much to leave home an hour later, up to `habits.usual_departure`, would be fair. Common
    practice, no source."""
    missed_hour_there: Annotated[Price, FieldSpec("An hour too short at the place")] = Decimal("10.00")
    """Paying this much for an hour more at the place, up to a comfortable stay, would be fair."""
    hour_beyond_comfortable: Annotated[
        Price,
        FieldSpec(
            "An hour there after the comfortable stay is over",
            help="A small amount, so that nobody is kept longer than need be.",
        ),
    ] = Decimal("2.00")
    """Paying this much to be back an hour earlier once the comfortable stay is over would be fair: everybody
    is tired by then. Common practice, no source."""
    hour_late_lunch: Annotated[Price, FieldSpec("Lunch on an outing an hour later than usual")] = Decimal(
        "6.00"
    )
    """Paying this much to eat an hour earlier would be fair, where lunch on an outing comes after its usual
    time. Common practice, no source."""
    hour_early_lunch: Annotated[Price, FieldSpec("Lunch on an outing an hour earlier than usual")] = Decimal(
        "6.00"
    )
    """Paying this much to eat an hour later would be fair, where lunch on an outing comes before its usual
    time. Common practice, no source."""
    missed_entry: Annotated[
        Price,
        FieldSpec(
            "Coming too late for a timed entry, or for the last one",
            help="Its chance weighs a share of it, so the plan leaves as much time to spare as that is"
            " worth.",
        ),
    ] = Decimal("30.00")
    """Paying this much not to come too late for a timed entry, or for the last one, would be fair; its
    chance weighs a share of it."""
    missed_show: Annotated[Price, FieldSpec("Missing a show you want to see")] = Decimal("10.00")
    """Paying this much to see a show that is worth being there for would be fair."""
    hour_past_bedtime: Annotated[Price, FieldSpec("An hour on the road after the first bedtime")] = Decimal(
        "12.00"
    )
    """Paying this much to be home an hour less after the first bedtime would be fair."""
    hour_past_home_by: Annotated[
        Price,
        FieldSpec(
            "An hour later home than the time you set",
            help="Every plan is home by then if nothing goes wrong. The chance that something does "
            "weighs, so the plan leaves as much time to spare as that is worth.",
        ),
    ] = Decimal("30.00")
    """Paying this much to be home an hour less after `home_by` would be fair. Every plan is home by then if
    nothing goes wrong; this is for the days on which something does. At three times a missed hour at the
    place, a stay is cut short until the family is home in time on two days of three. Common practice, no
    source."""
    hour_among_classes: Annotated[Price, FieldSpec("An hour there while school classes fill the place")] = (
        Decimal("4.00")
    )
    """Paying this much to spend an hour less at the place while school classes fill it would be fair."""
    quiet_hour: Annotated[
        Price, FieldSpec("An hour of a place's quiet time that you miss", help="Usually nothing.")
    ] = Decimal(0)
    """Paying this much to spend an hour of a place's quiet time there would be fair."""
    hour_in_the_cold: Annotated[
        Price,
        FieldSpec(
            "An hour outdoors in the cold",
            help="When it feels like 15 °F (-9 °C). Half as much at 30 °F (-1 °C), nothing from 50 °F "
            "(10 °C) on, twice as much at 0 °F (-18 °C); more for children under three.",
        ),
    ] = Decimal("12.00")
    """Paying this much to spend an hour less outdoors would be fair when it feels like 15 °F (-9 °C); half as
    much at 30 °F, nothing from 50 °F on, twice as much at 0 °F. Common practice, no source."""
    hour_in_the_heat: Annotated[
        Price,
        FieldSpec(
            "An hour outdoors in the heat",
            help="When it feels like 100 °F (38 °C). Half as much at 90 °F (32 °C), nothing up to 80 °F "
            "(27 °C), twice as much at 110 °F (43 °C); more for children under three.",
        ),
    ] = Decimal("12.00")
    """Paying this much to spend an hour less outdoors would be fair when it feels like 100 °F (38 °C); half
    as much at 90 °F, nothing up to 80 °F, twice as much at 110 °F. Common practice, no source."""
    hour_in_the_wet: Annotated[Price, FieldSpec("An hour outdoors on a day with rain or snow")] = Decimal(
        "6.00"
    )
    """Paying this much to spend an hour less outdoors on a day with rain or snow would be fair; its chance
    weighs a share of it. Common practice, no source."""
    hour_past_patience: Annotated[
        Price,
        FieldSpec(
            "An hour of driving longer at a stretch than the children bear",
            help="How long each of them bears stands with the people.",
        ),
    ] = Decimal("12.00")
    """Paying this much to drive an hour less at a stretch than the children bear would be fair."""
