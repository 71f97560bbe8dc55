"""`tripplan nearby`: places to go near home, out of a map file."""

from collections.abc import Mapping
from functools import partial

from tripplan.commands.answers.nearby import NearbyAnswer
from tripplan.commands.input.on_record import needed, opened
from tripplan.commands.input.settings import settings_from
from tripplan.commands.options.files import NearbyOptions
from tripplan.commands.output.console import Console
from tripplan.commands.output.progress_bar import ProgressBar
from tripplan.errors import Finding, InputFaults, UnknownName
from tripplan.language import wording
from tripplan.nearby.kinds import NAMES
from tripplan.nearby.listing import ATTRIBUTION, NearbyPlace, list_nearby
from tripplan.nearby.map_places import STEPS, OsmiumMissing, read_places
from tripplan.regular_file import path_from
from tripplan.services import family_in


def run(options: NearbyOptions, console: Console, environment: Mapping[str, str]) -> int:
    """List them, nearest first; 1 where there is none."""
    unknown = [kind for kind in options.kind if kind not in NAMES]
    if unknown:
        raise UnknownName("kind of place", unknown[0], NAMES)
    on_record = opened(options, settings_from(options, environment))
    household = needed(family_in(on_record.records)).household
    with ProgressBar(console) as bar:
        try:
            places = read_places(path_from(options.file), partial(_show, bar))
        except OsmiumMissing as missing:
            raise InputFaults((Finding(options.file, "", "", str(missing)),)) from missing
    found = list_nearby(
        places,
        household.home.point,
        household.home.country,
        kinds=options.kind,
        topic=options.topic or "",
        most_minutes=options.drive,
    )
    shown = found[: options.most]
    if options.json:
        console.json(NearbyAnswer(tuple(shown), ATTRIBUTION))
        return 0 if shown else 1
    for place in shown:
        _say(place, household.units, console)
    if len(found) > len(shown):
        console.remark(f"{len(found) - len(shown)} more; --most shows them.")
    if not found:
        console.line("The map holds no such place within reach.")
    console.line(f"Map data {ATTRIBUTION}. Drives are estimates.")
    return 0 if found else 1


def _show(bar: ProgressBar, step: str, found: int) -> None:
    if not found:
        at = STEPS.index(step)
        bar.show(at / len(STEPS), f"step {at + 1} of {len(STEPS)}: {step}")


def _say(place: NearbyPlace, units: str, console: Console) -> None:
    drive = f"{wording.distance(place.drive_km.likely, units)}, {wording.minutes_range(place.drive_minutes)}"
    console.line(f"{place.name or 'without a name'} ({place.kind}): {drive}")
    entry = {True: "free entry", False: place.charge or "entry costs something", None: ""}[place.free]
    facts = (
        place.address,
        place.opening_hours and f"open {place.opening_hours}",
        entry,
        place.telephone,
        place.web,
        place.wheelchair and f"wheelchair: {place.wheelchair}",
        place.changing_table and f"changing table: {place.changing_table}",
    )
    for fact in filter(None, facts):
        console.line(fact, 2)
