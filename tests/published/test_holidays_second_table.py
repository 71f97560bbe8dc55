"""Public holidays against a second table that nobody here wrote: npm package date-holidays.

Every day on which the two disagree is listed, with which of them is right for a day's outing and why. An
explanation without a source is from memory. Source of the other table: date-holidays 3.37.0 (ISC, data CC
BY 3.0), holidays of its type 'public', read by `calendar_readers/list_holidays.mjs`.
"""

import json
import os
import shutil
import subprocess
from dataclasses import dataclass
from datetime import date
from pathlib import Path

import pytest

from tests.missing import not_installed
from tripplan.planning.holidays.public_holidays import public_holidays

HELPERS = Path(__file__).parent / "calendar_readers"
YEARS = (2026, 2027, 2028)
_STATES = {
    "US": "IA IL MI MN WI CA FL NY OH PA TX WA",
    "GB": "ENG NIR SCT WLS",
    "DE": "BB BE BW BY HE MV NW SN SL TH",
    "AU": "ACT NSW NT QLD SA TAS VIC WA",
    "CA": "AB BC MB NB NL NS ON PE QC SK",
}
REGIONS = (
    *("US", "FR", "AT", "NL", "BE", "PL", "IE", "NZ"),
    *(f"{country}-{state}" for country, states in _STATES.items() for state in states.split()),
)


@dataclass(frozen=True)
class Difference:
    """Days that one table has and the other has not.

    Attributes:
        by: whose they are, 'ours' or 'theirs'.
        regions: where.
        days: which.
        why: what they are, and which table is right.
    """

    by: str
    regions: str
    days: str
    why: str

    @property
    def cells(self) -> set[tuple[str, str, date]]:
        """Whose, where and when."""
        return {
            (self.by, region, date.fromisoformat(day))
            for region in self.regions.split()
            for day in self.days.split()
        }


