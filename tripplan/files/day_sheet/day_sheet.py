"""The day sheet: one outing in the words of a single page, before it is drawn as HTML or PDF.

It is made for the family, so names stand on it. It is also a paper that may be left behind, so birth dates,
the home address and noted needs stand on it only where they are ticked.
"""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import datetime
from operator import itemgetter

from tripplan.documents.family.household import Household
from tripplan.documents.family.member import Member
from tripplan.documents.outings.sheet_entries import SheetEntries
from tripplan.documents.where import TOWN_ONLY, Where
from tripplan.language import wording
from tripplan.language.sentences import said, told
from tripplan.planning.day import DayPlan, NapOutcome, StepKind
from tripplan.planning.day_sheet.emergency import FROM_MEMORY, emergency_lines
from tripplan.planning.day_sheet.packing import Trip, packing_list
from tripplan.planning.day_sheet.questions import questions_for
from tripplan.planning.outing.outing import Outing
from tripplan.planning.outing.sentences import (
    at_the_door,
    drive_source,
    item_sentence,
    naps_by_child,
    purchase_sentence,
    tickets_known,
    total_sentence,
)
from tripplan.planning.outing.weather.visit_weather import weather_source, weather_there
from tripplan.values.cost_kind import CostKind
from tripplan.values.plain_text import one_line

LONGEST_LINE = 600
"""A longer text is cut off, so that one careless note does not fill the page [characters]."""

POINT = "•"
"""Before each of several sentences, so that they can be told apart."""


LAST_WORD = (
    "Times and costs are plans and estimates. Local law, the place's own rules, and doctors and other "
    "licensed professionals have the last word."
)

_DIALLED = re.compile(r"[0-9+(][0-9 +()./-]{1,38}[0-9]")


@dataclass(frozen=True)
class SheetLine:
    """One line of a section.

    Attributes:
        text: what it says, on one line.
        lead: what stands out before it: a time, an amount, a telephone number; may be empty.
        dial: a telephone number in the form that is dialled; empty for none.
    """

    text: str
    lead: str = ""
    dial: str = ""


@dataclass(frozen=True)
class SheetSection:
    """A heading with its lines.

    Attributes:
        name: tells it from the others; one word.
        heading: as it is read.
        lines: in order; at least one.
        ticked_off: whether each line has a box to tick.
    """

    name: str
    heading: str
    lines: tuple[SheetLine, ...]
    ticked_off: bool = False


@dataclass(frozen=True)
class DaySheet:
    """What one day sheet says.

    Attributes:
        title: the place.
        day: the day in words.
        going: who goes.
        notice: what must be known of the whole sheet, such as that all is invented; may be empty.
        sections: in the order they are needed on the day.
        closing: where the drive's figures come from, with the credit they need, and who has the last word.
    """

    title: str
    day: str
    going: str
    notice: str
    sections: tuple[SheetSection, ...]
    closing: str


def day_sheet(outing: Outing, household: Household, entries: SheetEntries, *, notice: str = "") -> DaySheet:
    """Put an outing into the words of a day sheet.

    Args:
        outing: one place on one day, with its answers.
        household: whose; gives the home address and how the family eats.
        entries: what the parent wrote for the sheet.
        notice: what must be known of the whole sheet.

    Returns:
        The sheet; sections without a line are left out.
    """
    sections = (
        SheetSection("times", "When", tuple(_times(outing, household, entries))),
        SheetSection("place", "Where", tuple(_place(outing))),
        SheetSection("weather", "Weather there", tuple(_weather(outing))),
        SheetSection("tickets", "Tickets", tuple(_tickets(outing, entries))),
        SheetSection("emergency", "If something happens", tuple(_emergency(outing, entries))),
        SheetSection("packing", "To pack", tuple(_packing(outing, household, entries)), ticked_off=True),
        SheetSection("steps", "Step by step", tuple(_steps(outing))),
        SheetSection("naps", "Naps", tuple(_naps(outing))),
        SheetSection("needs", "Allergies and needs", tuple(_needs(outing, entries))),
        SheetSection(
            "cautions", "Please mind", tuple(SheetLine(text, POINT) for text in told(outing.cautions))
        ),
        SheetSection("questions", "Three questions to take along", tuple(_questions(outing, entries))),
    )
    return DaySheet(
        title=_tidy(outing.place.name),
        day=wording.day(outing.day),
        going=_tidy(_going(outing.party, born=entries.ticked.birth_dates)),
        notice=_tidy(notice),
        sections=tuple(_tidied(section) for section in sections if section.lines),
        closing=f"{drive_source(outing)} {LAST_WORD}",
    )


