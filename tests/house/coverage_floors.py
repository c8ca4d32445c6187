"""Holds what tests reached against the floors of each room: ``python -m tests.house.coverage_floors`` after a run."""

import json
import subprocess
import sys
import tempfile
from pathlib import Path

FLOORS = {"quantities": 95, "calc": 95, "rules": 95, "fitting": 92, "operations": 90, "documents": 95}
"""Least share of lines that some test runs [%]. Raised when a room has gone well above it, never lowered."""


def shares() -> dict[str, float]:
    """Share of lines reached by each room with a floor [%], from the data of the last run."""
    with tempfile.TemporaryDirectory() as folder:
        told = Path(folder) / "coverage.json"
        command = [sys.executable, "-m", "coverage", "json", "-q", "-o", str(told)]
        subprocess.run(command, check=True)
        files = json.loads(told.read_text(encoding="utf-8"))["files"]
    found = {}
    for room in FLOORS:
        sums = [each["summary"] for name, each in files.items() if Path(name).parts[:2] == ("hwsched", room)]
        found[room] = 100 * sum(s["covered_lines"] for s in sums) / sum(s["num_statements"] for s in sums)
    return found


def main() -> int:
    low = []
    for room, share in shares().items():
        print(f"coverage of {room}: {share:.1f} % (at least {FLOORS[room]} %)")
        if share < FLOORS[room]:
            low.append(room)
    if low:
        print(f"too little is tested in {', '.join(low)}", file=sys.stderr)
    return bool(low)


if __name__ == "__main__":
    sys.exit(main())