OCTOBER = "2026-10-12 2027-10-11 2028-10-09"
AFTER_THANKSGIVING = "2026-11-27 2027-11-26 2028-11-24"
PROVINCES = "CA-AB CA-BC CA-MB CA-NB CA-NL CA-NS CA-ON CA-PE CA-QC CA-SK"
TEXAS = (
    "Texas keeps it with part of its staff or at choice (Government Code 662.003); theirs, for most people"
)
IN_LIEU = "a holiday on a weekend, whose day in lieu theirs leaves out; ours, where employers give one"
DIFFERENCES = (
    # Observed days: a weekday off work for a holiday that falls on a weekend.
    Difference(
        "ours",
        "US US-CA US-FL US-IA US-IL US-MI US-MN US-NY US-OH US-PA US-TX US-WA US-WI",
        "2028-11-10",
        "Veterans Day on a Saturday; ours: the Friday is the federal day off (5 USC 6103(b))",
    ),
    Difference("ours", "US-IA US-IL US-NY", "2028-02-11", "Lincoln's Birthday on a Saturday; not settled"),
    Difference("ours", PROVINCES, "2027-12-27 2028-01-03", f"Christmas and New Year's Day: {IN_LIEU}"),
    Difference("ours", "CA-ON", "2026-12-28 2027-12-28", f"Boxing Day: {IN_LIEU}"),
    Difference("ours", "CA-NL CA-PE CA-SK", "2028-07-03", f"Canada Day: {IN_LIEU}"),
    Difference("ours", "CA-AB CA-NL CA-NS CA-PE CA-SK", "2028-11-13", f"Remembrance Day: {IN_LIEU}"),
    Difference("ours", "CA-BC CA-MB", "2028-10-02", f"Truth and Reconciliation: {IN_LIEU}"),
    Difference(
        "ours", "AU-NT AU-SA", "2027-12-25", "Christmas; ours: the day itself is one beside its Monday"
    ),
    Difference(
        "theirs", "AU-ACT", "2027-04-25", "Anzac Day on a Sunday; both have the Monday, either is off"
    ),
    # Days that a state gives its own offices.
    Difference("ours", "US-MI US-TX US-WI", "2027-12-23 2028-12-22", "Christmas Eve in lieu; not settled"),
    Difference("ours", "US-WI", "2026-12-24 2028-12-24", "Christmas Eve; ours (Wis. Stat. 230.35(4))"),
    Difference("ours", "US-WI", "2026-12-31 2028-12-31", "New Year's Eve; ours (Wis. Stat. 230.35(4))"),
    Difference(
        "ours", "US-MI", "2026-11-03 2028-11-07", "Election Day of even years; ours, state offices shut"
    ),
    Difference(
        "ours", "US-MI US-PA", AFTER_THANKSGIVING, "the day after Thanksgiving; ours, state offices shut"
    ),
    Difference("ours", "US-WA", AFTER_THANKSGIVING, "the day after Thanksgiving; ours (RCW 1.16.050)"),
    Difference(
        "ours", "US-CA", "2026-11-08 2027-10-29 2028-10-17", "Diwali; ours: a state holiday since 2026"
    ),
    Difference("ours", "US-CA", "2026-02-15 2028-02-15", "Susan B. Anthony Day; theirs: nobody is off"),
    Difference("ours", "US-TX", "2026-03-31 2027-03-31 2028-03-31", f"Cesar Chavez Day; {TEXAS}"),
    Difference("ours", "US-TX", "2026-04-03 2027-03-26 2028-04-14", f"Good Friday; {TEXAS}"),
    Difference("ours", "US-TX", "2027-01-19 2028-01-19", f"Confederate Heroes Day; {TEXAS}"),
    Difference("ours", "US-TX", "2026-03-02 2027-03-02 2028-03-02", f"Texas Independence Day; {TEXAS}"),
    Difference("ours", "US-TX", "2026-04-21 2027-04-21 2028-04-21", f"San Jacinto Day; {TEXAS}"),
    Difference("ours", "US-TX", "2026-08-27 2027-08-27 2028-08-27", f"Lyndon Baines Johnson Day; {TEXAS}"),
    Difference(
        "theirs", "US-MI US-TX US-WA US-WI", OCTOBER, "Columbus Day; ours: these states do not keep it"
    ),
    Difference("theirs", "US-IA", OCTOBER, "Indigenous Peoples' Day; ours: proclaimed, nobody is off"),
    # Ours is the package's list for the state, which names this law among its sources and takes only February
    # from it; its Columbus Day is one of federal offices. The statute names the day (read as of August 2024);
    # as quoted in HF 3910 of 2022 it leaves out the state's own offices, and others choose. Not settled here,
    # so `public_holidays.table_notes` tells those who live or go there.
    Difference(
        "theirs",
        "US-MN",
        OCTOBER,
        "Indigenous Peoples Day; not settled: a holiday by law (Minn. Stat. 645.44, subd. 5), kept by choice",
    ),
    Difference(
        "theirs",
        "US-WI",
        "2026-09-08 2027-09-14 2028-09-12 2026-11-03 2027-11-02 2028-11-07",
        "election days; ours: Wis. Stat. 995.20 names them, but people work",
    ),
    Difference("theirs", "US-PA", "2026-06-14 2027-06-14 2028-06-14", "Flag Day; ours: people work"),
    Difference("theirs", "US-IL", "2026-05-19 2027-05-19 2028-05-19", "Malcolm X Day; ours: people work"),
    Difference("theirs", "US-FL", "2026-02-16", "the nation's 250th birthday; not settled"),
    # Elsewhere.
    Difference(
        "ours", "GB-SCT", "2026-06-15", "proclaimed once, for a football match; ours is the newer table"
    ),
    Difference(
        "ours",
        "CA-BC CA-MB CA-PE",
        "2026-09-30 2027-09-30 2028-09-30",
        "Truth and Reconciliation; ours, by law",
    ),
    Difference("theirs", "CA-ON", "2026-04-06 2027-03-29 2028-04-17", "Easter Monday; ours: not by law"),
    Difference("theirs", "CA-PE", "2026-08-21 2027-08-20 2028-08-18", "Gold Cup Parade; ours: not by law"),
    Difference("ours", "NL", "2026-04-03 2027-03-26 2028-04-14", "Good Friday; theirs: most people work"),
    Difference(
        "ours",
        "BE",
        "2026-04-05 2027-03-28 2028-04-16 2026-05-24 2027-05-16 2028-06-04",
        "Easter and Whit Sunday; theirs by law, and a Sunday is off in either",
    ),
    Difference(
        "ours", "AU-TAS", "2027-03-28 2028-04-16", "Easter Sunday from 2027; not settled, a Sunday is off"
    ),
    Difference(
        "ours",
        "AU-QLD",
        "2026-08-12 2027-08-11 2028-08-16",
        "the show; theirs: it is Brisbane's, not the state's",
    ),
    Difference(
        "theirs",
        "AU-NT AU-QLD AU-SA",
        "2026-12-24 2027-12-24 2028-12-24",
        "Christmas Eve, from the evening on; ours, for an outing by day",
    ),
    Difference(
        "theirs",
        "AU-NT AU-SA",
        "2026-12-31 2027-12-31 2028-12-31",
        "New Year's Eve, from the evening on; ours, for an outing by day",
    ),
)


