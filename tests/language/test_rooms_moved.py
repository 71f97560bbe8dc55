"""Rooms whose words have moved to the room of language: no sentence stands beside their arithmetic."""

import ast
import re
from collections.abc import Iterator

import pytest

from tripplan.language.messages import FOLDER
from tripplan.planning.on_the_day.recovery_options import RecoveryKind
from tripplan.planning.on_the_day.trouble import Whereabouts
from tripplan.planning.sweep.listing import HEADINGS

PACKAGE = FOLDER.parent
MOVED = (
    "files/day_sheet/day_sheet.py",
    "files/day_sheet/day_stretches.py",
    "planning/climate/cautions.py",
    "planning/compare/certainty.py",
    "planning/compare/flips/birthdays.py",
    "planning/compare/flips/comparison.py",
    "planning/compare/flips/driving.py",
    "planning/compare/flips/every_input.py",
    "planning/compare/flips/flip.py",
    "planning/compare/flips/food.py",
    "planning/compare/flips/party.py",
    "planning/compare/flips/passes.py",
    "planning/compare/flips/weather.py",
    "planning/compare/flips/weekdays.py",
    "planning/cost/items.py",
    "planning/crowds/parts.py",
    "planning/crowds/risk.py",
    "planning/day/collisions.py",
    "planning/day/front.py",
    "planning/day/one_choice.py",
    "planning/day/relaxation.py",
    "planning/day/times/steps.py",
    "planning/day/weighing/lunch.py",
    "planning/day/weighing/nuisances.py",
    "planning/day/weighing/slack.py",
    "planning/day/weighing/weighing.py",
    "planning/day_sheet/packing.py",
    "planning/on_the_day/rain_plan.py",
    "planning/on_the_day/recovery_options.py",
    "planning/on_the_day/replan.py",
    "planning/on_the_day/sunk_cost.py",
    "planning/on_the_day/trouble.py",
    "planning/on_the_day/used_plan.py",
    "planning/on_the_day/way_home.py",
    "planning/opening/hours.py",
    "planning/outing/cheaper_hours.py",
    "planning/outing/clock_notes.py",
    "planning/outing/idea_notes.py",
    "planning/outing/outing.py",
    "planning/outing/passed_over.py",
    "planning/outing/visit_notes.py",
    "planning/outing/weather/visit_weather.py",
    "planning/together/sentences.py",
    "planning/together/shapes.py",
    "planning/together/split.py",
    "planning/together/visit.py",
    "planning/travel/daylight.py",
    "planning/outing/sentences.py",
    "planning/outing/window_facts.py",
    "planning/passes/sentences.py",
    "planning/passes/which_pays.py",
    "planning/admission/availability.py",
    "planning/admission/refusal.py",
    "planning/sweep/table.py",
    "planning/sweep/misses.py",
    "planning/sweep/wishes.py",
    "planning/travel/cautions.py",
    "page_list.py",
    "screens/calendar/candidates.py",
    "screens/calendar/entry_ticks.py",
    "screens/calendar/family_part.py",
    "screens/calendar/festivals.py",
    "screens/calendar/outings.py",
    "screens/calendar/own_week.py",
    "screens/calendar/page.py",
    "screens/calendar/school/part.py",
    "screens/compare.py",
    "screens/choose_day/free_today.py",
    "screens/choose_day/month_grid.py",
    "screens/choose_day/page.py",
    "screens/choose_day/weights.py",
    "screens/choose_day/wishes_form.py",
    "screens/cupboard.py",
    "screens/household/page.py",
    "screens/household/parts.py",
    "screens/household/person.py",
    "screens/household/rush_hours.py",
    "screens/household/saving.py",
    "screens/household/sections.py",
    "screens/household/stops.py",
    "screens/household/things.py",
    "screens/household/transfer.py",
    "screens/day_plan/day_line.py",
    "screens/day_plan/day_sheet.py",
    "screens/day_plan/on_the_day.py",
    "screens/day_plan/page.py",
    "screens/day_plan/rain_part.py",
    "screens/day_plan/running_late.py",
    "screens/day_plan/shows.py",
    "screens/day_plan/trade_offs.py",
    "screens/day_plan/try_times.py",
    "screens/day_plan/weather_part.py",
    "screens/look/charts.py",
    "screens/look/doors.py",
    "screens/look/outing_card.py",
    "screens/logbook/entry_card.py",
    "screens/logbook/entry_form.py",
    "screens/logbook/learned.py",
    "screens/logbook/page.py",
    "screens/logbook/year.py",
    "screens/places/for_us.py",
    "screens/places/ideas.py",
    "screens/places/own_figures_form.py",
    "screens/places/page.py",
    "screens/places/place_details.py",
    "screens/places/place_sentences.py",
    "screens/places/sharing.py",
    "screens/places/year_weather.py",
    "screens/records/day_copies.py",
    "screens/records/deleting.py",
    "screens/records/page.py",
    "screens/records/whole_file.py",
    "screens/start/budget.py",
    "screens/start/first_steps.py",
    "screens/start/next_outing.py",
    "screens/start/page.py",
    "screens/study/limits.py",
    "screens/study/page.py",
    "screens/study/semester.py",
    "screens/study/topic_card.py",
    "screens/widgets/choices.py",
    "screens/widgets/frame.py",
)
"""Files under `tripplan/`; the list grows."""
WORDS_OF_ITS_OWN: dict[str, set[str]] = {
    "planning/day_sheet/packing.py": {"always warm", "ice house"},
    "planning/on_the_day/recovery_options.py": {kind.value for kind in RecoveryKind},
    "planning/on_the_day/trouble.py": {where.value for where in Whereabouts},
    "screens/choose_day/page.py": set(HEADINGS),
}
"""What is no sentence: words that a place card is searched for, columns of a file, what programs are told."""


WORDS = re.compile(r"[^\W\d_]{2}.* |[A-Z][a-z]+\W*$", re.DOTALL)
MARKUP = re.compile(r"<\w|\"]|[{}]|-\w+:|[-\w]+=|\bpx\b|\bdatum\.")
"""Of HTML, style sheets and charts; what stands between is handed over."""


def texts(tree: ast.AST) -> Iterator[str]:
    """The words in a file that are no docstring, no exception's, no figure's source and no markup."""
    left_out: set[int] = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Expr):
            left_out.add(id(node.value))
        elif (
            isinstance(node, ast.Raise)
            or (isinstance(node, ast.keyword) and node.arg == "source")
            or (isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "TypeVar")
        ):
            left_out |= {id(inner) for inner in ast.walk(node)}
        for types in (getattr(node, "annotation", None), getattr(node, "returns", None)):
            left_out |= {id(inner) for inner in ast.walk(types)} if types else set()
    for node in ast.walk(tree):
        constant = node.value if isinstance(node, ast.Constant) and id(node) not in left_out else None
        if isinstance(constant, str) and WORDS.match(constant.strip()) and not MARKUP.search(constant):
            yield constant


@pytest.mark.parametrize("path", MOVED)
def test_a_room_that_has_moved_holds_codes_and_no_words(path: str) -> None:
    """A sentence there would be said in one language only."""
    tree = ast.parse((PACKAGE / path).read_text(encoding="utf-8"))
    assert set(texts(tree)) <= WORDS_OF_ITS_OWN.get(path, set())
