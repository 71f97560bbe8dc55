"""Builds a region's road network from a map file, in child processes and in two halves.

The first half reads the map file; the second lays out the network. A build that was interrupted in its second
half starts again with the second half, one that was interrupted earlier starts again from the beginning. The
engine changes its files in place, so nothing smaller can be taken up again safely.
"""

import json
import math
import os
import shutil
import subprocess
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from pydantic import BaseModel, ConfigDict, ValidationError

from tripplan.errors import RoadsUnusable
from tripplan.roads.engine import (
    builder_environment,
    builder_program,
    engine_config,
    engine_version,
    roads_missing,
)
from tripplan.roads.extract import Extract
from tripplan.roads.locking import RegionInUse, only_one
from tripplan.roads.regions import BoundingBox, Region, RegionFolder

SPACE_WHILE_BUILDING, SPACE_AFTERWARDS = 8.0, 1.6
"""Space on the disk, as multiples of the map file's size. Measured with engine 3.9.1: a map file of 1.3 MB
took 5.7 times its size at most and 1.1 times afterwards, one of 31 MB took 7.4 and 1.4 times; rounded up."""
_SPARE_BYTES = 50_000_000

Progress = Callable[[float, str], None]
"""Told the share that is done [0-1] and what is done now."""

_LOG, _EXTRACT, _HALFWAY, _SETTINGS, _PROGRESS = (
    "log.txt",
    "extract.json",
    "halfway.json",
    "settings.json",
    "progress.json",
)


@dataclass(frozen=True)
class _Step:
    """Some of the engine's stages, from one to another.

    Attributes:
        first, last: the stages' names.
        doing: what happens, in words.
        weight: the share of the time it takes, measured on a map file of 31 MB [%].
    """

    first: str
    last: str
    doing: str
    weight: int


_READING = (
    _Step("initialize", "parseways", "reading the roads", 31),
    _Step("parserelations", "parseareaways", "reading turn rules", 3),
    _Step("parsenodes", "parsenodes", "reading the points on the roads", 21),
    _Step("buildareas", "constructedges", "joining the roads", 2),
)
_LAYING_OUT = (
    _Step("build", "build", "laying out the network", 10),
    _Step("enhance", "bss", "working out speeds", 16),
    _Step("hierarchy", "shortcuts", "preparing for long ways", 8),
    _Step("restrictions", "elevation", "adding turn rules", 3),
    _Step("validate", "validate", "checking the network", 6),
)
_ALL_STEPS = (*_READING, *_LAYING_OUT)
_IN_THE_WAY = ("*.gph", "edge_shapes.bin", "new_nodes_to_old_nodes.bin", "old_nodes_to_new_nodes.bin")
"""What the second half makes; it is removed before that half starts again."""
_CHANGED = "edges.bin"
"""The one file of the first half that the second changes; engine 3.9.1 left all others as they were."""


@dataclass(frozen=True)
class Space:
    """Room on the disk [bytes].

    Attributes:
        building: what building takes at most.
        afterwards: what stays.
        free: what there is.
    """

    building: int
    afterwards: int
    free: int

    @property
    def enough(self) -> bool:
        """Whether there is room to build."""
        return self.building <= self.free


class _Halfway(BaseModel):
    """The files of the first half, with their sizes [bytes]; written when it is finished."""

    model_config = ConfigDict(frozen=True)

    engine: str
    files: dict[str, int]


class BuildState(BaseModel):
    """How far a build is.

    Attributes:
        share: what is done [0-1].
        doing: what was done last, in words.
        failed: why it ended, in words; None where it did not.
    """

    model_config = ConfigDict(frozen=True)

    share: float
    doing: str
    failed: str | None = None


def space_for(extract: Extract, folder: RegionFolder, name: str) -> Space:
    """The room that building a region takes, and what is free where it would be built."""
    there = next(parent for parent in (folder.path, *folder.path.parents) if parent.exists())
    building = math.ceil(SPACE_WHILE_BUILDING * extract.size) + _SPARE_BYTES
    return Space(
        building=max(0, building - _size_of(folder.work(name))),
        afterwards=math.ceil(SPACE_AFTERWARDS * extract.size),
        free=shutil.disk_usage(there).free,
    )


