"""Reading a map holds what is asked for and not the map: four times the map is hardly more memory."""

import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

from tests.nearby.map_writer import Tags, write_map

READ = """
import resource, sys
from pathlib import Path
from tripplan.nearby.map_places import read_places
found = read_places(Path(sys.argv[1]))
print(len(found), resource.getrusage(resource.RUSAGE_SELF).ru_maxrss)
"""
PLACES = 500


def a_map(path: Path, buildings: int) -> Path:
    """Five hundred museums among so many buildings of four corners each."""
    nodes: dict[int, tuple[float, float, Tags]] = {}
    ways: dict[int, tuple[list[int], Tags]] = {}
    for number in range(buildings):
        corners = [4 * number + corner + 1 for corner in range(4)]
        for corner in corners:
            nodes[corner] = (40 + corner % 1000 / 500, -90 - corner // 1000 / 5000, {})
        museum = number % (buildings // PLACES) == 0
        tags = {"tourism": "museum", "name": f"Museum {number}"} if museum else {"building": "yes"}
        ways[number + 1] = ([*corners, corners[0]], tags)
    return write_map(path, nodes, ways)


def peak_kilobytes(path: Path) -> int:
    """The most memory a process of its own held while it read a map [kB]."""
    done = subprocess.run([sys.executable, "-c", READ, str(path)], capture_output=True, text=True, check=True)
    found, peak = map(int, done.stdout.split())
    assert found == PLACES
    return peak


def test_memory_goes_with_the_places_and_not_with_the_map(
    tmp_path: Path, tell: Callable[[str], None]
) -> None:
    """20 000 and 80 000 buildings with the same 500 museums: at most 1.3 times the memory."""
    small, large = a_map(tmp_path / "small.osm.pbf", 20_000), a_map(tmp_path / "large.osm.pbf", 80_000)
    assert large.stat().st_size > 3.5 * small.stat().st_size
    ratio = peak_kilobytes(large) / peak_kilobytes(small)
    tell(f"a map four times as large: {ratio:.2f} times the memory")
    assert ratio < 1.3, f"four times the map took {ratio:.2f} times the memory"
