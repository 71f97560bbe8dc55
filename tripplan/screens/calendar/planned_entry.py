"""Planned outings and the calendar entries made of them."""

from collections.abc import Collection
from datetime import datetime

from icalendar import Calendar, Component

from tripplan.files.calendar_file import (
    EntryLayout,
    OutingEntry,
    Reminder,
    calendar_file,
    outing_uid,
    usual_reminders,
)
from tripplan.files.outing_entry import entry_for_outing
from tripplan.planning import wording
from tripplan.planning.household import Household
from tripplan.planning.outing import Outing
from tripplan.planning.place import Place
from tripplan.planning.planned import EntryTicks, PlannedOuting, PlanStatus


def planned_from(
    outing: Outing,
    household: Household,
    ticked: EntryTicks,
    status: PlanStatus,
    *,
    before: PlannedOuting | None,
    ids_taken: Collection[str],
    at: datetime,
) -> PlannedOuting:
    """The planned outing to put on record.

    Args:
        outing: what the parent has settled on.
        household: whose it is; its name is part of what the UID is made from.
        ticked: what the entry tells.
        status: how firm it is.
        before: the planned outing that this one takes the place of; None for a new one.
        ids_taken: ids on record.
        at: now; zone-aware.

    Returns:
        The one before where nothing has changed, else one sequence number later.
    """
    plan = outing.plan
    values: dict[str, object] = {
        "day": outing.day,
        "party": tuple(member.name for member in outing.party),
        "leave_home": plan.leave_home,
        "enter": plan.enter,
        "leave_place": plan.leave_place,
        "home": plan.home,
        "status": status,
        "likely_amount": outing.cost.total.likely.rounded().amount,
        "currency": outing.cost.total.currency,
        "ticked": ticked,
    }
    if before is not None:
        same = all(getattr(before, name) == value for name, value in values.items())
        return before if same else before.changed(at, **values)
    name = f"{outing.place.id}-{outing.day}"
    uid_of = f"{household.name} {outing.place.id} {outing.day}"
    count = 1
    while _numbered(name, count) in ids_taken:
        count += 1
    return PlannedOuting.model_validate(
        {
            **values,
            "id": _numbered(name, count),
            "place": outing.place.id,
            "uid": outing_uid(uid_of if count == 1 else f"{uid_of} {count}"),
            "changed_at": at,
        }
    )


def _numbered(name: str, count: int) -> str:
    return name if count == 1 else f"{name}-{count}"


def entry_of(
    planned: PlannedOuting, household: Household, place: Place | None, outing: Outing | None
) -> OutingEntry:
    """The calendar entry of a planned outing.

    Args:
        planned: as it is on record.
        household: whose it is.
        place: its card, if it is still kept.
        outing: the outing as it would be planned now; it gives the description if it still has the planned
            times, else the entry only says what is on record.
    """
    ticked = planned.ticked
    layout = EntryLayout.PARTS if ticked.in_parts else EntryLayout.WHOLE
    reminders = _reminders(planned)
    if outing is not None and _has_the_times(outing, planned):
        return entry_for_outing(
            outing,
            household,
            uid=planned.uid,
            sequence=planned.sequence,
            last_modified=planned.changed_at,
            status=planned.status,
            layout=layout,
            reminders=reminders,
            include_names=ticked.names,
            include_home=ticked.home_address,
        )
    name = place.name if place else planned.place
    return OutingEntry(
        uid=planned.uid,
        summary=name if ticked.in_parts else f"{name} (leave home {wording.clock(planned.leave_home)})",
        start=planned.leave_home,
        arrive=planned.enter,
        leave_place=planned.leave_place,
        end=planned.home,
        sequence=planned.sequence,
        last_modified=planned.changed_at,
        status=planned.status,
        location=", ".join(filter(None, (place.name, place.where.address, place.where.town)))
        if place
        else "",
        point=place.where.point if place else None,
        url=place.web if place else "",
        description=_on_record_lines(planned),
        reminders=reminders,
        layout=layout,
    )


def _has_the_times(outing: Outing, planned: PlannedOuting) -> bool:
    plan = outing.plan
    return (plan.leave_home, plan.enter, plan.leave_place, plan.home) == (
        planned.leave_home,
        planned.enter,
        planned.leave_place,
        planned.home,
    )


def _on_record_lines(planned: PlannedOuting) -> str:
    return "\n".join(
        (
            f"Leave home {wording.clock(planned.leave_home)}.",
            f"Go in about {wording.clock(planned.enter)}, set out for home about "
            f"{wording.clock(planned.leave_place)}.",
            f"Home again about {wording.clock(planned.home)}.",
            f"Cost in all, as planned: about {wording.money(planned.likely_total)}.",
        )
    )


def _reminders(planned: PlannedOuting) -> tuple[Reminder, ...]:
    packing, _ = usual_reminders(planned.leave_home)
    ahead = planned.ticked.leaving_reminder_minutes
    return (
        *((packing,) if planned.ticked.packing_reminder else ()),
        *((Reminder(ahead, f"Leave in {wording.minutes(ahead)}"),) if ahead else ()),
    )


def file_of(entry: OutingEntry, written_at: datetime) -> bytes:
    """The calendar file with one entry."""
    return calendar_file([entry], written_at=written_at)


def file_in_words(data: bytes) -> str:
    """What a calendar file tells, read back from the file itself."""
    events = Calendar.from_ical(data).walk("VEVENT")
    return "\n\n".join(_event_in_words(event) for event in events)


def _event_in_words(event: Component) -> str:
    start, end = event.decoded("DTSTART"), event.decoded("DTEND")
    lines = [
        str(event["SUMMARY"]),
        f"{wording.day(start)}, {wording.clock(start)} to {wording.clock(end)}",
        f"Where: {event['LOCATION']}" if "LOCATION" in event else "",
        f"Status: {str(event['STATUS']).lower()}" if "STATUS" in event else "",
        *(f"Reminder {_ahead(alarm)}: {alarm['DESCRIPTION']}" for alarm in event.walk("VALARM")),
    ]
    told = "\n".join(filter(None, lines))
    return f"{told}\n\n{event['DESCRIPTION']}" if "DESCRIPTION" in event else told


def _ahead(alarm: Component) -> str:
    return f"{wording.minutes(-alarm.decoded('TRIGGER').total_seconds() / 60)} before"
