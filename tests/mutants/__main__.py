"""Draws one-line changes and says which of them no test sees: ``tests/run --mutants``."""

import argparse
import os
import subprocess
import sys
import tempfile
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from queue import SimpleQueue

from hwsched.operations.project.demonstration import demonstrate
from tests.mutants.sites import ROOT, Mutant, draw, mutants_of
from tests.mutants.touching import Touching, is_fresh
from tests.mutants.trying import CHOSEN, NO_TESTS, QUICK, Copy, Trial, described

CACHE = ROOT / ".mutants_cache"
NOT_RUN = ("benchmarks", "desktop", "house", "mutants")
"""Folders of tests that are not asked: ratios of time, a screen, what is written of the program, and this one."""


def main(arguments: Sequence[str] | None = None) -> int:
    parser = argparse.ArgumentParser(prog="tests/run --mutants", description=__doc__)
    parser.add_argument("count", type=int, nargs="?", default=100, help="how many are drawn (100)")
    parser.add_argument("--seed", default="1", help="of the draw (1)")
    parser.add_argument(
        "--in",
        dest="floors",
        nargs="+",
        default=["calc"],
        metavar="FLOOR",
        help="floors or modules, as calc or operations/findings/why.py: the draw is from all of them together",
    )
    parser.add_argument("--jobs", type=int, default=2, help="processes at a time (2)")
    parser.add_argument("--at-most", type=float, default=240.0, help="seconds of tests a mutant (240)")
    parser.add_argument("--least", type=float, default=0.9, help="share that has to die (0.9)")
    parser.add_argument("--tests", nargs="+", metavar="FOLDER", help="ask only tests of these folders, as calc wiring")
    parser.add_argument("--quick", action="store_true", help="ask no test that is slow or fuzz")
    parser.add_argument("--from", dest="first", type=int, default=1, metavar="N", help="begin at the Nth that is drawn")
    parser.add_argument("--to", dest="last", type=int, metavar="N", help="end with the Nth that is drawn")
    parser.add_argument("--list", action="store_true", help="only show what is drawn")
    told = parser.parse_args(arguments)
    if told.list:
        for each in part_of(draw(mutants_in(told.floors), told.count, told.seed), told.first, told.last):
            print(f"{each.file}:{each.line} {each.kind}\n{each.diff}")
        return 0
    survivors = 0
    with tempfile.TemporaryDirectory(prefix="mutants-") as folder:
        copies: SimpleQueue[Copy] = SimpleQueue()
        sample = Path(folder) / "sample"
        demonstrate(sample, who="tests", again=True)
        for number in range(told.jobs):
            copies.put(Copy(Path(folder) / str(number), sample, forks=True))
        # Read now, so that the tree may be worked on while this runs.
        drawn = part_of(draw(mutants_in(told.floors), told.count, told.seed), told.first, told.last)
        touching = measured(told.jobs, told.tests, quick=told.quick)

        def tried(mutant: Mutant) -> Trial:
            copy = copies.get()
            try:
                makes = touching.makes_sample(mutant)
                return copy.try_mutant(mutant, touching.of(mutant), at_most_s=told.at_most, makes_sample=makes)
            finally:
                copies.put(copy)

        with ThreadPoolExecutor(told.jobs) as pool:
            for trial in pool.map(tried, drawn):
                survivors += not trial.killed
                print(described(trial), flush=True)
    died = len(drawn) - survivors
    print(f"{' and '.join(told.floors)}, seed {told.seed}: {died} of {len(drawn)} die, {survivors} survive")
    return int(died < told.least * len(drawn))


def mutants_in(floors: Sequence[str]) -> list[Mutant]:
    """Return every mutant of floors or modules."""
    places = [ROOT / "hwsched" / floor for floor in floors]
    paths = [path for place in places for path in (sorted(place.rglob("*.py")) if place.is_dir() else [place])]
    return [mutant for path in paths for mutant in mutants_of(path)]


def part_of(drawn: Sequence[Mutant], first: int, last: int | None) -> Sequence[Mutant]:
    """Return those from one place of a draw to another, both with it, counted from 1: a long draw is done in parts."""
    return drawn[first - 1 : last]


def measured(jobs: int, folders: Sequence[str] | None = None, *, quick: bool = False) -> Touching:
    """Return which tests run which line; test files whose own or whose modules' text changed are run anew."""
    cache, chosen = (CACHE / "quick", QUICK) if quick else (CACHE, CHOSEN)
    found = [each.relative_to(ROOT) for each in sorted((ROOT / "tests").rglob("test_*.py"))]
    asked = [each for each in found if (each.parts[1] not in NOT_RUN if folders is None else each.parts[1] in folders)]
    files = [each.as_posix() for each in asked]
    stale = [each for each in files if not is_fresh(cache, each)]
    if stale:
        print(f"measuring which lines {len(stale)} of {len(files)} test files run", flush=True)
        words = ["-q", "--tb=short", *chosen, "-p", "no:cacheprovider", "-p", "tests.mutants.touching"]
        spread = ["-n", str(jobs), "--dist", "loadfile"] if jobs > 1 else []
        command = [sys.executable, "-m", "pytest", *words, *spread, f"--write-touched={cache}", *stale]
        environment = {**os.environ, "PYTHONPATH": str(ROOT), "QT_QPA_PLATFORM": "offscreen"}
        done = subprocess.run(command, cwd=ROOT, env=environment, stdout=subprocess.PIPE, text=True, check=False)
        if done.returncode not in (0, NO_TESTS):
            print(done.stdout[-4000:], "\ntests that fail without a change are left out", sep="")
    return Touching(cache, files)


if __name__ == "__main__":
    sys.exit(main())
