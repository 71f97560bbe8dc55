"""The semester's outings together: a line of dates, what they come to, and saving all of them."""

from collections.abc import Sequence

import streamlit as st

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.places.place import Place
from tripplan.documents.study.units import StudyUnit
from tripplan.documents.study.wishes import ProgrammeWishes
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.calendar_entry.planned_outing import tentative_outings
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing
from tripplan.planning.outing.sentences import range_sentence
from tripplan.planning.study.options import Swept, party_of
from tripplan.planning.study.programme import Programme, UnitOuting
from tripplan.planning.sweep.table import DayTable
from tripplan.records.planned_outings import outings_ever
from tripplan.screens.look.cards import text
from tripplan.screens.study.saving import PAGE
from tripplan.screens.widgets import answers
from tripplan.screens.widgets.choices import place_named, place_names
from tripplan.screens.widgets.saving import save_all
from tripplan.screens.widgets.view import View

SHEET = """
.tp-dates { display: grid; grid-template-columns: repeat(auto-fit, minmax(9rem, 1fr)); gap: .3rem .8rem;
  list-style: none; margin: 0; padding: 0 !important; color: var(--ink); line-height: 1.3; }
.tp-dates li { margin: 0; padding: .4rem 0 0; border-top: .3rem solid var(--part-1); }
.tp-dates :is(b, span) { display: block; overflow-wrap: anywhere; }
.tp-dates span { font-size: var(--small); }
@media (max-width: 640px) { .tp-dates { grid-template-columns: 1fr; }
  .tp-dates li { display: grid; grid-template-columns: 6rem 1fr; padding: .1rem 0 .1rem .6rem;
    border-top: none; border-left: .3rem solid var(--part-1); } }
"""
"""The lines of the style sheet for the line of dates."""


def dates_line(found: Programme, family: Family) -> str:
    """The outings in order of their days, as HTML: from left to right, on a phone from top to bottom."""
    names = place_names(family)
    rows = (
        f"<li><b>{text(wording.short_day(one.option.day))}</b>"
        f"<span>{text(names.get(one.option.place, one.option.place))}</span></li>"
        for one in found.outings
    )
    return f'<ol class="tp-dates">{"".join(rows)}</ol>'


def summary(found: Programme, wishes: ProgrammeWishes) -> str:
    """What all of it comes to, and what is left of the budget."""
    said = say("studies-total", total=range_sentence(found.total, at_least=found.unknown))
    most = wishes.spends_at_most
    if most is not None:
        left = wording.whole_money(most - found.total.likely)
        code = "studies-left-unsure" if found.total.high > most else "studies-left"
        said += f"; {say(code, left=left, budget=wording.whole_money(most))}"
    unknown = f" {say('studies-lower-bound')}" if found.unknown else ""
    return f"{said}.{unknown} {say('studies-exact')}"


def swept(view: View, family: Family) -> Swept:
    """Answers the days of some places, for a party and a span."""

    def answered(party: tuple[str, ...], places: tuple[Place, ...], span: DateSpan) -> DayTable:
        return answers.unit_days(family, party, places, span, view.today)

    return answered


def planned_now(view: View, family: Family, one: UnitOuting) -> Outing | None:
    """The outing with all its answers; None where it is planned for people or a day that are gone."""
    place = place_named(family, one.option.place)
    party = one.planned.party if one.planned else party_of(one.unit, family.household)
    known = {member.name for member in family.household.members}
    if place is None or one.option.day < view.today or not known.issuperset(party):
        return None
    outing = answers.planned(family, party, place, one.option.day, view.today)
    return outing if isinstance(outing, Outing) else None


def keep_all(view: View, family: Family, found: Programme) -> None:
    """Offer to put all outings that are not planned yet on record."""
    free = [one for one in found.outings if one.planned is None]
    pairs = [(one.unit, planned_now(view, family, one)) for one in free]
    ready = [(unit, outing) for unit, outing in pairs if outing is not None]
    if len(ready) > 1:
        st.button(
            say("studies-keep-all", outings=len(ready)),
            key="keep_all",
            type="primary",
            on_click=keep,
            args=(view, family, ready),
        )


def keep(view: View, family: Family, kept: Sequence[tuple[StudyUnit, Outing]]) -> None:
    """Put outings of the semester on record as planned, each under its topic."""
    ever = outings_ever(view.records)
    planned = tentative_outings(
        kept, family.household, before=ever.before, ids_taken=ever.ids, at=view.services.clock()
    )
    said = say("studies-kept-all", outings=len(planned))
    if len(planned) == 1:
        said = say("studies-kept", place=kept[0][1].place.name, day=kept[0][1].day)
    save_all(view, PAGE, [(outing, ever.revision_of(outing)) for outing in planned], said)
