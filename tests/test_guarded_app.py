"""The guard that watches for connections is itself watched: it must see one."""

import subprocess
import sys
from pathlib import Path

PROBE = """
import runpy, socket, sys
from pathlib import Path
sys.argv = ["guarded_app.py", sys.argv[2], "0"]
guard = runpy.run_path({script!r})
with guard["GuardedSocket"](socket.AF_INET, socket.SOCK_DGRAM) as outside:
    outside.connect(("192.0.2.1", 9))
with guard["GuardedSocket"](socket.AF_INET, socket.SOCK_DGRAM) as inside:
    inside.connect(("127.0.0.1", 9))
"""


def test_the_guard_notes_an_outside_address_and_no_inside_one(tmp_path: Path) -> None:
    """A connection to a documentation address (RFC 5737, 192.0.2.0/24) is noted, one to loopback is not."""
    script = str(Path(__file__).with_name("guarded_app.py"))
    log = tmp_path / "outside.log"
    command = [sys.executable, "-c", PROBE.format(script=script), "guard", str(log)]
    subprocess.run(command, check=True, timeout=60)
    assert log.read_text(encoding="utf-8").split() == ["192.0.2.1"]
