"""Running late: the part of Day plan for the day itself, with a few large fields for the phone."""

from collections.abc import Mapping
from datetime import UTC, date, datetime, time, timedelta
from math import ceil

import streamlit as st
from streamlit.delta_generator import DeltaGenerator

from tripplan.documents.outings.planned import PlanStatus
from tripplan.errors import PlanError
from tripplan.language import wording
from tripplan.language.sentences import say, told
from tripplan.planning.family.family import Family
from tripplan.planning.on_the_day.recovery_options import RecoveryOption
from tripplan.planning.on_the_day.replan import replan
from tripplan.planning.on_the_day.trouble import Trouble, Whereabouts, clock_there
from tripplan.planning.on_the_day.used_plan import used_plan
from tripplan.planning.outing.outing import Outing
from tripplan.planning.outing.sentences import naps_sentence
from tripplan.records.planned_outings import outings_ever
from tripplan.screens.widgets.choices import forget_taken, open_or_close
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import show_notice
from tripplan.screens.widgets.saving import save_all, take_back_button
from tripplan.screens.widgets.view import View

LATE_CHOICES = (0, 15, 30, 45, 60, 90)
"""How late one can say with one tap [min]."""
_WHERE = {
    Whereabouts.HOME: ("today-at-home", "today-how-late-home"),
    Whereabouts.ON_THE_WAY: ("today-on-the-way", "today-how-late-way"),
    Whereabouts.THERE: ("today-there", "today-how-late-there"),
    Whereabouts.GOING_HOME: ("today-going-home", "today-how-late-back"),
}
"""Where the party is, and how late it is then."""
BEHIND_THEM = (Whereabouts.THERE, Whereabouts.GOING_HOME)
"""Where what goes wrong is seldom the way that is behind the party, so that it was in time at first."""
USED = "used_plan"
"""Where it is said that another plan is used now."""
OPEN = "running_late_open"
_SAID = "went_wrong_said"
ASLEEP, ILL, RAIN = "today-asleep", "today-ill", "today-rain"
AT_ONCE: Mapping[str, int] = {
    "today-late-15": 15,
    "today-late-30": 30,
    "today-late-45": 45,
    ASLEEP: 0,
    ILL: 0,
    RAIN: 0,
}
"""What one press says on the day, by the code of its words, with how late the party then is [min]."""


def told_what_is_used(view: View) -> None:
    """Say that another plan is used now, with the way back; at the top of a page."""
    show_notice(USED)
    take_back_button(view, USED)


def what_is_said() -> str:
    """Which of `AT_ONCE` was pressed and is being answered; empty for none."""
    return str(st.session_state.get(_SAID, "")) if st.session_state.get(OPEN) else ""


def render_at_once() -> None:
    """A large button for each of what goes wrong most; the answer is one press away."""
    with st.container(horizontal=True, key="went_wrong"):
        for number, code in enumerate(AT_ONCE):
            st.button(say(code), key=f"went_wrong_{number}", width="stretch", on_click=_press, args=(code,))


def _press(code: str) -> None:
    st.session_state[OPEN], st.session_state[_SAID] = True, code


def _turn() -> None:
    st.session_state[_SAID] = ""
    open_or_close(OPEN)


