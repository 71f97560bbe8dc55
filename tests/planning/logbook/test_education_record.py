"""The record for authorities counts days once, hours exactly, and tells only names that were ticked."""

from datetime import date
from decimal import Decimal

import pytest

from tests.builders import make_household
from tests.planning.logbook.entries import make_entry
from tripplan.documents.logbook.settings import GradeBand, LogbookSettings
from tripplan.planning.logbook.education_record import education_record, initials_of
from tripplan.planning.logbook.state_rules import RULES_DIFFER, STATE_RULES, state_rule

FIRST, LAST = date(2026, 7, 1), date(2027, 6, 30)
HOUSEHOLD = make_household()
SETTINGS = LogbookSettings(grade_bands=(GradeBand(member="Cy", band="grades 1-6"),))
ENTRIES = (
    make_entry(),
    make_entry(
        id="2026-11-14-creek",
        day="2026-11-14",
        title="Creek, with Cy's boat",
        away=False,
        children=[
            {
                "member": "Cy",
                "did": "Cy and Di sailed",
                "subjects": [{"subject": "Science", "hours": "0.75"}],
            },
            {"member": "Di", "did": "DI waded", "counts_as_day": False},
        ],
    ),
    make_entry(id="2027-07-01-late", day="2027-07-01"),
)


def test_two_outings_on_one_day_are_one_day() -> None:
    """By hand: 2.5 h away and 0.75 h at home on one day; science 1.5 + 0.75 h, history without hours."""
    record = education_record(ENTRIES, HOUSEHOLD, SETTINGS, FIRST, LAST)
    cy = record.totals[0]
    assert (cy.days, cy.days_away, cy.hours, cy.hours_away) == (1, 1, Decimal("3.25"), Decimal("2.5"))
    assert [(s.subject, s.days, s.hours) for s in cy.subjects] == [
        ("history", 1, None),
        ("Science", 1, Decimal("2.25")),  # as it was first typed, in order of the entries' ids
    ]
    assert cy.grade_band == "grades 1-6"


def test_somebody_called_by_a_letter_is_not_found_in_other_initials() -> None:
    """'Dora' stands as 'D.', and that 'D' is not the child 'D'."""
    household = make_household(
        members=[{"name": "Dora", "born": "2015-01-01"}, {"name": "D", "born": "2017-01-01"}]
    )
    entry = make_entry(
        party=["Dora", "D"], naps=[], children=[{"member": "Dora", "did": "DORA and d dug; Dora sang"}]
    )
    (line,) = education_record([entry], household, LogbookSettings(), FIRST, LAST).lines
    assert line.did == "D.1 and D.2 dug; D.1 sang"


def test_days_that_do_not_count_are_listed_and_not_counted() -> None:
    """Di's hour in the water stands in the record, and counts for nothing."""
    record = education_record(ENTRIES, HOUSEHOLD, SETTINGS, FIRST, LAST)
    assert (record.totals[1].days, record.totals[1].days_without_hours) == (0, 0)
    assert [line.counts_as_day for line in record.lines] == [True, False, True]


def test_the_period_has_both_its_ends_and_nothing_beyond() -> None:
    """July 1 of the next year is out; alone it is a period of its own."""
    assert len(education_record(ENTRIES, HOUSEHOLD, SETTINGS, FIRST, LAST).lines) == 3
    late = date(2027, 7, 1)
    assert len(education_record(ENTRIES, HOUSEHOLD, SETTINGS, late, late).lines) == 1


def test_without_a_tick_no_name_stands_in_it() -> None:
    """Neither as a child, nor in the title or in what was written, in whatever case."""
    record = education_record(ENTRIES, HOUSEHOLD, SETTINGS, FIRST, LAST)
    told = repr(record.lines) + repr(record.totals) + record.household
    assert not any(name in told for name in ("Cy", "Di ", "DI", "Ann", "Test household"))
    assert record.lines[0].where == "Creek, with C.'s boat"
    assert record.lines[0].did == "C. and D. sailed"


def test_a_ticked_name_is_written_out_and_the_others_are_not() -> None:
    """Only Cy and the household were ticked."""
    record = education_record(ENTRIES, HOUSEHOLD, SETTINGS, FIRST, LAST, named=["Cy"], with_household=True)
    assert record.lines[0].did == "Cy and D. sailed"
    assert record.household == "Test household"


def test_no_word_of_a_longer_name_stays() -> None:
    """Of 'Grandma Wilhelmina' neither word is left; a part of another word is not touched."""
    members = [{"name": "Grandma Wilhelmina", "born": "1959-03-11"}, {"name": "Cy", "born": "2019-03-11"}]
    told = {"member": "Cy", "did": "cycled to wilhelmina, a grandmaster"}
    entry = make_entry(party=["Cy", "Grandma Wilhelmina"], naps=[], children=[told])
    record = education_record([entry], make_household(members=members), SETTINGS, FIRST, LAST)
    assert record.lines[0].did == "cycled to W., a grandmaster"


def test_initials_that_several_share_are_numbered() -> None:
    """Two children with an A stay two people."""
    assert initials_of(["Ada", "Abe", "Bo Lee"], []) == {"Ada": "A.1", "Abe": "A.2", "Bo Lee": "B.L."}


def test_only_the_children_asked_for_are_in_it() -> None:
    """One child's record holds nothing of another's."""
    record = education_record(ENTRIES, HOUSEHOLD, SETTINGS, FIRST, LAST, children=["Di"])
    assert [line.child for line in record.lines] == ["D."]


def test_every_record_says_that_rules_differ() -> None:
    """The note is always there; a state's figures only where they were asked for."""
    record = education_record(ENTRIES, HOUSEHOLD, SETTINGS, FIRST, LAST)
    assert (record.rules_differ, record.state) == (RULES_DIFFER, None)


@pytest.mark.parametrize("rule", STATE_RULES, ids=lambda rule: rule.state)
def test_every_published_figure_has_source_and_date(rule: object) -> None:
    """No figure stands without where and when it was read."""
    state = getattr(rule, "state", "")
    found = state_rule(state)
    assert found is not None
    assert found.source
    assert "2026" in found.read
    assert any(letter.isdigit() for letter in found.text)
    assert state_rule("Nowhere") is None
