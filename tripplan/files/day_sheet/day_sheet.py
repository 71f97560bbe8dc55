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
from tripplan.language.sentences import said, say, told
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
        SheetSection("times", say("sheet-when"), tuple(_times(outing, household, entries))),
        SheetSection("place", say("sheet-where"), tuple(_place(outing))),
        SheetSection("weather", say("sheet-weather"), tuple(_weather(outing))),
        SheetSection("tickets", say("sheet-tickets"), tuple(_tickets(outing, entries))),
        SheetSection("emergency", say("sheet-emergency"), tuple(_emergency(outing, entries))),
        SheetSection(
            "packing", say("sheet-packing"), tuple(_packing(outing, household, entries)), ticked_off=True
        ),
        SheetSection("steps", say("sheet-steps"), tuple(_steps(outing))),
        SheetSection("naps", say("sheet-naps"), tuple(_naps(outing))),
        SheetSection("needs", say("sheet-needs"), tuple(_needs(outing, entries))),
        SheetSection(
            "cautions", say("sheet-cautions"), tuple(SheetLine(text, POINT) for text in told(outing.cautions))
        ),
        SheetSection("questions", say("sheet-questions"), tuple(_questions(outing, entries))),
    )
    return DaySheet(
        title=_tidy(outing.place.name),
        day=wording.day(outing.day),
        going=_tidy(_going(outing.party, born=entries.ticked.birth_dates)),
        notice=_tidy(notice),
        sections=tuple(_tidied(section) for section in sections if section.lines),
        closing=f"{drive_source(outing)} {say('sheet-last-word')}",
    )


def _tidy(text: str) -> str:
    line = one_line(text)
    return line if len(line) <= LONGEST_LINE else f"{line[:LONGEST_LINE]} …"


def _tidied(section: SheetSection) -> SheetSection:
    lines = tuple(SheetLine(_tidy(line.text), _tidy(line.lead), line.dial) for line in section.lines)
    return SheetSection(section.name, section.heading, lines, section.ticked_off)


def _going(party: tuple[Member, ...], *, born: bool) -> str:
    return wording.listed(
        [say("sheet-born", name=m.name, born=str(m.born)) if born else m.name for m in party]
    )


def clock_of(plan: DayPlan) -> Callable[[datetime], str]:
    """How a plan's moments are written: with their zone where home and place have different clocks."""
    if plan.leave_home.utcoffset() == plan.enter.utcoffset() == plan.home.utcoffset():
        return wording.clock
    return lambda moment: f"{wording.clock(moment)} {moment.tzname()}"


def _times(outing: Outing, household: Household, entries: SheetEntries) -> Iterator[SheetLine]:
    plan, at = outing.plan, clock_of(outing.plan)
    leaving = say("sheet-load-up")
    if entries.ticked.home_address:
        leaving = say("sheet-load-up-home", address=address_of(household.home))
    window = next((w for w in outing.search.windows if w.first <= plan.leave_home <= w.last), None)
    if window is not None and window.first < window.last:
        leaving = say("sheet-about-as-good", what=leaving, first=at(window.first), last=at(window.last))
    yield SheetLine(leaving, at(plan.leave_home))
    yield SheetLine(say("sheet-drive-off"), at(plan.drive_off))
    there = [step for step in plan.steps if step.end <= plan.enter]
    drives = [step for step in there if step.kind is StepKind.DRIVE]
    lines = [(step.end, say("sheet-arrive")) for step in drives[-1:]]
    slot = plan.enter in outing.hours.entry_times
    lines.append((plan.enter, say("sheet-entry-slot") if slot else say("sheet-go-in")))
    lines += [
        (step.start, wording.capital(step.label.text)) for step in plan.steps if step.kind is StepKind.LUNCH
    ]
    for show in plan.shows:
        if show.seen is not None:
            lines.append((show.seen[0], say("sheet-show", name=show.name, end=at(show.seen[1]))))
    lines.append((plan.leave_place, say("sheet-leave")))
    yield from (SheetLine(words, at(start)) for start, words in sorted(lines, key=itemgetter(0)))
    yield SheetLine(say("sheet-home-again"), at(plan.home))


