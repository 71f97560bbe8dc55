"""Where the parts meet the real world: the clock, the data folder, the demo files and the internet."""

import time as timing
from collections.abc import Container, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date
from operator import attrgetter
from pathlib import Path

from tripplan.clock import TODAY_VARIABLE, Clock, clock_from
from tripplan.documents.calendars.calendars import FamilyCalendar, SchoolCalendar
from tripplan.documents.calendars.family_days import FamilyDays
from tripplan.documents.calendars.local_days import LocalDays
from tripplan.documents.family.household import Household
from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.logbook.settings import LogbookSettings
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.documents.places.forecast import PlaceForecast
from tripplan.documents.places.idea import Idea, IdeaPlace
from tripplan.documents.places.own_figures import OwnFigures
from tripplan.documents.places.place import Place
from tripplan.documents.places.typed_drive import TypedDrive
from tripplan.errors import RecordsDamaged, RecordsUnusable
from tripplan.files.demo import read_demo
from tripplan.files.locations.gazetteer import by_town_noted
from tripplan.files.locations.online_lookup import OnlineLookup, nominatim
from tripplan.forecasts.asking import Forecasts, real_forecasts
from tripplan.language import wording
from tripplan.planning.calendar_entry.demo_outings import outings_around
from tripplan.planning.climate.stations import stations
from tripplan.planning.family.family import Family
from tripplan.planning.logbook.learning import LEARNED_FROM, with_logbook
from tripplan.records.copies.daily import back_up, sweep
from tripplan.records.copies.listed import DayCopy
from tripplan.records.damage.rebuild import remove_damaged_files
from tripplan.records.kinds import ComparedPlaces
from tripplan.records.location import FOLDER_VARIABLE, data_folder
from tripplan.records.opening import Which, open_records, show, shown
from tripplan.records.planned_outings import outings_ever
from tripplan.records.restoring import bring_back, lost
from tripplan.records.store import Records, StoredDocument
from tripplan.roads.network import RoadNetwork

SETTINGS = (FOLDER_VARIABLE, TODAY_VARIABLE)
"""The environment variables that are read."""

_MOST_NAMED = 5


@dataclass(frozen=True)
class Services:
    """The real parts, opened and ready.

    Attributes:
        own: the family's own records.
        demo: the invented family's records.
        demo_folder: the files the demo is loaded from.
        clock: the present moment, zone-aware.
        roads: the road networks on this computer.
        look_up: asks the internet where a text lies; only when the parent presses the button.
        forecasts: asks the internet for the weather of the next days; likewise.
        warning: what could not be written at the start, in words; empty where all was.
    """

    own: Records
    demo: Records
    demo_folder: Path
    clock: Clock
    roads: RoadNetwork
    look_up: OnlineLookup
    forecasts: Forecasts
    warning: str = ""

    @property
    def which(self) -> Which:
        """Whose records are in use."""
        return shown(self.own)

    @property
    def records(self) -> Records:
        """The records in use."""
        return self.records_of(self.which)

    def records_of(self, which: Which) -> Records:
        """The family's own records, or the invented family's."""
        return self.demo if which is Which.DEMO else self.own

    def use(self, which: Which) -> None:
        """Use the family's own records, or the invented family's, from now on."""
        show(self.own, which, self.clock())

    def fill_demo(self) -> None:
        """Put the invented family back as its files describe it; the own records stay as they are.

        Raises:
            InputFaults: a demo file is damaged; nothing was changed.
        """
        demo = read_demo(self.demo_folder, self.today())
        with self.demo.change(self.clock()) as change:
            change.replace_all((*demo.documents, ComparedPlaces(places=demo.compared)))
        self.plan_demo()

    def plan_demo(self) -> None:
        """Give the invented family an outing today, one to come and one to log, unless it had one today.

        Raises:
            RecordsUnusable: nothing can be written; nothing was changed.
        """
        family, now = family_on_record(self.demo), self.clock()
        if family is None:
            return
        ever = outings_ever(self.demo)
        days = {kept.value.day for kept in (*ever.planned.values(), *ever.removed.values())}
        if self.today(family) in days:
            return
        entries = [kept.value for kept in self.demo.all(LogbookEntry).values()]
        logged = {entry.planned for entry in entries}
        outings = outings_around(
            replace(family, planned=tuple(one for one in family.planned if one.id not in logged)),
            now,
            apart_from=() if (compared := self.demo.get(ComparedPlaces)) is None else compared.value.places,
            not_on=days | {entry.day for entry in entries},
        )
        with self.demo.change(now) as change:
            for outing in outings:
                change.save(outing, 0)

    def copy_daily(self) -> None:
        """Copy the family's own records, unless today has its copy; an app left running asks every day.

        Raises:
            RecordsUnusable: the copy cannot be written; older ones stay.
        """
        back_up(self.own.database, self.clock().date())

    def lost_copy(self) -> DayCopy | None:
        """The copy to put back where the file of the own records has gone; None where nothing is lost."""
        return lost(self.own)

    def put_lost_copy_back(self, copy: DayCopy) -> None:
        """Put a copy in the place of own records that have gone, and show them.

        Raises:
            RecordsUnusable: the copy is damaged, or nothing can be written; nothing was changed.
        """
        bring_back(self.own.database.path, copy, self.clock())
        self.use(Which.FAMILY)

    def warnings(self) -> tuple[str, ...]:
        """What she should know before she goes on, in words: damage, and what could not be written.

        Raises:
            RecordsUnusable: the records in use cannot be read.
        """
        said = [self.warning] if self.warning else []
        if self.own.made_anew and self.own.made_anew.aside.exists():
            said.append(str(self.own.made_anew))
        copy = self.lost_copy()
        if copy is not None:
            said.append(
                "Your own records have gone: nothing is on record, but there are copies. The last one, of "
                f"{wording.day(copy.day)}, holds {copy.holds()} records."
            )
        aside = [one.called for one in self.records.set_aside()]
        if aside:
            said.append(
                f"Not all that was saved can be read: {wording.listed(aside[:_MOST_NAMED])}"
                f"{f' and {len(aside) - _MOST_NAMED} more' if len(aside) > _MOST_NAMED else ''}. "
                "The Records page tells why, and what can be done."
            )
        return tuple(said)

    def load_demo(self) -> None:
        """Put the invented family back and use it from now on; as `fill_demo`."""
        self.fill_demo()
        self.use(Which.DEMO)

    def today(self, family: Family | None = None) -> date:
        """The date by the clock at home; by this computer's clock where no home is known yet."""
        zone = None if family is None else family.household.home.zone
        return self.clock().astimezone(zone).date()

    def family(self) -> Family | None:
        """All that planning is told about the family in use, now; None before there is a household."""
        family = family_in(self.records)
        return None if family is None else with_roads(family, self.roads).at(self.clock())


