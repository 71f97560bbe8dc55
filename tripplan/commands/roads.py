"""`tripplan roads`: real roads of a region, from a map file, for all pairs of points inside."""

from collections.abc import Mapping

from tripplan.clock import clock_from
from tripplan.commands.input.settings import ASKED, settings_from
from tripplan.commands.options.files import RoadsAskOptions, RoadsBuildOptions
from tripplan.commands.options.shared import TaskOptions
from tripplan.commands.output.console import Console
from tripplan.commands.output.progress_bar import ProgressBar
from tripplan.documents.where import Point
from tripplan.errors import Finding, InputFaults
from tripplan.files.locations.gazetteer import parse_coordinates
from tripplan.language import wording
from tripplan.planning.travel.drive_sources import known_drive
from tripplan.records.location import data_folder
from tripplan.regular_file import path_from
from tripplan.roads.building import build_region, megabytes, space_for
from tripplan.roads.engine import roads_missing
from tripplan.roads.extract import read_extract
from tripplan.roads.network import CREDIT, RoadNetwork
from tripplan.roads.regions import Region, RegionFolder, region_name

_ANY_COUNTRY = ""


def run(task: str, options: TaskOptions, console: Console, environment: Mapping[str, str]) -> int:
    """Carry out one of the four tasks."""
    settings = settings_from(options, environment)
    folder = data_folder(settings)
    if task == "build":
        return _build(options, console, RegionFolder(folder), settings)
    if task == "remove":
        RegionFolder(folder).remove(options.name)
        console.line(f"{options.name} is removed.")
        return 0
    if task == "ask":
        return _ask(options, console, RoadNetwork(folder))
    return _list(console, RoadNetwork(folder))


def _build(
    options: RoadsBuildOptions, console: Console, folder: RegionFolder, settings: Mapping[str, str]
) -> int:
    missing = roads_missing()
    if missing:
        console.remark(missing)
        return 1
    extract = read_extract(path_from(options.file))
    name = region_name(options.name or extract.path.name)
    space = space_for(extract, folder, name)
    console.line(
        f"{extract.path.name} has {megabytes(extract.size)}. Building {name} takes up to "
        f"{megabytes(space.building)} on the disk, of which about {megabytes(space.afterwards)} stay; "
        f"{megabytes(space.free)} are free."
    )
    if not space.enough:
        console.remark("Nothing was built: there is not enough room.")
        return 1
    console.stdout.flush()
    with ProgressBar(console) as bar:
        region = build_region(extract, name, folder, clock_from(settings)(), bar.show)
    console.line(f"Done. {_in_words(region)}")
    console.line(f"Credit: {CREDIT}.")
    return 0


def _list(console: Console, network: RoadNetwork) -> int:
    regions, unfinished = network.folder.regions(), network.folder.unfinished()
    for region in regions:
        console.line(_in_words(region))
    for name in unfinished:
        how = "is being built" if network.folder.being_built(name) else "is not finished: build it again"
        console.line(f"{name} {how}.")
    if regions:
        console.line(f"Credit: {CREDIT}.")
    elif not unfinished:
        console.line("There are no roads on this computer; distances and times are estimated.")
    for reason in dict.fromkeys(filter(None, (roads_missing(), *network.unusable()))):
        console.line(reason)
    return 0


def _in_words(region: Region) -> str:
    box = region.box
    dated = f"map of {region.map_date}" if region.map_date else "map without a date"
    return (
        f"{region.name}: latitude {box.south:.2f} to {box.north:.2f}, longitude {box.west:.2f} to "
        f"{box.east:.2f}; {dated}, {megabytes(region.size)}."
    )


def _ask(options: RoadsAskOptions, console: Console, network: RoadNetwork) -> int:
    findings: list[Finding] = []
    origin = _point(options.origin, "FROM", findings)
    destination = _point(options.destination, "TO", findings)
    if origin is None or destination is None:
        raise InputFaults(tuple(findings))
    (roads,) = network.drives(origin, (destination,))
    drive = known_drive(origin, destination, _ANY_COUNTRY, roads=roads)
    for unit in ("km", "mi"):
        console.line(wording.distance_range(drive.km, unit))
    console.line(wording.minutes_range(drive.minutes))
    console.line(f"{drive.source.origin}: {drive.source.text}.")
    for note in drive.notes:
        console.line(note, 2)
    if roads is None:
        reasons = dict.fromkeys(filter(None, (roads_missing(), *network.unusable())))
        for reason in reasons or ("No region on this computer covers both points and joins them by road.",):
            console.line(reason)
    return 0


def _point(text: str, field: str, findings: list[Finding]) -> Point | None:
    try:
        return parse_coordinates(text)
    except ValueError as trouble:
        findings.append(Finding(ASKED, field, text[:60], str(trouble)))
        return None
