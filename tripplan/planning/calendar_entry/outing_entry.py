"""Puts a planned outing into the words of a calendar entry; names and the home address only when ticked."""

import re
from collections.abc import Callable, Iterator, Sequence
from datetime import date, datetime

from tripplan.documents.family.household import Household
from tripplan.documents.family.member import Member
from tripplan.documents.outings.planned import EntryTicks, PlanStatus
from tripplan.documents.places.place import Place
from tripplan.documents.where import Point, Where
from tripplan.language import wording
from tripplan.language.sentences import told
from tripplan.planning.calendar_entry.entry import EntryLayout, OutingEntry
from tripplan.planning.calendar_entry.reminders import reminders, to_dos
from tripplan.planning.cost import OutingCost
from tripplan.planning.day import DayPlan, DaySearch, NapOutcome
from tripplan.planning.opening.booking import book_by
from tripplan.planning.outing.outing import Outing
from tripplan.planning.outing.sentences import (
    crowd_sentence,
    item_sentence,
    leaving_sentence,
    naps_by_child,
    price_not_known,
    tickets_known,
    total_sentence,
)
from tripplan.planning.travel.drive import Leg

USUAL_TICKS = EntryTicks()
"""What an entry tells unless the parent ticks otherwise."""


def entry_for_outing(
    outing: Outing,
    household: Household,
    *,
    uid: str,
    ticked: EntryTicks = USUAL_TICKS,
    sequence: int = 0,
    last_modified: datetime | None = None,
    status: PlanStatus = PlanStatus.CONFIRMED,
    moved_from: datetime | None = None,
    withdrawn: tuple[str, ...] = (),
) -> OutingEntry:
    """The calendar entry for an outing.

    Args:
        outing: one place on one day, with its answers.
        household: whose outing it is; gives the unit of distance and, when ticked, the home address.
        uid: see `tripplan.files.calendars.calendar_file.outing_uid`.
        ticked: what the entry tells, and how.
        sequence: how often the entry was changed after it was first handed out.
        last_modified: when the outing was last changed.
        status: how firm it is.
        moved_from: when it would have begun before it was moved.
        withdrawn: as in `OutingEntry`.

    Returns:
        The entry. It never holds a birth date; unless names are ticked, people are 'a child' or 'an adult'.
    """
    plan = outing.plan
    names = ticked.names
    said: Callable[[str], str] = str if names else _without_names(outing.party, outing.day)
    home = household.home if ticked.home_address else None
    last_day = book_by(outing.place, outing.day, (line.name for line in outing.admission.purchases))
    blocks = (
        (household.notice,) if household.invented else (),
        moved_lines(moved_from),
        (_going(outing, names),),
        _times(outing, plan, home),
        _drive(outing.way_there, household.units),
        _naps(plan.naps, names),
        _tickets(outing, ticked.costs),
        _money(outing.cost) if ticked.costs else (),
        _crowd(outing),
        _listed("Good to know", told(outing.notes)),
        _listed("Please mind", told(outing.cautions)),
        ("Times and costs are estimates; the place's own page has the last word on hours and prices.",),
    )
    written = ("\n".join(dict.fromkeys(block)) for block in (tuple(lines) for lines in blocks) if block)
    layout = EntryLayout.PARTS if ticked.in_parts else EntryLayout.WHOLE
    return OutingEntry(
        uid=uid,
        summary=title(outing.place.name, plan.leave_home, layout),
        start=plan.leave_home,
        arrive=plan.enter,
        leave_place=plan.leave_place,
        end=plan.home,
        sequence=sequence,
        last_modified=last_modified,
        status=status,
        location=location_of(outing.place),
        point=point_of(outing.place),
        url=outing.place.web,
        description=said("\n\n".join(written)),
        categories=outing.place.visit.topics,
        reminders=reminders(ticked, plan.leave_home, last_day),
        layout=layout,
        busy=ticked.busy,
        colour=ticked.colour,
        to_dos=to_dos(ticked, outing.place.name, plan.leave_home, last_day),
        withdrawn=withdrawn,
    )


def title(name: str, leave_home: datetime, layout: EntryLayout) -> str:
    """What the entry is called."""
    # One entry for the whole day hides that it begins at home, so the title says when.
    return f"{name} (load up {wording.clock(leave_home)})" if layout is EntryLayout.WHOLE else name


def address(name: str, where: Where) -> str:
    """A location in one line, as far as it is known."""
    return ", ".join(
        part for part in (name, where.address, f"{where.postal_code} {where.town}".strip()) if part
    )


def location_of(place: Place) -> str:
    """Where an entry says that a place is."""
    where = place.known_where
    if where is None:
        return f"{place.name}, address not known yet"
    return f"{address(place.name, where)}{' (town only, add the street)' if where.town_only else ''}"


def point_of(place: Place) -> Point | None:
    """Where a place is on a map; None while nobody knows."""
    return None if place.known_where is None else place.known_where.point


def moved_lines(moved_from: datetime | None) -> tuple[str, ...]:
    """Says of a moved outing when it would have been."""
    if moved_from is None:
        return ()
    return (
        f"Moved: it was planned for {wording.day(moved_from)}, loading up at {wording.clock(moved_from)}.",
    )


_SOMEBODY = "an adult|a child"
_SEVERAL = re.compile(rf"(?:{_SOMEBODY})(?:(?:, | and )(?:{_SOMEBODY}))+")
_FIRST_OF_SENTENCE = re.compile(rf"(^(?:- )?|[.!?] )({_SOMEBODY})\b", re.MULTILINE)