def render_running_late(
    view: View, family: Family, outing: Outing, *, planned_on: date, now: datetime, booked: bool
) -> None:
    """Ask what went wrong, say at once what can be done now, and let one of it take the plan's place.

    Args:
        view: whose records.
        family: people, car, home, places.
        outing: the day as it was planned.
        planned_on: when that was, for the booking deadlines of the place itself.
        now: the present moment; while the day is on, the fields begin with what it says by the plan.
        booked: whether there is a booking number; the tickets are then taken to be paid for at first.
    """
    is_open = st.session_state.get(OPEN, False)
    st.button(
        say("today-back-to-plan") if is_open else say("today-wrong"),
        key="running_late",
        width="stretch",
        on_click=_turn,
    )
    if not is_open:
        return
    said = what_is_said()
    part = st.container(border=True, key="running_late_part")
    with part:
        if said:
            st.header(say(said), anchor=False)
        first = st.container()
        # What one press said is answered at once; the rest of the questions wait behind the answer's fold.
        asked = st.expander(say("today-more"), key=f"late_more_{said}") if said else st.container()
    with asked:
        where = Whereabouts(
            st.radio(
                say("today-where"),
                [where.value for where in Whereabouts],
                index=list(Whereabouts).index(_whereabouts(outing, now)),
                format_func={where.value: say(code) for where, (code, _) in _WHERE.items()}.__getitem__,
                horizontal=True,
                key="late_where",
            )
        )
        in_time = say("today-in-time")
        tapped = st.pills(
            say(_WHERE[where][1]),
            LATE_CHOICES,
            default=AT_ONCE.get(said, 0 if where in BEHIND_THEM else 30),
            format_func={
                late: wording.minutes(late) if late else in_time for late in LATE_CHOICES
            }.__getitem__,
            key=f"late_tapped_{where.name}{said}",
        )
        late = st.number_input(
            say("today-in-minutes"),
            min_value=0,
            max_value=600,
            value=tapped or 0,
            step=5,
            key=f"late_minutes_{where.name}_{tapped}{said}",
        )
        by_now = _late_by_now(outing, now) if where is Whereabouts.HOME else 0
        if by_now > late:
            late = by_now
            st.caption(plain(say("today-late-already", late=wording.minutes(late))))
        trouble = _trouble(outing, where, late, now, booked=booked, said=said, first=first)
    with part:
        st.caption(say("today-plan-stays"))
        try:
            found = replan(family, outing, trouble, today=planned_on)
        except PlanError as error:
            st.warning(plain(f"{error}."))
            return
        st.markdown(plain(say("today-from", at=found.now)))
        for number, way in enumerate(found.ways):
            with st.container(border=True):
                _way(way)
                st.button(
                    plain(_use_words(way)),
                    key=f"use_plan_{number}",
                    width="stretch",
                    on_click=_use,
                    args=(view, family, outing, way, trouble),
                    help=plain(say("today-use-help", what=way.title)),
                )
        for title, reasons in found.impossible:
            st.markdown(f"**{plain(say('today-impossible', what=title))}**")
            st.markdown(bullets(told(reasons)))
        if found.cautions:
            st.warning(bullets(told(found.cautions)))


def _whereabouts(outing: Outing, now: datetime) -> Whereabouts:
    """Where the party is by the plan."""
    if not _is_on(outing, now):
        return Whereabouts.HOME
    if now >= outing.plan.leave_place:
        return Whereabouts.GOING_HOME
    return Whereabouts.ON_THE_WAY if now < outing.plan.enter else Whereabouts.THERE


def _late_by_now(outing: Outing, now: datetime) -> int:
    """How late a party is that is still at home; nought before it should leave and after the day [min]."""
    return ceil((now - outing.plan.leave_home) / timedelta(minutes=1)) if _is_on(outing, now) else 0


def _is_on(outing: Outing, now: datetime) -> bool:
    return outing.plan.leave_home <= now < outing.plan.home


def _still_to_drive(outing: Outing, where: Whereabouts, late: int, now: datetime) -> int:
    """What is left of the drive by the clock if the party left so late; before the day is on, half [min]."""
    way, left = outing.way_there, outing.plan.leave_home
    if where is Whereabouts.GOING_HOME:
        way, left = outing.way_home, outing.plan.leave_place
    if not _is_on(outing, now):
        return way.drive_minutes // 2
    parks = left.astimezone(UTC) + timedelta(minutes=way.minutes - way.unload_minutes + late)
    return min(max(0, round((parks - now).total_seconds() / 60)), way.drive_minutes)


