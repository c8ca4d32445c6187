"""What a screen reader is told of register and inspector, over the bus that it listens to (AT-SPI)."""

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

READER = Path(__file__).with_name("read_aloud.py")
SYSTEM = "/usr/bin/python3"
WANTED = ("dbus-run-session", "xvfb-run")


def lacking():
    """What of the system's packages is not there; empty: nothing."""
    absent = [each for each in WANTED if shutil.which(each) is None]
    if not Path("/usr/libexec/at-spi-bus-launcher").exists():
        absent.append("at-spi2-core")
    if not Path(SYSTEM).exists() or subprocess.run([SYSTEM, "-c", "import pyatspi"], capture_output=True).returncode:
        absent.append("python3-pyatspi")
    return ", ".join(absent)


@pytest.mark.slow
def test_a_screen_reader_reads_the_register_and_the_chosen_opening(corner_file, tmp_path):
    absent = lacking()
    if absent:
        pytest.skip(f"not installed: {absent}")
    kept = tmp_path / "hwsched"
    kept.mkdir()
    (kept / "desktop.ini").write_text("[layout]\nplace=openings\n[person]\ntoured=true\n", encoding="utf-8")
    desktop = f"{sys.executable} -m hwsched project desktop {corner_file} --who ann"
    both = f"{desktop} & shown=$!; {SYSTEM} {READER} B/1; ended=$?; kill $shown; wait $shown; exit $ended"
    done = subprocess.run(
        ["dbus-run-session", "--", "xvfb-run", "-a", "-s", "-screen 0 1366x768x24", "bash", "-c", both],
        env={**os.environ, "QT_QPA_PLATFORM": "xcb", "QT_LINUX_ACCESSIBILITY_ALWAYS_ON": "1",
             "XDG_CONFIG_HOME": str(tmp_path), "PYTHONPATH": os.pathsep.join(sys.path)},
        capture_output=True, text=True, timeout=90,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr[-2000:]
    said = json.loads(done.stdout.splitlines()[-1])
    assert said["rows"] > 20
    assert said["cells"][0] == "B/1"
    assert all(name.strip() for name in said["columns"])
    # The facts of the first opening, which is chosen when a project was opened: each by its name and its value.
    assert {"Mark", "B/1", "Building", "Boat Store"} <= set(said["facts"])
