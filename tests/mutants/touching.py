"""Which tests run which line: a plugin of pytest that writes it down, one file a test file, and the reading of that.

The plugin (``-p tests.mutants.touching``) does one of two things. With ``--write-touched FOLDER`` it measures which
lines of the program each test runs; what a fixture of more than one test ran, and how long it took, is said of all
that use it. With ``--only-tests FILE`` it runs the tests listed there, in that order, each within its time.
"""

import json
import os
import signal
import sys
from collections import defaultdict
from collections.abc import Iterable, Iterator
from functools import cache
from hashlib import sha256
from pathlib import Path
from time import perf_counter
from types import FrameType
from typing import Any

import pytest

from tests.mutants.sites import ROOT, Mutant

PACKAGE = ROOT / "hwsched"
LOADING = "loading"
"""Stands for what is run once, as modules are loaded."""
NOT_UNDER_TEST = ("hwsched.quantities", "hwsched.render", "hwsched.model")
"""Their caches are kept from test to test while lines are measured: unit registry and fonts are dear to load."""
LEAST_S = 20.0
"""Processor time that any test may take, beside ten times what it takes without a change."""
SHARED_S = 300.0
"""Processor time that a fixture of more than one test may take: the sample is made in a tenth of it."""


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--write-touched", metavar="FOLDER", help="write which lines of the program each test runs")
    parser.addoption("--only-tests", metavar="FILE", help="run the tests of this list, each within its seconds")


@pytest.hookimpl(tryfirst=True)
def pytest_load_initial_conftests(early_config: pytest.Config) -> None:
    # Before any conftest is loaded, since those load the program.
    options = early_config.known_args_namespace
    if options.write_touched or options.only_tests:
        from hypothesis import HealthCheck, settings

        # That a busy machine is slow to draw cases is no fault that a test has found.
        settings.register_profile("mutants", suppress_health_check=[HealthCheck.too_slow], deadline=None)
        settings.load_profile("mutants")
    if options.write_touched:
        early_config.pluginmanager.register(Writer(Path(options.write_touched)))
    if options.only_tests:
        early_config.pluginmanager.register(Chooser(Path(options.only_tests)))


class Writer:
    """Measures lines by test, and writes them as each test file ends."""

    def __init__(self, folder: Path) -> None:
        import coverage  # only where it is wanted: it slows all

        self.folder = folder
        self.coverage = coverage.Coverage(data_file=None, config_file=False, source=[str(PACKAGE)], messages=False)
        self.coverage.set_option("run:disable_warnings", ["no-data-collected", "couldnt-parse"])
        self.coverage.start()
        self.tests: dict[str, dict[str, Any]] = {}
        """Of the test file that runs."""
        self.shared: dict[str, dict[str, list[int]]] = {}
        """Lines of the fixtures that were set up so far, of whichever file."""
        self.shared_s: dict[str, float] = {}
        """Seconds of those fixtures, without those that they need."""
        self.within_s = 0.0
        """Of what the fixture that is set up has set up so far."""

    @pytest.hookimpl(wrapper=True)
    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> Iterator[None]:
        found = {item.nodeid.split("::")[0] for item in items}
        yield
        for file in sorted(found - {item.nodeid.split("::")[0] for item in items}):
            self.write(file)  # none of its tests is asked

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item, nextitem: pytest.Item | None) -> Iterator[None]:
        fixtures = [f"fixture {name}" for name in getattr(item, "fixturenames", ())]
        self.tests[item.nodeid] = {"seconds": 0.0, "passed": True, "shared": fixtures}
        _forget()
        self.coverage.switch_context(item.nodeid)
        try:
            return (yield)
        finally:
            self.coverage.switch_context("between")
            file = item.nodeid.split("::")[0]
            if nextitem is None or nextitem.nodeid.split("::")[0] != file:
                self.write(file)

    @pytest.hookimpl(wrapper=True)
    def pytest_fixture_setup(
        self, fixturedef: pytest.FixtureDef[object], request: pytest.FixtureRequest
    ) -> Iterator[None]:
        if fixturedef.scope == "function":
            return (yield)
        name, item = f"fixture {fixturedef.argname}", request._pyfuncitem.nodeid
        self.coverage.switch_context(name)
        started, outer = perf_counter(), self.within_s
        self.within_s = 0.0
        try:
            return (yield)
        finally:
            spent = perf_counter() - started
            self.shared_s[name] = spent - self.within_s
            # The test that happens to be the first does not pay for all.
            self.tests[item]["seconds"] -= self.shared_s[name]
            self.within_s = outer + spent
            self.coverage.switch_context(item)

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        held = self.tests.get(report.nodeid)
        if held is not None:
            held["seconds"] += report.duration
            held["passed"] = held["passed"] and not report.failed and not report.skipped

    def write(self, file: str) -> None:
        """Write what the tests of a file ran, and begin anew."""
        self.coverage.stop()
        data = self.coverage.get_data()
        ran: dict[str, dict[str, list[int]]] = defaultdict(dict)
        for path in data.measured_files():
            name = Path(path).relative_to(ROOT).as_posix()
            for line, contexts in data.contexts_by_lineno(path).items():
                for context in contexts:
                    ran[context or LOADING].setdefault(name, []).append(line)
        self.shared.update({context: lines for context, lines in ran.items() if context.startswith("fixture ")})
        # What comes before the first test, when all files are loaded.
        self.shared.setdefault(LOADING, ran[LOADING])
        ran.update(self.shared)
        wanted = {*self.tests, *(each for held in self.tests.values() for each in held["shared"])}
        mine = {context: ran[context] for context in sorted(wanted & ran.keys())}
        touched = {name for lines in mine.values() for name in lines}
        # Test files that run together load each other's modules: a file's own are those that its tests run.
        loaded = {name: lines for name, lines in ran[LOADING].items() if name in touched}
        mine[LOADING] = loaded
        content = {
            "touched": sorted(touched),
            "key": key_of(file, touched),
            "tests": self.tests,
            "shared_s": {name: seconds for name, seconds in self.shared_s.items() if name in wanted},
            "ran": mine,
        }
        self.folder.mkdir(parents=True, exist_ok=True)
        target = written_for(self.folder, file)
        part = target.with_suffix(f".{os.getpid()}")
        part.write_text(json.dumps(content), encoding="utf-8")
        part.replace(target)
        self.tests = {}
        self.coverage.erase()
        self.coverage.start()


