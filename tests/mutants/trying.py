"""Changes one line in a copy of the tree, runs tests there, and says whether one failed."""

import json
import os
import re
import shutil
import signal
import subprocess
import sys
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from importlib.util import cache_from_source
from pathlib import Path

from tests.mutants.forking import TIME_WAS_UP, run_forked
from tests.mutants.sites import ROOT, Mutant

LEFT_BEHIND = shutil.ignore_patterns(".*", "*.hwsched", "*.hwsched-*", "build", "dist", "out", "*.egg-info")
CHOSEN = ("-m", "not bench", "-k", "not postgresql")
"""Which tests are asked: all but ratios of time, and what is run once more on another database."""
QUICK = ("-m", "not slow and not fuzz and not bench", "-k", "not postgresql")
TESTS_FAILED, INTERRUPTED, INTERNAL, USAGE, NO_TESTS = 1, 2, 3, 4, 5


@dataclass(frozen=True, slots=True)
class Trial:
    """What came of a mutant."""

    mutant: Mutant
    killed: bool
    by: str
    """The first test that failed, or why none ran."""
    tests: int
    """How many were given."""


class Copy:
    """A copy of the tree, in which one line at a time is changed."""

    def __init__(self, folder: Path, sample: Path, *, forks: bool = False) -> None:
        self.folder = folder
        self.forks = forks
        """Whether runs are forked from a process that is warm, or new processes."""
        self.sample = sample
        """A finished demonstration, made by the program as it is."""
        shutil.copytree(ROOT, folder, ignore=LEFT_BEHIND, dirs_exist_ok=True)
        compiled = [str(folder / "hwsched"), str(folder / "tests")]
        subprocess.run([sys.executable, "-m", "compileall", "-q", *compiled], check=True)

    def try_mutant(self, mutant: Mutant, tests: Mapping[str, float], *, at_most_s: float, makes_sample: bool) -> Trial:
        """Run the tests of a mutant, given in their order with their seconds, until one fails."""
        if not tests:
            return Trial(mutant, False, "no test runs this line", 0)
        stated: dict[str, float] = {}
        for test, seconds in tests.items():
            if stated and sum(stated.values()) + seconds > at_most_s:
                break
            stated[test] = seconds
        # Most die by the tests of their own module: those of others need not even be loaded.
        own = {test: seconds for test, seconds in stated.items() if is_of(test, mutant.file)}
        rest = {test: seconds for test, seconds in stated.items() if test not in own}
        for part in filter(None, (own, rest)):
            files = list(dict.fromkeys(test.split("::")[0] for test in part))
            trial = self._tried(mutant, part, [*CHOSEN, *files], makes_sample)
            if trial.killed:
                break
        return replace(trial, tests=len(stated))

    def try_with_files(self, mutant: Mutant, files: Iterable[str]) -> Trial:
        """Run the quick tests of whole files until one fails."""
        return self._tried(mutant, {}, [*QUICK, *files], False)

    def _tried(self, mutant: Mutant, stated: Mapping[str, float], asked: list[str], makes_sample: bool) -> Trial:
        path = self.folder / mutant.file
        held = path.read_bytes()
        lines = held.decode().split("\n")
        if lines[mutant.line - 1] != mutant.before:
            raise ValueError(f"{mutant.file}:{mutant.line} is not the line that was read")
        lines[mutant.line - 1] = mutant.after
        # A compiled copy may be as old and as long as the changed source: it must go.
        Path(cache_from_source(str(path))).unlink(missing_ok=True)
        path.write_bytes("\n".join(lines).encode())
        try:
            # Only what hangs comes to this: each test, and what it shares, has a limit of its own.
            limit_s = 600.0 + 10.0 * sum(stated.values()) if stated else 120.0
            code, text = self.run_tests(asked, stated, limit_s, makes_sample)
        finally:
            path.write_bytes(held)
        if code == NO_TESTS:
            raise ValueError(f"{mutant.file}:{mutant.line}: none of its tests was found:\n{text}")
        return Trial(mutant, code != 0, _by(code, text), len(stated))

    def run_tests(
        self, asked: Iterable[str], stated: Mapping[str, float], limit_s: float, makes_sample: bool
    ) -> tuple[int, str]:
        """Run tests in the copy; returns pytest's exit status (that of a fault where time was up) and what it wrote."""
        words = ["-x", "-q", "--tb=no", "-p", "no:cacheprovider", "-p", "tests.mutants.touching", *asked]
        if stated:
            listed = self.folder / "given.json"
            listed.write_text(json.dumps(stated), encoding="utf-8")
            words.append(f"--only-tests={listed}")
        environment = {
            **os.environ,
            "PYTHONPATH": str(self.folder),
            "PYTHONDONTWRITEBYTECODE": "1",
            "QT_QPA_PLATFORM": "offscreen",
            "OPENBLAS_NUM_THREADS": "1",
        }
        if not makes_sample:
            # Each time its own, since a changed line may spoil it.
            shutil.rmtree(self.folder / "made", ignore_errors=True)
            shutil.copytree(self.sample, self.folder / "made")
            environment["HWSCHED_SAMPLE"] = str(self.folder / "made")
        if self.forks:
            # Nothing is said of what failed, so that the texts of assertions need not be prepared.
            return run_forked(self.folder, ["--assert=plain", *words], environment, limit_s)
        with subprocess.Popen(
            [sys.executable, "-m", "pytest", *words],
            cwd=self.folder,
            env=environment,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
            start_new_session=True,
        ) as process:
            try:
                text, _ = process.communicate(timeout=limit_s)
            except subprocess.TimeoutExpired:
                os.killpg(process.pid, signal.SIGKILL)
                text, _ = process.communicate()
                return TESTS_FAILED, text + TIME_WAS_UP
        return process.returncode, text


def is_of(test: str, file: str) -> bool:
    """Whether a test stands in the file of tests that is named as a module."""
    path = Path(file)
    return Path(test.split("::")[0]).parts[-2:] == (path.parent.name, f"test_{path.name}")


def described(trial: Trial) -> str:
    """Return one line of a mutant that dies, and the change too of one that survives."""
    place = f"{trial.mutant.file}:{trial.mutant.line} {trial.mutant.kind}"
    if trial.killed:
        return f"dies      {place}  by {trial.by}"
    return f"SURVIVES  {place}  ({trial.by}; {trial.tests} tests)\n{trial.mutant.diff}"


def _by(code: int, text: str) -> str:
    if code == 0:
        return "nothing failed"
    hit = re.search(r"^(?:FAILED|ERROR) (.*?)(?: - .*)?$", text, re.MULTILINE)
    return hit.group(1) if hit else "the program does not load"