def family_in(records: Records) -> Family | None:
    """All that planning is told about the family of some records; None before there is a household.

    What its logbook teaches has taken the place of the usual figures, as far as the parent lets it.
    """
    family = family_on_record(records)
    if family is None:
        return None
    logbook = records.get(LogbookSettings)
    entries = [kept.value for kept in records.newest(LogbookEntry, LEARNED_FROM).values()]
    visits = {entry.place: entry.day for entry in sorted(entries, key=attrgetter("day")) if entry.place}
    family = replace(family, last_visits=visits)
    return with_logbook(family, entries, logbook.value if logbook else LogbookSettings())


def family_on_record(records: Records) -> Family | None:
    """The same, with the household's and the cards' own figures, whatever the logbook teaches."""
    household = records.get(Household)
    if household is None:
        return None
    cards = {place_id: kept.value for place_id, kept in cards_on_record(records).items()}
    own_week = records.get(FamilyDays)
    local = records.get(LocalDays)
    return Family(
        household=household.value,
        places=(*cards.values(), *_ideas(records, household.value, cards)),
        school_calendars=tuple(kept.value for kept in records.all(SchoolCalendar).values()),
        family_calendars=tuple(kept.value for kept in records.all(FamilyCalendar).values()),
        own_week=own_week.value if own_week else FamilyDays(),
        own_figures=tuple(kept.value for kept in records.all(OwnFigures).values()),
        typed_drives=tuple(kept.value for kept in records.all(TypedDrive).values()),
        local_days=local.value.days if local else (),
        planned=tuple(kept.value for kept in records.all(PlannedOuting).values()),
        stations=stations(),
        forecasts=tuple(kept.value for kept in records.all(PlaceForecast).values()),
    )


def cards_on_record(records: Records) -> dict[str, StoredDocument[Place]]:
    """The place cards by their ids; older ones too say where no more than the town is known."""
    return {place_id: _with_town_noted(kept) for place_id, kept in records.all(Place).items()}


def _with_town_noted(kept: StoredDocument[Place]) -> StoredDocument[Place]:
    where = by_town_noted(kept.value.where)
    if where is kept.value.where:
        return kept
    return replace(kept, value=kept.value.model_copy(update={"where": where}))


def _ideas(records: Records, household: Household, cards: Container[str]) -> Iterator[IdeaPlace]:
    """The ideas as places, with what is assumed of them; a card that has grown out of one stands for it."""
    for key, kept in records.all(Idea).items():
        if key not in cards:
            yield kept.value.as_place(household.home, household.currency)


def with_roads(family: Family, roads: RoadNetwork) -> Family:
    """The family, told what the road networks say of the way from home to each of its places."""
    points = [place.where.point for place in family.places]
    drives = roads.drives(family.household.home.point, points)
    known = zip(family.places, drives, strict=True)
    return replace(family, road_drives={place.id: drive for place, drive in known if drive is not None})


def demo_folder() -> Path:
    """Where the demo's files lie: beside the package in a checkout, inside it once installed."""
    checkout = Path(__file__).resolve().parents[1] / "demo_places"
    return checkout if checkout.is_dir() else Path(__file__).resolve().parent / "demo_places"


def open_services(environment: Mapping[str, str]) -> Services:
    """Open both records, back up the family's own, and fill the demo on its first start.

    Where nothing can be written, on a full or write-protected disk, the records can still be read.

    Args:
        environment: environment variables, of which `SETTINGS` are read.

    Raises:
        RecordsUnusable: the records cannot be opened.
        InputFaults: a demo file is damaged.
        PlanError: `TRIPPLAN_TODAY` is no date.
    """
    clock = clock_from(environment)
    folder = data_folder(environment)
    own = open_records(folder, Which.FAMILY, clock())
    demo = open_records(folder, Which.DEMO, clock())
    look_up = OnlineLookup(nominatim(), timing.monotonic, timing.sleep)
    services = Services(own, demo, demo_folder(), clock, RoadNetwork(folder), look_up, real_forecasts())
    try:
        sweep(folder)
        services.copy_daily()
        if demo.is_fresh() or demo.made_anew:
            services.fill_demo()
            remove_damaged_files(demo.database.path)  # its files say all that was in it
        elif (kept := demo.get(Household)) is not None and not kept.value.invented:  # of an earlier version
            demo.save(kept.value.model_copy(update={"invented": True}), clock(), kept.revision)
    except RecordsDamaged:
        raise
    except RecordsUnusable as trouble:
        said = f"Nothing could be written at the start, so there may be no copy of today: {trouble}."
        return replace(services, warning=said)
    return services
