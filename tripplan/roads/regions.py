"""The regions whose roads are on this computer: a folder each, and what is known about it."""

import re
import shutil
from collections.abc import Iterator
from datetime import date, datetime
from pathlib import Path
from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from tripplan.documents.where import Point
from tripplan.errors import Finding, InputFaults, RoadsUnusable, UnknownName
from tripplan.roads.locking import RegionInUse, only_one

_NAME = re.compile(r"[a-z0-9][a-z0-9_-]{0,39}")
_ABOUT = "region.json"
_TILES = "tiles"


class BoundingBox(BaseModel):
    """The area between two parallels and two meridians [degrees]; it does not cross the date line."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    west: float
    south: float
    east: float
    north: float

    def covers(self, point: Point) -> bool:
        """Whether a point lies inside."""
        inside = self.south <= point.latitude <= self.north
        return inside and self.west <= point.longitude <= self.east


class Region(BaseModel):
    """One region whose roads are on this computer."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    name: Annotated[str, Field(pattern=_NAME.pattern)]
    """What it is called, and its folder."""
    box: BoundingBox
    """The area its map file covers."""
    map_date: date | None
    """The date of the map data; not known where the map file does not say."""
    built_at: datetime
    """When it was built here."""
    engine: str
    """The version of the engine that built it; another one may not be able to read it."""
    size: Annotated[int, Field(ge=0)]
    """What it takes on the disk [bytes]."""


class RegionFolder:
    """The folder in which the regions lie.

    Attributes:
        path: the folder; it need not exist yet.
    """

    def __init__(self, data_folder: Path) -> None:
        self.path = data_folder / "roads"

    def tiles(self, name: str) -> Path:
        """The engine's files of a region."""
        return self.path / name / _TILES

    def work(self, name: str) -> Path:
        """Where a region is built; its name can be no region's, so that a half one is never used."""
        return self.path / f"{name}.building"

    def lock(self, name: str) -> Path:
        """The file that is held while a region is built or removed."""
        return self.path / f"{name}.lock"

    def regions(self) -> tuple[Region, ...]:
        """The regions that are finished, by name."""
        if not self.path.is_dir():
            return ()
        return tuple(region for folder in sorted(self.path.iterdir()) for region in _region_in(folder))

    def unfinished(self) -> tuple[str, ...]:
        """The regions whose building was begun and is not finished."""
        if not self.path.is_dir():
            return ()
        return tuple(sorted(folder.stem for folder in self.path.glob("*.building")))

    def put_in_place(self, region: Region) -> None:
        """Let a region that was built be used, in the place of an older one of its name.

        Raises:
            RoadsUnusable: the older one is in use elsewhere.
        """
        work, target, old = self.work(region.name), self.path / region.name, self.path / f"{region.name}.old"
        (work / _ABOUT).write_text(region.model_dump_json(indent=2), encoding="utf-8")
        try:
            shutil.rmtree(old, ignore_errors=True)
            if target.exists():
                target.rename(old)
            work.rename(target)
        except OSError as trouble:
            raise RoadsUnusable(
                f"{region.name} is built, but the older one cannot be replaced; close other windows of this "
                f"program and build it again: {trouble.strerror}"
            ) from trouble
        shutil.rmtree(old, ignore_errors=True)

    def remove(self, name: str) -> None:
        """Remove a region, or what there is of one whose building was not finished.

        Raises:
            UnknownName: there is none of this name.
            RoadsUnusable: it is being built, or its files cannot be removed.
        """
        known = (*(region.name for region in self.regions()), *self.unfinished())
        if name not in known:
            raise UnknownName("region", name, tuple(dict.fromkeys(known)))
        try:
            with only_one(self.lock(name)):
                # What says that the region is finished goes first: a half removed one is none.
                (self.path / name / _ABOUT).unlink(missing_ok=True)
                for folder in (self.path / name, self.work(name)):
                    if folder.exists():
                        shutil.rmtree(folder)
        except RegionInUse:
            raise RoadsUnusable(f"{name} is being built in another window") from None
        except OSError as trouble:
            raise RoadsUnusable(f"{name} cannot be removed: {trouble.strerror}") from trouble
        self.lock(name).unlink(missing_ok=True)

    def being_built(self, name: str) -> bool:
        """Whether some window builds this region just now."""
        if not self.lock(name).exists():
            return False
        try:
            with only_one(self.lock(name)):
                return False
        except RegionInUse:
            return True


def _region_in(folder: Path) -> Iterator[Region]:
    """The region in a folder, if it holds a finished one."""
    if not _NAME.fullmatch(folder.name):
        return
    try:
        region = Region.model_validate_json((folder / _ABOUT).read_text(encoding="utf-8"))
    except (OSError, ValidationError):
        return
    if region.name == folder.name:
        yield region


def region_name(text: str) -> str:
    """What a region is called: a name somebody typed, or that of a map file without its ending.

    Raises:
        InputFaults: the name cannot be that of a folder.
    """
    name = re.sub(r"[^a-z0-9_-]+", "-", text.strip().lower().removesuffix(".pbf").removesuffix(".osm"))
    if not _NAME.fullmatch(name):
        message = "a region is called by up to 40 letters, digits, - and _"
        raise InputFaults((Finding("region", "name", text[:60], message),))
    return name
