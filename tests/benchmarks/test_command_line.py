"""Starting the command line, as ratios to a bare interpreter, and listing 10,000 openings, to a bare reading."""

import resource
import subprocess
import sys
import time

import pytest

from hwsched.cli import ENTRIES
from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model.project import create_project
from hwsched.operations.survey.survey_import import import_survey
from tests.benchmarks.survey_workbook import read_bare, write_survey

pytestmark = pytest.mark.bench


def took(*words, times=5):
    """Least time of a process of the interpreter; the first run, which compiles, does not count."""
    found = []
    for _ in range(times + 1):
        start = time.perf_counter()
        subprocess.run([sys.executable, *words], capture_output=True, check=True)
        found.append(time.perf_counter() - start)
    return min(found[1:])


def processor_s(*words, times=5):
    """Least time of the processor that a process of the interpreter takes; the first run does not count."""
    found = []
    for _ in range(times + 1):
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        subprocess.run([sys.executable, *words], capture_output=True, check=True)
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        found.append(after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime)
    return min(found[1:])


@pytest.fixture(scope="module")
def bare():
    return took("-c", "pass", times=15)


def project_of(folder, openings):
    path = folder / "survey.xlsx"
    write_survey(path, openings)
    with create_project(folder / "p.hwsched", "P", bare_unit="in") as project:
        import_survey(project, path, SurveyOptions(), who="b")
    return path, folder / "p.hwsched"


def test_help_within_two_bare_interpreters(bare):
    ratio = took("-m", "hwsched", "--help", times=15) / bare
    print(f"\nhelp: {ratio:.2f} bare interpreters (at most 2)")
    assert ratio <= 2


def test_every_verb_s_help_within_four_bare_interpreters(bare):
    ratios = {each.spelling: took("-m", "hwsched", *each.spelling.split(), "--help") / bare for each in ENTRIES}
    worst = sorted(ratios, key=ratios.__getitem__)[-3:]
    print("\nhelp of a verb: " + ", ".join(f"{name} {ratios[name]:.2f}" for name in worst) + " (at most 4)")
    assert max(ratios.values()) <= 4


def test_a_list_of_20_openings_within_eight_bare_interpreters(bare, tmp_path):
    _, project = project_of(tmp_path, 20)
    ratio = took("-m", "hwsched", "survey", "list", str(project), "openings", times=15) / bare
    print(f"\nlist of 20 openings: {ratio:.2f} bare interpreters (at most 8)")
    assert ratio <= 8


def test_10000_openings_as_json_within_three_twentieths_of_bare_reading(tmp_path):
    path, project = project_of(tmp_path, 10_000)

    def read():
        start = time.process_time()
        read_bare(path)
        return time.process_time() - start

    reading = min(read() for _ in range(2))
    # By the time of the processor: what others do on the machine takes the clock's from either.
    ratio = processor_s("-m", "hwsched", "survey", "list", str(project), "openings", "--json") / reading
    print(f"\n10,000 openings as JSON: {ratio:.3f} R (at most 0.15)")
    assert ratio <= 0.15