def build_region(
    extract: Extract, name: str, folder: RegionFolder, now: datetime, progress: Progress
) -> Region:
    """Build a region's road network; an older one of the same name is used until this one is finished.

    Args:
        extract: the map file.
        name: what to call the region.
        folder: where the regions lie.
        now: for the record, zone-aware.
        progress: told how far it is.

    Returns:
        The region, ready for use.

    Raises:
        RoadsUnusable: the engine is missing or fails, the room does not suffice, or another window builds the
            same region; no half region is ever used.
    """
    missing = roads_missing()
    if missing:
        raise RoadsUnusable(missing)
    work = folder.work(name)
    try:
        with only_one(folder.lock(name)) as lock:
            try:
                return _build(extract, name, folder, now, progress, lock)
            except RoadsUnusable as trouble:
                if work.is_dir():
                    _write_state(work, BuildState(share=0, doing="", failed=str(trouble)))
                raise
    except RegionInUse:
        raise RoadsUnusable(f"{name} is being built already") from None
    except OSError as trouble:
        raise RoadsUnusable(f"{name} cannot be built: {trouble}") from trouble


def build_state(folder: RegionFolder, name: str) -> BuildState | None:
    """How far the build of a region is, or was when it ended; None where there is none."""
    try:
        return BuildState.model_validate_json((folder.work(name) / _PROGRESS).read_text(encoding="utf-8"))
    except (OSError, ValidationError):
        return None


def extract_of(folder: RegionFolder, name: str) -> Path | None:
    """The map file that an unfinished build was begun from."""
    try:
        return Path(json.loads((folder.work(name) / _EXTRACT).read_text(encoding="utf-8"))["path"])
    except (OSError, ValueError, KeyError, TypeError):
        return None


def _build(
    extract: Extract, name: str, folder: RegionFolder, now: datetime, progress: Progress, lock: int
) -> Region:
    work = folder.work(name)
    tiles = work / "tiles"
    halfway = _resumable(work, extract)
    space = space_for(extract, folder, name)
    if not space.enough:
        raise RoadsUnusable(
            f"building {name} takes up to {megabytes(space.building)}, and {megabytes(space.free)} are free"
        )
    if not halfway:
        shutil.rmtree(work, ignore_errors=True)
        tiles.mkdir(parents=True)
        (work / _EXTRACT).write_text(json.dumps(_identity(extract)), encoding="utf-8")
    (work / _SETTINGS).write_text(json.dumps(engine_config(tiles, talkative=True)), encoding="utf-8")

    def carry_out(steps: tuple[_Step, ...]) -> None:
        for step in steps:
            share = sum(s.weight for s in _ALL_STEPS[: _ALL_STEPS.index(step)]) / 100
            _write_state(work, BuildState(share=share, doing=step.doing))
            progress(share, step.doing)
            _run_builder(step, extract, work, lock)

    if not halfway:
        carry_out(_READING)
        _keep_halfway(work)
    _back_to_halfway(work)
    carry_out(_LAYING_OUT)
    region = Region(
        name=name,
        box=extract.box or _box_of_tiles(tiles),
        map_date=extract.map_date,
        built_at=now,
        engine=engine_version(),
        size=sum(path.stat().st_size for path in tiles.rglob("*.gph")),
    )
    (work / _HALFWAY).unlink()
    for path in (*tiles.glob("*.bin"), *(path for path in work.iterdir() if path.is_file())):
        path.unlink()
    folder.put_in_place(region)
    progress(1.0, "done")
    return region


def _identity(extract: Extract) -> dict[str, object]:
    """What tells a map file from another one."""
    changed = extract.path.stat().st_mtime_ns
    return {"path": str(extract.path.absolute()), "size": extract.size, "changed": changed}


