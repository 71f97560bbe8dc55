"""The road engine: whether it is installed, where its builder is, and how its files are opened.

Only this file knows the engine. It is an optional package, so it is imported when it is needed.
"""

import copy
import json
import os
import shutil
import sys
import tempfile
from collections.abc import Mapping
from functools import cache
from importlib import import_module, metadata
from pathlib import Path
from typing import Any

from tripplan.errors import RoadsUnusable

PACKAGE = "pyvalhalla"
_MODULE = "valhalla"
_BUILDER = "valhalla_build_tiles"
_FIRST_PYTHON = (3, 12)
_CACHE_BYTES = 300_000_000
"""The engine keeps this much of a region in memory; its own default is a gigabyte."""
_FURTHEST_METRES = 5_000_000
_MOST_PAIRS = 100_000


@cache
def roads_missing() -> str | None:
    """What is missing for real roads, in one sentence; None where nothing is."""
    if sys.version_info < _FIRST_PYTHON:
        return (
            "Real roads need Python 3.12 or newer, and this is Python "
            f"{sys.version_info.major}.{sys.version_info.minor}; distances and times are estimated instead."
        )
    try:
        import_module(_MODULE)
    except ImportError:
        return (
            f"Real roads need the package {PACKAGE}, which tripplan/roads/requirements.txt installs; "
            "distances and times are estimated instead."
        )
    if builder_program() is None:
        return f"The program {_BUILDER} of the package {PACKAGE} is missing; install the package again."
    return None


def engine_version() -> str:
    """The installed engine's version; regions can only be read by the one they were built with."""
    return metadata.version(PACKAGE)


def builder_program() -> Path | None:
    """The program that builds a region: the package's own, else one on the PATH."""
    found = shutil.which(_BUILDER, path=str(_package_folder() / "bin")) or shutil.which(_BUILDER)
    return Path(found) if found else None


def builder_environment(environment: Mapping[str, str]) -> dict[str, str]:
    """The environment the builder is started in; on Windows its libraries must be found on the PATH."""
    libraries = _package_folder().parent / f"{PACKAGE}.libs"
    if os.name != "nt":
        return dict(environment)
    return {**environment, "PATH": os.pathsep.join((str(libraries), environment.get("PATH", "")))}


def _package_folder() -> Path:
    return Path(str(import_module(_MODULE).__file__)).parent


def engine_config(tiles: Path, *, talkative: bool = False) -> dict[str, Any]:
    """The engine's settings for one region.

    Args:
        tiles: the folder of the road network; must exist.
        talkative: whether it tells on its output what it does.
    """
    config: dict[str, Any] = copy.deepcopy(import_module(_MODULE).get_config("", tiles, talkative))
    if talkative:
        config["logging"]["color"] = False
    network = config["mjolnir"]
    # Files of other uses, at places of a server; nothing of theirs is read here.
    for name in ("traffic_extract", "admin", "landmarks", "timezone", "transit_dir", "transit_feeds_dir"):
        network.pop(name, None)
    network["max_cache_size"] = _CACHE_BYTES
    # Finds the way to points behind a private road as well, as its answer for a single way does.
    config["thor"]["costmatrix"]["allow_second_pass"] = True
    config["service_limits"]["auto"]["max_matrix_distance"] = _FURTHEST_METRES
    config["service_limits"]["auto"]["max_matrix_location_pairs"] = _MOST_PAIRS
    return config


class Engine:
    """The engine with one region open; one thread at a time.

    Raises:
        RoadsUnusable: the region cannot be opened.
    """

    def __init__(self, tiles: Path) -> None:
        engine = import_module(_MODULE)
        self._no_answer: type[RuntimeError] = engine.ValhallaError
        try:
            with tempfile.TemporaryDirectory() as folder:
                # Given no file, the engine would make one of its own and leave it behind.
                settings = Path(folder) / "settings.json"
                settings.write_text(json.dumps(engine_config(tiles)), encoding="utf-8")
                self._actor = engine.Actor(settings)
        except (OSError, RuntimeError) as trouble:
            raise RoadsUnusable(f"the road network in {tiles} cannot be opened: {trouble}") from trouble

    def matrix(self, request: Mapping[str, Any]) -> dict[str, Any] | None:
        """Distances and times from one point to many; None where the engine refuses the question."""
        try:
            answer: dict[str, Any] = self._actor.matrix(dict(request))
        except self._no_answer:
            return None
        return answer

    def way(self, request: Mapping[str, Any]) -> dict[str, Any] | None:
        """One way in full; None where the engine finds none."""
        try:
            answer: dict[str, Any] = self._actor.route(dict(request))
        except self._no_answer:
            return None
        return answer