def _tidy(text: str) -> str:
    line = one_line(text)
    return line if len(line) <= LONGEST_LINE else f"{line[:LONGEST_LINE]} …"


def _tidied(section: SheetSection) -> SheetSection:
    lines = tuple(SheetLine(_tidy(line.text), _tidy(line.lead), line.dial) for line in section.lines)
    return SheetSection(section.name, section.heading, lines, section.ticked_off)


def _going(party: tuple[Member, ...], *, born: bool) -> str:
    return wording.listed([f"{m.name} (born {m.born})" if born else m.name for m in party])


def clock_of(plan: DayPlan) -> Callable[[datetime], str]:
    """How a plan's moments are written: with their zone where home and place have different clocks."""
    if plan.leave_home.utcoffset() == plan.enter.utcoffset() == plan.home.utcoffset():
        return wording.clock
    return lambda moment: f"{wording.clock(moment)} {moment.tzname()}"


def _times(outing: Outing, household: Household, entries: SheetEntries) -> Iterator[SheetLine]:
    plan, at = outing.plan, clock_of(outing.plan)
    leaving = "Load up"
    if entries.ticked.home_address:
        leaving = f"{leaving} at home, {address_of(household.home)}"
    window = next((w for w in outing.search.windows if w.first <= plan.leave_home <= w.last), None)
    if window is not None and window.first < window.last:
        leaving = f"{leaving} (any time from {at(window.first)} to {at(window.last)} is about as good)"
    yield SheetLine(leaving, at(plan.leave_home))
    yield SheetLine("Drive off", at(plan.drive_off))
    there = [step for step in plan.steps if step.end <= plan.enter]
    drives = [step for step in there if step.kind is StepKind.DRIVE]
    lines = [(step.end, "Arrive") for step in drives[-1:]]
    slot = plan.enter in outing.hours.entry_times
    lines.append((plan.enter, "Entry slot: be at the door" if slot else "Go in"))
    lines += [
        (step.start, wording.capital(step.label.text)) for step in plan.steps if step.kind is StepKind.LUNCH
    ]
    for show in plan.shows:
        if show.seen is not None:
            lines.append((show.seen[0], f"{show.name}, until {at(show.seen[1])}"))
    lines.append((plan.leave_place, "Leave the place, load up"))
    yield from (SheetLine(words, at(start)) for start, words in sorted(lines, key=itemgetter(0)))
    yield SheetLine("Home again", at(plan.home))


NO_ADDRESS = "The address is not known yet: ask the place."
"""What stands for the address of an idea that nobody has placed."""


def address_of(where: Where) -> str:
    """Where a letter would go, on one line."""
    town = " ".join(filter(None, (where.town, where.subdivision, where.postal_code)))
    return ", ".join(filter(None, (where.address, town, where.country)))


def _place(outing: Outing) -> Iterator[SheetLine]:
    place, at = outing.place, clock_of(outing.plan)
    where = place.known_where
    if where is None:
        yield SheetLine(NO_ADDRESS)
    else:
        point = where.point
        yield SheetLine(f"{address_of(where)} ({point.latitude:.4f}, {point.longitude:.4f})")
        if where.town_only:
            yield SheetLine(TOWN_ONLY)
    if place.telephone.strip():
        yield SheetLine(f"Phone {place.telephone}", dial=dialled(place.telephone))
    for span in outing.hours.spans:
        last = f", last entry {at(span.last_entry)}" if span.last_entry < span.closes else ""
        yield SheetLine(f"Open {at(span.opens)} to {at(span.closes)}{last}")
    starts = {show.name: show.starts for show in outing.hours.shows}
    for show in outing.plan.shows:
        if show.seen is None:
            missed = wording.listed([at(start) for start in starts[show.name]])
            yield SheetLine(f"{show.name} at {missed}: no time for it in this plan")