def _forget() -> None:
    """Empty the caches of the program, so that each test runs what it needs."""
    for name, module in list(sys.modules.items()):
        if name.startswith("hwsched.") and not name.startswith(NOT_UNDER_TEST):
            for value in list(vars(module).values()):
                clear = getattr(value, "cache_clear", None)
                if clear is not None and getattr(value, "__module__", "") == name:
                    clear()


class TooLong(pytest.fail.Exception):  # type: ignore[name-defined]
    """A test that runs far longer than it does without the change."""


class Chooser:
    """Runs listed tests in their order.

    Time is the processor's: on a busy machine a test may take longer.
    """

    def __init__(self, path: Path) -> None:
        self.seconds: dict[str, float] = json.loads(path.read_text(encoding="utf-8"))

    @pytest.hookimpl(trylast=True)
    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        place = {name: number for number, name in enumerate(self.seconds)}
        items[:] = sorted((item for item in items if item.nodeid in place), key=lambda item: place[item.nodeid])

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item) -> Iterator[None]:
        def stop(_number: int, _frame: FrameType | None) -> None:
            raise TooLong("runs far longer than without the change")

        signal.signal(signal.SIGPROF, stop)
        signal.setitimer(signal.ITIMER_PROF, LEAST_S + 10.0 * max(self.seconds[item.nodeid], 0.0))
        try:
            return (yield)
        finally:
            signal.setitimer(signal.ITIMER_PROF, 0.0)

    @pytest.hookimpl(wrapper=True)
    def pytest_fixture_setup(self, fixturedef: pytest.FixtureDef[object]) -> Iterator[None]:
        if fixturedef.scope == "function":
            return (yield)
        left, _ = signal.setitimer(signal.ITIMER_PROF, SHARED_S)
        try:
            return (yield)
        finally:
            signal.setitimer(signal.ITIMER_PROF, left)


@cache
def in_fingerprint() -> frozenset[str]:
    """Return the files of which fits and findings are known to be made."""
    # Only here: what is loaded before the lines of tests are counted is missing in them.
    from hwsched.fingerprint.engine import FINDINGS, _closure, _Reading
    from hwsched.fingerprint.memory import Memory

    reading = _Reading(Memory(None, ""))
    _closure(PACKAGE, reading, FINDINGS)
    return frozenset(Path(path).relative_to(ROOT).as_posix() for path in reading.files)


def written_for(folder: Path, test_file: str) -> Path:
    """Return where the lines of a test file are written."""
    return folder / (test_file.replace("/", "-") + ".json")


def key_of(test_file: str, touched: Iterable[str]) -> str:
    """Return the key of what a test file ran: of itself, of what all tests share, and of each module that it ran."""
    shared = (path for path in (ROOT / "tests").rglob("*.py") if not path.name.startswith("test_"))
    kept = sorted(path for path in shared if "mutants" not in path.parts)
    digest = sha256()
    for path in (ROOT / test_file, *kept, *(ROOT / name for name in sorted(touched))):
        digest.update(path.read_bytes() if path.exists() else b"gone")
    return digest.hexdigest()


