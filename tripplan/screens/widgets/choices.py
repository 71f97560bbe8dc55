"""What the parent has picked so far, kept from page to page: who goes, which days, which place and day."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta

import streamlit as st

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.outings.planned import PlannedOuting, PlanStatus
from tripplan.documents.places.place import Place
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import USUAL_GRID_MINUTES
from tripplan.screens.widgets.lasting import let_go, let_last
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.view import View

USUAL_SPAN = timedelta(weeks=6)
LONGEST_SPAN = timedelta(days=548)
"""Eighteen months."""
_OVER_AFTER = timedelta(days=1)
"""What was taken for a day before yesterday is forgotten; a late evening runs past midnight."""


def keep(name: str, widget: str) -> None:
    """Copy what a widget says to a plain key, which outlives the page and the window."""
    let_last({name: st.session_state[widget]})


def open_or_close(name: str) -> None:
    """Turn round what a plain key says of a part of the page that a press opens and closes."""
    st.session_state[name] = not st.session_state.get(name, False)


def party_picker(view: View, family: Family, planned: PlannedOuting | None = None) -> list[str]:
    """Ask who goes; everybody, at first, or those an outing is planned for. The page ends where nobody does.

    Args:
        view: whose choice.
        family: gives the members.
        planned: an outing on record, whose party is asked about apart from that of other pages.
    """
    names = [member.name for member in family.household.members]
    widget = "party_picker" if planned is None else f"party_picker_{planned.id}"
    party = st.pills(
        say("choices-who"),
        names,
        selection_mode="multi",
        default=kept_party(view, family, planned),
        key=widget,
        on_change=keep,
        args=(_party_name(view, planned), widget),
    )
    if not party:
        st.warning(say("choices-nobody"))
        st.stop()
    return [person for person in names if person in party]


def kept_party(view: View, family: Family, planned: PlannedOuting | None = None) -> list[str]:
    """Who goes by what was last picked; those an outing is planned for, or everybody, where nobody was."""
    names = [member.name for member in family.household.members]
    kept = st.session_state.get(_party_name(view, planned), names if planned is None else planned.party)
    return [person for person in names if person in kept] or names


def party_in_short(view: View, family: Family) -> str:
    """Who goes, in a word or two: 'all 7 of us', 'both of us', '5 of us' or a name."""
    party = kept_party(view, family)
    if len(party) == 1:
        return plain(party[0])
    if len(party) < len(family.household.members):
        return say("choices-some-of-us", people=len(party))
    return say("choices-both-of-us") if len(party) == 2 else say("choices-all-of-us", people=len(party))


def _party_name(view: View, planned: PlannedOuting | None) -> str:
    return f"party_{view.which}" if planned is None else f"party_{view.which}_{planned.id}"


def usual_span(view: View) -> DateSpan:
    """The six weeks from tomorrow."""
    return DateSpan(first=view.today + timedelta(days=1), last=view.today + USUAL_SPAN)


def kept_span(view: View) -> DateSpan:
    """Between which days, by what was last picked; the usual span where nothing was, or only half of one."""
    usual = usual_span(view)
    kept = st.session_state.get(f"span_{view.which}", ())
    return DateSpan(first=kept[0], last=kept[1]) if len(kept) == 2 and kept[0] >= view.today else usual


def span_in_short(view: View) -> str:
    """Between which days, such as 'next six weeks' or 'Dec 1 to Jan 12'."""
    span = kept_span(view)
    if span == usual_span(view):
        return say("choices-six-weeks")
    return wording.short_days(span.first, span.last)


def span_picker(view: View) -> DateSpan:
    """Ask between which days; the usual span, at first. The page ends on half a span."""
    name, widget = f"span_{view.which}", "span_picker"
    kept = kept_span(view)
    picked = st.date_input(
        say("choices-which-days"),
        value=(kept.first, kept.last),
        min_value=view.today,
        max_value=view.today + LONGEST_SPAN,
        format=wording.date_field(),
        key=widget,
        on_change=keep,
        args=(name, widget),
    )
    if not isinstance(picked, Sequence) or len(picked) < 2:
        st.info(say("choices-two-days"))
        st.stop()
    return DateSpan(first=picked[0], last=picked[1])


LONGER_SPANS = {
    "choices-six-months": timedelta(days=183),
    "choices-a-year": timedelta(days=365),
    "choices-eighteen-months": LONGEST_SPAN,
}


def longer_spans(view: View) -> None:
    """Offer the spans that are tedious to pick day by day, from tomorrow on."""
    tomorrow = view.today + timedelta(days=1)
    with st.container(horizontal=True):
        for code, length in LONGER_SPANS.items():
            st.button(
                say(code),
                key=f"span_{length.days}",
                on_click=_set_span,
                args=(view, tomorrow, view.today + length),
            )


def _set_span(view: View, first: date, last: date) -> None:
    st.session_state["span_picker"] = (first, last)
    keep(f"span_{view.which}", "span_picker")


def place_names(family: Family) -> dict[str, str]:
    """The places' names by their ids; its `__getitem__` labels a widget's options (a lambda is not kept)."""
    return {place.id: place.name for place in family.places}


def place_named(family: Family, place_id: str) -> Place | None:
    """The place with that id, if the family keeps it."""
    return next((place for place in family.places if place.id == place_id), None)


@dataclass(frozen=True)
class Selection:
    """The outing the parent has settled on for now.

    Attributes:
        place: where to.
        day: when.
        leave_at: the departure picked on Day plan; None for the best one.
        leave_place_at: when to leave the place, where the parent picked both times herself; else None.
    """

    place: Place
    day: date
    leave_at: datetime | None = None
    leave_place_at: datetime | None = None


def take(
    view: View,
    place_id: str,
    day: date,
    leave_at: datetime | None = None,
    leave_place_at: datetime | None = None,
) -> None:
    """Remember a place, a day and perhaps times of leaving as the ones the other pages speak of."""
    let_last(
        {
            f"taken_{view.which}": (place_id, day.isoformat(), _as_text(leave_at)),
            f"taken_return_{view.which}": _as_text(leave_place_at),
        }
    )


def forget_taken(view: View) -> None:
    """Take nothing; what is planned counts again."""
    let_go(f"taken_{view.which}", f"taken_return_{view.which}")


def taken(view: View, family: Family) -> Selection | None:
    """What the parent took, if anything, still on record and not long over."""
    kept = st.session_state.get(f"taken_{view.which}")
    if kept is None:
        return None
    place_id, day, leave = kept
    leave_place = st.session_state.get(f"taken_return_{view.which}")
    place = place_named(family, place_id)
    if place is None or date.fromisoformat(day) < view.today - _OVER_AFTER:
        return None
    return Selection(place, date.fromisoformat(day), _moment_in(leave), _moment_in(leave_place))


def _as_text(moment: datetime | None) -> str | None:
    return None if moment is None else moment.isoformat()


def _moment_in(text: str | None) -> datetime | None:
    return None if text is None else datetime.fromisoformat(text)


def planned_outings(view: View) -> list[PlannedOuting]:
    """What is or was planned and not called off, earliest first."""
    outings = (kept.value for kept in view.records.all(PlannedOuting).values())
    return sorted(
        (one for one in outings if one.status is not PlanStatus.CANCELLED),
        key=lambda outing: (outing.leave_home, outing.id),
    )


def on_record(view: View, place_id: str, day: date) -> PlannedOuting | None:
    """The outing that is planned to a place on a day, if there is one."""
    return next((one for one in planned_outings(view) if (one.place, one.day) == (place_id, day)), None)


def next_outing(view: View, family: Family) -> PlannedOuting | None:
    """The next outing that is planned and not over; one of several candidates only where nothing else is."""
    now = view.services.clock()
    coming = [
        one for one in planned_outings(view) if one.home > now and place_named(family, one.place) is not None
    ]
    return min(coming, key=lambda one: (not one.takes_time, one.leave_home), default=None)


def take_as_planned(view: View, place_id: str, day: date) -> None:
    """Take a place and a day, with the times that are on record where an outing there is planned."""
    planned = on_record(view, place_id, day)
    if planned is None:
        take(view, place_id, day)
    else:
        take(view, place_id, day, planned.leave_home, planned.leave_place)


def named_in_address(view: View, family: Family) -> tuple[str, date] | None:
    """The place and day that a page's address names, such as `?place=ledgewing&day=2026-12-17`.

    What in it cannot be used is said, and nothing of it is then.
    """
    asked = {name: st.query_params.get(name) for name in ("place", "day")}
    if asked["place"] is None and asked["day"] is None:
        return None
    place = place_named(family, asked["place"] or "")
    day = _day_in(asked["day"] or "")
    faults = []
    if place is None:
        faults.append(say("choices-no-such-place", name=asked["place"] or ""))
    if day is None:
        faults.append(say("choices-no-such-day", text=asked["day"] or "", example=view.today.isoformat()))
    elif day < view.today - _OVER_AFTER:
        faults.append(say("choices-day-over", day=day))
    elif day > view.today + LONGEST_SPAN:
        faults.append(say("choices-day-too-far", day=day))
    if faults or place is None or day is None:
        st.warning(plain(say("choices-bad-address", faults="; ".join(faults))))
        return None
    return place.id, day


def name_in_address(place_id: str, day: date) -> None:
    """Let the page's address name a place and a day, so that a reload or a copied link opens them."""
    st.query_params.from_dict({"place": place_id, "day": day.isoformat()})


