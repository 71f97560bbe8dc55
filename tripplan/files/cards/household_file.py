"""The household's file: the one format in which a family is saved, moved and loaded again."""

from collections.abc import Iterator
from datetime import date, time
from decimal import Decimal
from functools import partial
from itertools import pairwise
from pathlib import Path
from typing import Any

from tripplan.documents.family.car import Fuel
from tripplan.documents.family.household import Household
from tripplan.documents.family.member import Member, Nap
from tripplan.errors import Finding, Weight
from tripplan.files.locations.gazetteer import NotFound, locate
from tripplan.files.toml.form_schema import schema_of
from tripplan.files.toml.reading_result import ReadResult
from tripplan.files.toml.toml_text import shown
from tripplan.files.toml.written import Rule, form_text, read_form, start_of_file
from tripplan.values.clocks import minute_of_day

OLDEST_YEARS = 122
"""The longest human life on record [years]. Source: J. Calment, 1875-1997; from memory."""
_DAY = 24 * 60
_USUAL = {
    Fuel.MILES_PER_US_GALLON: (Decimal(8), Decimal(150)),
    Fuel.LITRES_PER_100_KM: (Decimal(1), Decimal(30)),
    Fuel.KWH_PER_100_KM: (Decimal(8), Decimal(60)),
}
"""What cars use; whoever says something else is asked. Common practice, no source."""
_LIKE_DOLLARS = ("USD", "EUR", "GBP", "CHF", "CAD", "AUD", "NZD")
"""Currencies in which a unit of fuel costs a few units of money."""
_CHEAPEST_FUEL, _DEAREST_FUEL = Decimal("0.05"), Decimal(20)
"""Per kWh, liter or US gallon. Common practice, no source."""


def read_household(source: str | bytes, file: str, today: date) -> ReadResult[Household]:
    """Read a household and find every fault in one go.

    Args:
        source: TOML text, or a file's bytes.
        file: what findings call it.
        today: against which births and passes are told.

    Returns:
        The household, with its home's coordinates and time zone filled in, and warnings; or every fault.
    """
    rules: tuple[Rule[Household], ...] = (
        home_findings,
        partial(birth_findings, today=today),
        nap_findings,
        car_findings,
        partial(pass_findings, today=today),
    )
    return read_form(source, file, Household, rules).map(_located)


def load_household(path: Path, today: date) -> ReadResult[Household]:
    """Read the household in a file."""
    try:
        source = start_of_file(path)
    except OSError as unreadable:
        return ReadResult(None, (Finding(path.name, "", "", f"cannot be opened: {unreadable.strerror}"),))
    return read_household(source, path.name, today)


def write_household(household: Household) -> str:
    """A household as TOML, without what it leaves at its default; reading it gives the same household."""
    return form_text(household)


def household_schema() -> dict[str, Any]:
    """The JSON schema of a household file (draft 2020-12), with each field's description."""
    return schema_of(Household, "Household")


def home_findings(household: Household, file: str) -> Iterator[Finding]:
    """A home that cannot be put on the map."""
    found = locate(household.home)
    if isinstance(found, NotFound):
        value = shown(getattr(household.home, found.field))
        yield Finding(file, f"home.{found.field}", value, found.message)


def birth_findings(household: Household, file: str, today: date) -> Iterator[Finding]:
    """Births to come or too long ago, and a household without an adult."""
    for index, member in enumerate(household.members):
        born, field = member.born, f"members[{index}].born"
        if born.earliest > today:
            yield Finding(file, field, str(born), f"lies in the future (today is {today})")
        elif today.year - born.year > OLDEST_YEARS:
            message = f"nobody is older than {OLDEST_YEARS} years; is the year right?"
            yield Finding(file, field, str(born), message, Weight.WARNING)
    if not any(member.is_adult_on(today) for member in household.members):
        message = "no member is 18 or older; somebody has to drive and to answer for the children"
        yield Finding(file, "members", "", message, Weight.WARNING)


def nap_findings(household: Household, file: str) -> Iterator[Finding]:
    """Naps in the night, naps that run past bedtime, naps that overlap."""
    for index, member in enumerate(household.members):
        for turn, nap in enumerate(member.naps):
            yield from _night_findings(member, nap, file, f"members[{index}].naps[{turn}]")
        spans = [_nap_span(member, nap) for nap in member.naps]
        for turn, ((_, ends), (starts, _)) in enumerate(pairwise(spans), start=1):
            if starts < ends:
                value = f"{member.naps[turn].start:%H:%M}"
                message = "begins before the nap listed above it is over"
                yield Finding(file, f"members[{index}].naps[{turn}].start", value, message)


def car_findings(household: Household, file: str) -> Iterator[Finding]:
    """A car with too few seats, or with a figure that hardly any car has."""
    car, people = household.car, len(household.members)
    if car is None:
        return
    if people > car.seats:
        message = f"{car.seats} seats for {people} people: {-(-people // car.seats)} cars?"
        yield Finding(file, "car.seats", str(car.seats), message, Weight.WARNING)
    least, most = _USUAL.get(car.fuel, (Decimal(0), Decimal("Infinity")))
    if car.consumption is not None and not least <= car.consumption <= most:
        message = f"{car.consumption:f} {car.fuel}: is that meant?"
        yield Finding(file, "car.consumption", f"{car.consumption:f}", message, Weight.WARNING)
    price = car.fuel_price if household.currency in _LIKE_DOLLARS else None
    if price is not None and not _CHEAPEST_FUEL <= price <= _DEAREST_FUEL:
        message = f"fuel at {price:f} {household.currency}: is the point in its place?"
        yield Finding(file, "car.fuel_price", f"{price:f}", message, Weight.WARNING)


def pass_findings(household: Household, file: str, today: date) -> Iterator[Finding]:
    """Passes that have run out."""
    for index, held in enumerate(household.passes):
        if held.valid_until < today:
            message = f"this pass ran out (today is {today}); it is not counted any more"
            field = f"passes[{index}].valid_until"
            yield Finding(file, field, str(held.valid_until), message, Weight.WARNING)


def _night_findings(member: Member, nap: Nap, file: str, field: str) -> Iterator[Finding]:
    starts, ends = _nap_span(member, nap)
    bed = _since_waking(member, member.bed) or _DAY
    awake = f"awake from {member.wakes:%H:%M} to {member.bed:%H:%M}"
    if starts >= bed:
        yield Finding(file, f"{field}.start", f"{nap.start:%H:%M}", f"lies in the night: {awake}")
    elif ends > bed:
        message = f"the nap runs past bedtime: {awake}"
        yield Finding(file, f"{field}.minutes", str(nap.minutes), message, Weight.WARNING)


def _nap_span(member: Member, nap: Nap) -> tuple[int, int]:
    starts = _since_waking(member, nap.start)
    return starts, starts + nap.minutes


def _since_waking(member: Member, clock: time) -> int:
    """Minutes from waking up to a time of day, past midnight if need be [min]."""
    return (minute_of_day(clock) - minute_of_day(member.wakes)) % _DAY


def _located(household: Household) -> Household:
    home = locate(household.home)
    return household if isinstance(home, NotFound) else household.model_copy(update={"home": home})