def is_fresh(folder: Path, test_file: str) -> bool:
    """Whether the lines of a test file are written and still hold."""
    path = written_for(folder, test_file)
    if not path.exists():
        return False
    content = json.loads(path.read_text(encoding="utf-8"))
    return content["key"] == key_of(test_file, content["touched"])


class Touching:
    """Which tests run a line of the program."""

    def __init__(self, folder: Path, test_files: Iterable[str]) -> None:
        self.seconds: dict[str, float] = {}
        """Of each test that passes, without the fixtures that it shares."""
        self.shared_s: dict[str, float] = {}
        """Of the fixtures that a test shares with others."""
        self.by_line: dict[tuple[str, int], set[str]] = defaultdict(set)
        self.by_sample: set[tuple[str, int]] = set()
        self.by_loading: set[tuple[str, int]] = set()
        for name in test_files:
            path = written_for(folder, name)
            if path.exists():  # a file of benchmarks alone has none
                self._read(json.loads(path.read_text(encoding="utf-8")))
        self._uses: defaultdict[str, list[tuple[str, int]]] = defaultdict(list)
        self._givers: defaultdict[str, set[str]] = defaultdict(set)

    def _read(self, content: dict[str, Any]) -> None:
        shared: dict[str, list[str]] = defaultdict(list)
        for test, held in content["tests"].items():
            if held["passed"]:
                self.seconds[test] = held["seconds"]
                self.shared_s[test] = sum(content["shared_s"].get(each, 0.0) for each in held["shared"])
                for context in (test, *held["shared"]):
                    shared[context].append(test)
        for context, files in content["ran"].items():
            for file, lines in files.items():
                for line in lines:
                    if context == LOADING:
                        self.by_loading.add((file, line))
                    else:
                        self.by_line[file, line].update(shared[context])
                if context == "fixture sample_folder":
                    self.by_sample.update((file, line) for line in lines)

    def of(self, mutant: Mutant) -> dict[str, float]:
        """Return the tests that run a changed line with their seconds, the quickest first with what they share.

        What is worked out once as a module is loaded no test runs: there it is the tests of the function whose default
        it is, or of the lines that use the name. A function that runs then alone answers to all tests of its module.
        """
        if not mutant.at_import:
            lines = [(mutant.file, line) for line in mutant.statement]
        elif mutant.scope is not None:
            lines = [(mutant.file, line) for line in mutant.scope]
        else:
            lines = [place for name in mutant.names for place in self.uses(name, mutant.file)]
        found = set().union(*(self.by_line.get(place, ()) for place in lines)) if lines else set()
        if not found and (mutant.at_import or any(place in self.by_loading for place in lines)):
            found = set().union(*(tests for (file, _), tests in self.by_line.items() if file == mutant.file))
        order = sorted(found, key=lambda test: (self.shared_s[test] + self.seconds[test], test))
        return {test: self.seconds[test] for test in order}

    def makes_sample(self, mutant: Mutant) -> bool:
        """Whether the sample that tests share must be made by the changed program, and not before.

        So it is where making it runs the line, and where the line is in the fingerprint: what an earlier program has
        made counts for nothing, and every test of it would fail.
        """
        ran = mutant.at_import or any((mutant.file, line) in self.by_sample for line in mutant.statement)
        return ran or mutant.file in in_fingerprint()

    def uses(self, name: str, file: str) -> list[tuple[str, int]]:
        """Return the lines of the program that say a name that a module gives to something.

        Where several modules have the name, as each rule is a `RULE`, it is this one's in files that say the module.
        """
        if not self._uses:
            import re

            words, given = re.compile(r"[A-Za-z_]\w*"), re.compile(r"([A-Za-z_]\w*)(?:: [^=]+)? = ")
            for path in sorted(PACKAGE.rglob("*.py")):
                place = path.relative_to(ROOT).as_posix()
                for number, line in enumerate(path.read_text(encoding="utf-8").split("\n"), start=1):
                    for word in set(words.findall(line)):
                        self._uses[word].append((place, number))
                    if (hit := given.match(line)) is not None:
                        self._givers[hit.group(1)].add(place)
        if len(self._givers[name]) < 2:
            return self._uses[name]
        module = Path(file).stem if Path(file).stem != "__init__" else Path(file).parent.name
        near = {file, *(place for place, _ in self._uses[module])}
        return [(place, line) for place, line in self._uses[name] if place in near]
