"""How much memory a survey of 50,000 openings takes from the file to the project: a bound, not a ratio."""

import subprocess
import sys

import pytest

pytestmark = pytest.mark.bench

MOST_MB = 700
OPENINGS = 50_000
WORK = """
import sys
from pathlib import Path
from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model.project import create_project
from hwsched.operations.survey.survey_import import import_survey
with create_project(sys.argv[2], "Yard") as project:
    done = import_survey(project, Path(sys.argv[1]), SurveyOptions(bare_unit="in"), who="t")
# The system's own count of resources hands on what whoever started the process held.
told = open("/proc/self/status").read()
print(len(done.preview.new), int(told.split("VmHWM:")[1].split()[0]) // 1024)
"""


def test_fifty_thousand_openings_fit_in_memory(tmp_path):
    path = tmp_path / "list.csv"
    rows = (f"D-{n},{n % 9},Hall,R{n},LH,{('-', '90', 'none')[n % 3]},36,84,1 3/4,HM,seen" for n in range(OPENINGS))
    header = "Mark,Level,Room from,Room to,Hand,Fire rating,Width,Height,Thickness,Material,Notes"
    path.write_text("\n".join((header, *rows)), encoding="utf-8")
    words = [sys.executable, "-c", WORK, str(path), str(tmp_path / "p.hwsched")]
    done = subprocess.run(words, capture_output=True, text=True, check=True)
    count, peak_mb = map(int, done.stdout.split())
    print(f"{count:,} openings taken in with {peak_mb} MB at most; {MOST_MB} MB are allowed")
    assert (count, peak_mb <= MOST_MB) == (OPENINGS, True), peak_mb