def _weather(outing: Outing) -> Iterator[SheetLine]:
    """What it is like there at that time, and how that is known; nothing where nobody knows."""
    if outing.weather is not None:
        yield SheetLine(f"{wording.capital(weather_there(outing.weather).text)}.")
        yield SheetLine(weather_source(outing.weather).text)


def dialled(telephone: str) -> str:
    """A telephone number as it is dialled, such as '+16085550166'; empty where the text is no number."""
    number = telephone.strip()
    if not _DIALLED.fullmatch(number):
        return ""
    return re.sub(r"(?<!^)\+|[^0-9+]", "", number)


def _tickets(outing: Outing, entries: SheetEntries) -> Iterator[SheetLine]:
    if tickets_known(outing.place):
        for purchase in outing.admission.purchases:
            yield SheetLine(purchase_sentence(purchase), wording.money(purchase.total))
    yield SheetLine("in all for the tickets", at_the_door(outing))
    for booking in entries.bookings:
        yield SheetLine(f"Booking number, {booking.what}: {booking.number}")
    if not entries.bookings:
        yield SheetLine("Booking number: ____________________")
    yield from (SheetLine(item_sentence(item)) for item in outing.cost.items if item.kind is CostKind.PARKING)
    yield from (SheetLine(note) for note in outing.admission.notes)
    yield SheetLine(f"The whole outing, drive and food included: {total_sentence(outing.cost)}")


def _emergency(outing: Outing, entries: SheetEntries) -> Iterator[SheetLine]:
    found = emergency_lines(outing.place, entries.contacts)
    yield from (SheetLine(line.what, line.telephone, dialled(line.telephone)) for line in found)
    if any(line.source == FROM_MEMORY for line in found):
        yield SheetLine("Check the emergency and advice numbers before you go.")


def _packing(outing: Outing, household: Household, entries: SheetEntries) -> Iterator[SheetLine]:
    for item in packing_list(trip_of(outing, household), entries.packing):
        yield SheetLine(f"{item.what}: {item.detail}" if item.detail else said(item.what))


def trip_of(outing: Outing, household: Household) -> Trip:
    """What packing needs to know of an outing."""
    plan, weather = outing.plan, outing.weather
    return Trip(
        place=outing.place,
        party=outing.party,
        day=outing.day,
        minutes_out=(plan.home - plan.leave_home).total_seconds() / 60,
        drive_minutes=max(outing.way_there.drive_minutes, outing.way_home.drive_minutes),
        lunch_out=plan.lunch_out,
        lunch_there=plan.lunch_there,
        food=household.food,
        felt_low=weather.felt_low if weather else None,
        felt_high=weather.felt_high if weather else None,
        wet=weather.day.wet if weather else None,
    )


def _steps(outing: Outing) -> Iterator[SheetLine]:
    at = clock_of(outing.plan)
    for step in outing.plan.steps:
        lasts = wording.minutes((step.end - step.start).total_seconds() / 60)
        yield SheetLine(f"{step.label}, {lasts}", at(step.start))


def _naps(outing: Outing) -> Iterator[SheetLine]:
    yield from map(SheetLine, nap_lines(outing.plan))


def nap_lines(plan: DayPlan) -> Iterator[str]:
    """When and where the usual naps are slept in a plan, one line a child."""
    at = clock_of(plan)
    for member, naps in naps_by_child(plan.naps).items():
        yield f"{member}, {'; '.join(_nap(nap, at) for nap in naps)}"


def _nap(nap: NapOutcome, at: Callable[[datetime], str]) -> str:
    usual = f"usually {at(nap.usual_start)} for {wording.minutes(nap.usual_minutes)}"
    if nap.asleep is None:
        return f"{usual}: no room for it on this day"
    first, last = nap.asleep
    where = wording.listed([place.where for place, _ in nap.kept])
    return f"{usual}: asleep about {at(first)} to {at(last)}, {where}"


def _needs(outing: Outing, entries: SheetEntries) -> Iterator[SheetLine]:
    if entries.ticked.needs:
        yield from (SheetLine(f"{m.name}: {m.needs}", POINT) for m in outing.party if m.needs)


def _questions(outing: Outing, entries: SheetEntries) -> Iterator[SheetLine]:
    for number, question in enumerate(questions_for(outing.place, entries.questions), start=1):
        yield SheetLine(question, f"{number}.")