def address_of(where: Where) -> str:
    """Where a letter would go, on one line."""
    town = " ".join(filter(None, (where.town, where.subdivision, where.postal_code)))
    return ", ".join(filter(None, (where.address, town, where.country)))


def _place(outing: Outing) -> Iterator[SheetLine]:
    place, at = outing.place, clock_of(outing.plan)
    where = place.known_where
    if where is None:
        yield SheetLine(say("sheet-no-address"))
    else:
        point = where.point
        yield SheetLine(f"{address_of(where)} ({point.latitude:.4f}, {point.longitude:.4f})")
        if where.town_only:
            yield SheetLine(TOWN_ONLY)
    if place.telephone.strip():
        yield SheetLine(say("sheet-phone", number=place.telephone), dial=dialled(place.telephone))
    for span in outing.hours.spans:
        opens, closes = at(span.opens), at(span.closes)
        if span.last_entry < span.closes:
            yield SheetLine(say("sheet-open-last", opens=opens, closes=closes, last=at(span.last_entry)))
        else:
            yield SheetLine(say("sheet-open", opens=opens, closes=closes))
    starts = {show.name: show.starts for show in outing.hours.shows}
    for show in outing.plan.shows:
        if show.seen is None:
            missed = tuple(at(start) for start in starts[show.name])
            yield SheetLine(say("sheet-no-time", name=show.name, starts=missed))


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
    yield SheetLine(say("sheet-tickets-total"), at_the_door(outing))
    for booking in entries.bookings:
        yield SheetLine(say("sheet-booking", what=booking.what, number=booking.number))
    if not entries.bookings:
        yield SheetLine(say("sheet-booking-blank"))
    yield from (SheetLine(item_sentence(item)) for item in outing.cost.items if item.kind is CostKind.PARKING)
    yield from (SheetLine(note) for note in outing.admission.notes)
    yield SheetLine(say("sheet-whole-outing", total=total_sentence(outing.cost)))


def _emergency(outing: Outing, entries: SheetEntries) -> Iterator[SheetLine]:
    found = emergency_lines(outing.place, entries.contacts)
    yield from (SheetLine(line.what, line.telephone, dialled(line.telephone)) for line in found)
    if any(line.source == FROM_MEMORY for line in found):
        yield SheetLine(say("today-check-numbers"))


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
        yield SheetLine(say("sheet-step", what=step.label, lasts=lasts), at(step.start))


def _naps(outing: Outing) -> Iterator[SheetLine]:
    yield from map(SheetLine, nap_lines(outing.plan))


def nap_lines(plan: DayPlan) -> Iterator[str]:
    """When and where the usual naps are slept in a plan, one line a child."""
    at = clock_of(plan)
    for member, naps in naps_by_child(plan.naps).items():
        yield say("sheet-nap", name=member, naps="; ".join(_nap(nap, at) for nap in naps))


def _nap(nap: NapOutcome, at: Callable[[datetime], str]) -> str:
    usual, minutes = at(nap.usual_start), wording.minutes(nap.usual_minutes)
    if nap.asleep is None:
        return say("sheet-nap-none", at=usual, minutes=minutes)
    first, last = map(at, nap.asleep)
    where = tuple(place.where for place, _ in nap.kept)
    return say("sheet-nap-slept", at=usual, minutes=minutes, first=first, last=last, where=where)


def _needs(outing: Outing, entries: SheetEntries) -> Iterator[SheetLine]:
    if entries.ticked.needs:
        yield from (SheetLine(f"{m.name}: {m.needs}", POINT) for m in outing.party if m.needs)


def _questions(outing: Outing, entries: SheetEntries) -> Iterator[SheetLine]:
    for number, question in enumerate(questions_for(outing.place, entries.questions), start=1):
        yield SheetLine(question, f"{number}.")