def _trouble(
    outing: Outing,
    where: Whereabouts,
    late: int,
    now: datetime,
    *,
    booked: bool,
    said: str,
    first: DeltaGenerator,
) -> Trouble:
    """What the parent says went wrong; what was pressed for is asked first."""
    there, going_home = where is Whereabouts.THERE, where is Whereabouts.GOING_HOME
    still = (
        st.number_input(
            say("today-to-drive"),
            min_value=0,
            max_value=1200,
            value=_still_to_drive(outing, where, late, now),
            step=5,
            key=f"late_to_drive_{where.name}_{late}",
        )
        if going_home or where is Whereabouts.ON_THE_WAY
        else None
    )
    zone = outing.plan.enter.tzinfo
    there_now = now if now >= outing.plan.enter and _is_on(outing, now) else outing.plan.enter
    clock: time | None = (
        st.time_input(
            say("today-clock"),
            value=there_now.astimezone(zone).time().replace(second=0, microsecond=0),
            step=300,
            format=wording.clock_field(),
            key="late_now",
        )
        if there
        else None
    )
    children = [member.name for member in outing.party if not member.is_adult_on(outing.day)]
    adults = [member.name for member in outing.party if member.is_adult_on(outing.day)]
    asked = {code: first if said == code else st.container() for code in (ASLEEP, ILL)}
    nappers = [nap.member for nap in outing.plan.naps if nap.member in children]
    named = {"": say("today-nobody"), **{name: name for name in children}}
    asleep = asked[ASLEEP].selectbox(
        say("today-who-asleep"),
        list(named),
        index=1 + children.index(nappers[0]) if said == ASLEEP and nappers else 0,
        format_func=named.__getitem__,
        key=f"late_asleep{said}",
    )
    ill = asked[ILL].selectbox(
        say("today-who-ill"), list(named), format_func=named.__getitem__, key=f"late_ill{said}"
    )
    whoever = {"": say("today-whoever"), **{name: name for name in adults}}
    stays = (
        st.selectbox(say("today-who-stays"), list(whoever), format_func=whoever.__getitem__, key="late_stays")
        if ill and where is Whereabouts.HOME
        else None
    )
    rain = not going_home and st.toggle(say("today-it-rains"), value=said == RAIN, key=f"late_rain{said}")
    paid = there or going_home or st.toggle(say("today-paid"), value=booked, key=f"late_paid_{booked}")
    return Trouble(
        late_minutes=late,
        where=where,
        still_to_drive_minutes=still,
        now=None if clock is None else clock_there(outing, clock),
        asleep=asleep or None,
        ill=ill or None,
        stays_home=stays or None,
        rain=rain,
        tickets_paid=paid,
    )


def _way(way: RecoveryOption) -> None:
    st.subheader(plain(way.title.text), anchor=False)
    said = (
        way.times_sentence,
        way.home_sentence,
        say("today-nap", nap=naps_sentence(way.naps)),
        way.money_sentence,
        say("today-hassle", total=wording.whole_money(way.weighs)),
        *told(way.notes),
    )
    st.markdown(bullets(filter(None, said)))


def _use_words(way: RecoveryOption) -> str:
    return say("today-cancel") if way.stays_home else say("today-use")


def _use(view: View, family: Family, outing: Outing, way: RecoveryOption, trouble: Trouble) -> None:
    """Put a way out in the place of the plan on record, wherever that is shown."""
    ever = outings_ever(view.records)
    before = ever.on(outing.place.id, outing.day)
    planned = used_plan(
        way,
        family,
        outing,
        trouble,
        before=before.value if before else None,
        ids_taken=ever.ids,
        at=view.services.clock(),
    )
    off = planned.status is PlanStatus.CANCELLED
    said = say("today-canceled", place=outing.place.name) if off else say("today-used", what=way.title)
    if save_all(view, USED, [(planned, before.revision if before else 0)], said):
        st.session_state[OPEN], st.session_state[_SAID] = False, ""
        # What was picked or named before is the old plan.
        forget_taken(view)
        st.query_params.clear()