@pytest.fixture(scope="module")
def theirs() -> dict[str, set[date]]:
    """The other table's days by region; TRIPPLAN_ICAL_JS may name a folder with its node_modules."""
    node = shutil.which("node")
    folder = Path(os.environ.get("TRIPPLAN_ICAL_JS", HELPERS))
    if node is None:
        not_installed("node is not installed")
    if not (folder / "node_modules" / "date-holidays").is_dir():
        not_installed(f"date-holidays is not installed; run npm install in {HELPERS.name}")
    command = [node, str(HELPERS / "list_holidays.mjs"), str(folder), str(YEARS[0]), str(YEARS[-1]), *REGIONS]
    done = subprocess.run(command, capture_output=True, text=True, check=True, timeout=300)
    tables = [json.loads(line) for line in done.stdout.splitlines()]
    return {
        region: {date.fromisoformat(told["day"]) for told in table}
        for region, table in zip(REGIONS, tables, strict=True)
    }


def ours(region: str) -> set[date]:
    """The days of a region that the planning takes, observed ones included."""
    country, _, subdivision = region.partition("-")
    return {day for day in public_holidays(country, subdivision, YEARS) if day.year in YEARS}


def test_every_difference_between_two_tables_is_known_and_explained(theirs: dict[str, set[date]]) -> None:
    """In 52 countries and states over three years the tables differ on the days listed, and on no others.

    Measured: 1 771 days are in both tables, 170 in one of them.
    """
    found, shared = set[tuple[str, str, date]](), 0
    for region in REGIONS:
        own, other = ours(region), {day for day in theirs[region] if day.year in YEARS}
        assert len(other) >= 6 * len(YEARS), region
        found |= {("ours", region, day) for day in own - other}
        found |= {("theirs", region, day) for day in other - own}
        shared += len(own & other)
    explained = set[tuple[str, str, date]]().union(*(row.cells for row in DIFFERENCES))
    print(f"{shared} days in both tables, {len(found)} in one of them")  # noqa: T201 - shown with -s
    assert found == explained
    assert len(found) < 0.1 * shared


def test_no_difference_is_explained_twice() -> None:
    """Each row stands for days of its own, and says what they are."""
    cells = [cell for row in DIFFERENCES for cell in row.cells]
    assert len(cells) == len(set(cells))
    assert all(len(row.why) > 20 for row in DIFFERENCES)
