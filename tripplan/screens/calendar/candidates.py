"""Several candidates kept on the calendar as maybes, of which one will be done."""

from collections.abc import Sequence

import streamlit as st

from tripplan.documents.family.household import Household
from tripplan.documents.outings.planned import EntryTicks, PlannedOuting, PlanStatus
from tripplan.language.sentences import say
from tripplan.planning.calendar_entry.planned_outing import planned_from
from tripplan.planning.outing.outing import Outing
from tripplan.records.planned_outings import outings_ever
from tripplan.screens.widgets.notices import show_notice, tell
from tripplan.screens.widgets.saving import save_all
from tripplan.screens.widgets.view import View

_SPOT = "candidates"


def pencil_in(view: View, household: Household, outings: Sequence[Outing]) -> None:
    """Offer to plan several outings tentatively with one press.

    Args:
        view: whose records.
        household: whose outings they are.
        outings: at least two.
    """
    st.button(
        say("compare-maybe-all", outings=len(outings)) if len(outings) > 2 else say("compare-maybe-both"),
        key="pencil_in",
        on_click=_save,
        args=(view, household, outings),
        help=say("compare-maybe-help"),
    )
    show_notice(_SPOT)


def _save(view: View, household: Household, outings: Sequence[Outing]) -> None:
    now = view.services.clock()
    ever = outings_ever(view.records)
    choice = " ".join((f"{now:%Y%m%dT%H%M%S}", *(outing.place.id for outing in outings)))[:80]
    planned: list[tuple[PlannedOuting, int]] = []
    for outing in outings:
        before = ever.on(outing.place.id, outing.day)
        if before is not None and before.revision and before.value.status is PlanStatus.CONFIRMED:
            continue
        one = planned_from(
            outing,
            household,
            before.value.ticked if before else EntryTicks(),
            PlanStatus.TENTATIVE,
            before=before.value if before else None,
            ids_taken=ever.ids,
            at=now,
        )
        planned.append((one.model_copy(update={"choice": choice}), ever.revision_of(one)))
    if not planned:
        tell(_SPOT, say("compare-maybe-none"))
        return
    said = say("compare-maybe-saved", outings=len(planned))
    save_all(view, _SPOT, planned, said, can_be_taken_back=False)