def _day_in(text: str) -> date | None:
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None


def day_of_planning(view: View, family: Family, place_id: str, day: date) -> date:
    """When an outing was put on record as planned, for booking deadlines; today where it is not."""
    planned = on_record(view, place_id, day)
    return view.today if planned is None else planned.planned_on(family.household.home.zone)


def to_the_minute(view: View) -> bool:
    """Ask whether to plan to the minute, kept from page to page."""
    name, widget = _to_the_minute(view), "to_the_minute"
    return st.toggle(
        say("choices-exact"),
        value=st.session_state.setdefault(name, False),
        key=widget,
        on_change=keep,
        args=(name, widget),
        help=say("choices-exact-help"),
    )


def grid_minutes(view: View) -> int:
    """How far apart departures and returns are tried, by what the parent said on Day plan [min]."""
    return 1 if st.session_state.get(_to_the_minute(view)) else USUAL_GRID_MINUTES


def _to_the_minute(view: View) -> str:
    return f"to_the_minute_{view.which}"


def place_and_day(view: View, family: Family, now: Selection, page: str) -> tuple[str, date]:
    """Ask for a place and a day; what is picked counts on the other pages too.

    Args:
        view: whose choice.
        family: gives the places.
        now: what is picked at first.
        page: tells the fields from those of other pages.

    Returns:
        The id of the place, and the day.
    """
    ids = [place.id for place in family.places]
    place_key, day_key = f"{page}_place", f"{page}_day"

    def pick() -> None:
        take_as_planned(view, st.session_state[place_key], st.session_state[day_key])

    # What is picked at first may change while the fields are there, such as when a plan is taken back.
    at_first = {place_key: now.place.id, day_key: max(now.day, view.today)}
    for key, value in at_first.items():
        if st.session_state.get(key) != value:
            st.session_state[key] = value
    left, right = st.columns(2)
    place_id = left.selectbox(
        say("choices-where-to"),
        ids,
        format_func=place_names(family).__getitem__,
        key=place_key,
        on_change=pick,
    )
    day = right.date_input(
        say("choices-which-day"),
        min_value=view.today,
        max_value=view.today + LONGEST_SPAN,
        format=wording.date_field(),
        key=day_key,
        on_change=pick,
    )
    return place_id, day
