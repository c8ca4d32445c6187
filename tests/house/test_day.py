"""The handbook's day by script: it runs, is short, and reads no text but JSON."""

import csv
import json
import os
import re
import shutil
import subprocess
import sys

import pytest

from hwsched.paths import RESOURCES, SAMPLE

SCRIPT = RESOURCES / "handbook" / "day.sh"
TOOLS = ("bash", "jq")


def test_the_day_is_at_most_forty_lines_and_parses_no_text():
    lines = SCRIPT.read_text(encoding="utf-8").splitlines()
    assert len(lines) <= 40
    code = "\n".join(line for line in lines if not line.startswith("#"))
    assert not re.search(r"\b(grep|sed|awk|cut|tr|head|tail|sort)\b", code)


@pytest.mark.slow
@pytest.mark.skipif(any(shutil.which(tool) is None for tool in TOOLS), reason=f"needs {' and '.join(TOOLS)}")
def test_a_day_for_three_buildings(tmp_path):
    programs = tmp_path / "bin"
    programs.mkdir()
    program = programs / "hwsched"
    program.write_text(f'#!/bin/sh\nexec "{sys.executable}" -m hwsched "$@"\n')
    program.chmod(0o755)
    out = tmp_path / "a day"
    environment = {**os.environ, "PATH": f"{programs}{os.pathsep}{os.environ['PATH']}"}
    done = subprocess.run(
        ["bash", str(SCRIPT), str(SAMPLE), str(out)], env=environment, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    # Catalogue, survey, power, fit, and the waiver with its fit.
    assert done.stdout.splitlines()[-1] == "5"
    with (out / "refused.csv").open(encoding="utf-8", newline="") as file:
        refused = list(csv.reader(file))
    # The two cells that the sample's survey has wrong: a hand that is no word for one, a fraction of two readings.
    assert {row[3] for row in refused} == {"sideways", "6/8"}
    buildings = {path.stem for path in out.glob("*.csv")} - {"refused"} | {
        path.name for path in out.iterdir() if path.is_dir()
    }
    assert {"Boat Store", "Glass Annexe", "Mill House"} <= buildings
    picked = json.loads((out / "to-pick.json").read_text(encoding="utf-8"))
    assert len({line["part"] for line in picked}) == len(picked) > 20