def _resumable(work: Path, extract: Extract) -> bool:
    """Whether the first half was finished from the same map file, with the same engine, and is all there."""
    try:
        begun = json.loads((work / _EXTRACT).read_text(encoding="utf-8"))
        halfway = _Halfway.model_validate_json((work / _HALFWAY).read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return False
    if begun != _identity(extract) or halfway.engine != engine_version():
        return False
    tiles = work / "tiles"
    there = {path.name: path.stat().st_size for path in tiles.iterdir() if path.is_file()}
    kept = work / _CHANGED
    return kept.exists() and all(
        (kept.stat().st_size if file == _CHANGED else there.get(file)) == size
        for file, size in halfway.files.items()
    )


def _keep_halfway(work: Path) -> None:
    tiles = work / "tiles"
    shutil.copyfile(tiles / _CHANGED, work / _CHANGED)
    files = {path.name: path.stat().st_size for path in tiles.iterdir() if path.is_file()}
    halfway = _Halfway(engine=engine_version(), files=files)
    _write_whole(work / _HALFWAY, halfway.model_dump_json())


def _back_to_halfway(work: Path) -> None:
    """Put the files back as the first half left them."""
    tiles = work / "tiles"
    for pattern in _IN_THE_WAY:
        for path in tiles.rglob(pattern):
            path.unlink()
    shutil.copyfile(work / _CHANGED, tiles / _CHANGED)


def _run_builder(step: _Step, extract: Extract, work: Path, lock: int) -> None:
    """Carry out a step in a child process; whatever happens to it, this process goes on."""
    command = [
        str(builder_program()),
        *("--config", str(work / _SETTINGS), "--start", step.first, "--end", step.last),
        str(extract.path.absolute()),
    ]
    with (work / _LOG).open("ab") as log:
        done = subprocess.run(
            command,
            stdin=subprocess.DEVNULL,
            stdout=log,
            stderr=log,
            env=builder_environment(os.environ),
            cwd=work,
            check=False,
            # The child holds the lock as well, so that nobody builds beside it should this process be killed.
            pass_fds=() if os.name == "nt" else (lock,),
        )
    if done.returncode:
        raise RoadsUnusable(
            f"the road engine stopped while {step.doing} (status {done.returncode}); the map file may be "
            f"damaged or the memory too small. Its last words: {_last_words(work / _LOG)}"
        )


def _last_words(log: Path) -> str:
    with log.open("rb") as file:
        file.seek(max(0, log.stat().st_size - 2000))
        lines = file.read().decode(errors="replace").split("\n")
    return next((line.strip() for line in reversed(lines) if line.strip()), "none")[-300:]


def _write_state(work: Path, state: BuildState) -> None:
    _write_whole(work / _PROGRESS, state.model_dump_json())


def _write_whole(path: Path, text: str) -> None:
    """Write a file so that it is there as a whole or not at all."""
    partial = path.with_suffix(".partial")
    with partial.open("w", encoding="utf-8") as file:
        file.write(text)
        file.flush()
        os.fsync(file.fileno())
    partial.replace(path)


def _box_of_tiles(tiles: Path) -> BoundingBox:
    """The area of the engine's own squares of a quarter degree, numbered from the south-west by rows.

    Raises:
        RoadsUnusable: the map file holds no roads.

    Source: Valhalla documentation, Tiles: level 2 has 0.25 degrees a side, 1440 to a row (from memory).
    """
    numbers = [int("".join(path.with_suffix("").parts[-3:])) for path in (tiles / "2").rglob("*.gph")]
    if not numbers:
        raise RoadsUnusable("there are no roads in this map file")
    rows, columns = [n // 1440 for n in numbers], [n % 1440 for n in numbers]
    return BoundingBox(
        west=-180 + min(columns) / 4,
        south=-90 + min(rows) / 4,
        east=-180 + (max(columns) + 1) / 4,
        north=-90 + (max(rows) + 1) / 4,
    )


def _size_of(folder: Path) -> int:
    return sum(path.stat().st_size for path in folder.rglob("*") if path.is_file())


def megabytes(size: int) -> str:
    """A size in words, such as '31 MB' or '2.4 GB'."""
    return f"{size / 1e9:.1f} GB" if size >= 1e9 else f"{max(1, round(size / 1e6))} MB"