def _without_names(party: tuple[Member, ...], day: date) -> Callable[[str], str]:
    """A function that writes 'a child' or '2 adults and a child' wherever names stand."""
    kinds = {member.name: "an adult" if member.is_adult_on(day) else "a child" for member in party}
    longest_first = sorted(kinds, key=len, reverse=True)
    names = re.compile(rf"(?<!\w)(?:{'|'.join(map(re.escape, longest_first))})(?!\w)")

    def unnamed(text: str) -> str:
        kinds_said = names.sub(lambda found: kinds[found[0]], text)
        several_said = _SEVERAL.sub(
            lambda run: _people(run[0].count("an adult"), run[0].count("a child")), kinds_said
        )
        return _FIRST_OF_SENTENCE.sub(lambda found: f"{found[1]}{found[2].capitalize()}", several_said)

    return unnamed


def _people(adults: int, children: int) -> str:
    counts = ((adults, "adult", "adults"), (children, "child", "children"))
    return wording.listed([wording.counted(n, one, many) for n, one, many in counts if n])


def _going(outing: Outing, include_names: bool) -> str:
    if include_names:
        return f"Going: {wording.listed([member.name for member in outing.party])}."
    adults = sum(member.is_adult_on(outing.day) for member in outing.party)
    return f"Going: {_people(adults, len(outing.party) - adults)}."


def _times(outing: Outing, plan: DayPlan, home: Where | None) -> Iterator[str]:
    clocks_differ = plan.leave_home.utcoffset() != plan.enter.utcoffset()

    def at(moment: datetime) -> str:
        return f"{wording.clock(moment)} {moment.tzname()}" if clocks_differ else wording.clock(moment)

    leaving = leaving_sentence(plan, at)
    start = f" from {address('', home)}" if home is not None else ""
    yield f"{wording.capital(leaving)}{start}."
    span = _leave_span(outing.search, plan)
    if span is not None:
        yield f"Any time from {at(span[0])} to {at(span[1])} is about as good."
    yield f"Go in about {at(plan.enter)}, set out for home about {at(plan.leave_place)}."
    yield f"Home again about {at(plan.home)}."


def _leave_span(search: DaySearch, plan: DayPlan) -> tuple[datetime, datetime] | None:
    for window in search.windows:
        if window.first <= plan.leave_home <= window.last and window.first < window.last:
            return window.first, window.last
    return None


def _drive(leg: Leg, units: str) -> Iterator[str]:
    drive = leg.drive
    length = wording.distance_range(drive.km, units)
    yield f"Drive, one way: {length}, {wording.minutes_range(drive.minutes)} ({drive.known_by})."
    if drive.source.credit:
        yield f"The way: {drive.source.credit}."
    if leg.rests:
        resting = sum(rest.minutes for rest in leg.rests)
        stops = f"{len(leg.rests)} rests" if len(leg.rests) > 1 else "one rest"
        yield f"Planned on the way: {stops}, {wording.minutes(resting)}."
    # What a stop is for may name somebody, and the calendar may be seen by anybody.
    if leg.stops:
        stopping = wording.minutes(sum(stop.minutes for stop in leg.stops))
        many = f"{len(leg.stops)} other stops" if len(leg.stops) > 1 else "one other stop"
        yield f"Also planned on the way: {many}, {stopping}."


def _naps(naps: tuple[NapOutcome, ...], include_names: bool) -> Iterator[str]:
    for member, of_child in naps_by_child(naps).items():
        nap = "naps" if len(of_child) > 1 else "nap"
        whose = f"{member}'s {nap}" if include_names else nap.capitalize()
        where = wording.listed(
            [
                f"{wording.minutes(count)} {place.where}"
                for one in of_child
                for place, count in one.kept
                if count
            ]
        )
        kept, usual = (sum(minutes) for minutes in zip(*_minutes(of_child), strict=True))
        said = f"{whose}: {wording.minutes(kept)} of {wording.minutes(usual)} kept"
        yield f"{said} ({where})." if where else f"{said}."


def _minutes(naps: Sequence[NapOutcome]) -> Iterator[tuple[int, int]]:
    """Kept and usual minutes of each nap [min]."""
    yield from ((nap.kept_minutes, nap.usual_minutes) for nap in naps)


def _tickets(outing: Outing, costs: bool) -> Iterator[str]:
    admission = outing.admission
    if not tickets_known(outing.place):
        yield f"To buy: {price_not_known()}."
        return
    yield f"To buy, {wording.money(admission.total)} in all:" if costs else "To buy:"
    for line in admission.purchases:
        yield f"- {line.quantity} x {line.name}" + (f", {wording.money(line.total)}" if costs else "")
    yield from admission.notes


def _money(cost: OutingCost) -> Iterator[str]:
    yield f"Cost in all: {total_sentence(cost)}."
    for item in cost.items:
        if item.amount is not None:
            yield f"- {item_sentence(item)}"
    if cost.unknown:
        yield f"Not known and not counted: {wording.listed(told(cost.unknown))}."


def _crowd(outing: Outing) -> Iterator[str]:
    yield f"Crowds: {crowd_sentence(outing.crowd)}."


def _listed(heading: str, lines: tuple[str, ...]) -> Iterator[str]:
    if lines:
        yield f"{heading}:"
        yield from (f"- {line}" for line in lines)
