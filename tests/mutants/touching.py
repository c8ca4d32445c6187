"""Which tests run which line: a plugin of pytest that writes it down, one file a test file, and the reading of that.

The plugin (``-p tests.mutants.touching``) does one of two things. With ``--write-touched FOLDER`` it measures which
lines of the program each test runs; what a fixture of more than one test ran is said of all that use it. With
``--only-tests FILE`` it runs the tests listed there, in that order, each within its time.
"""

import json
import os
import signal
import sys
from collections import defaultdict
from collections.abc import Iterable, Iterator
from hashlib import sha256
from pathlib import Path
from types import FrameType
from typing import Any

import pytest

from tests.mutants.sites import ROOT, Mutant

PACKAGE = ROOT / "hwsched"
LOADING = "loading"
"""Stands for what is run once, as modules are loaded."""
NOT_UNDER_TEST = ("hwsched.quantities", "hwsched.render", "hwsched.model")
"""Their caches are kept from test to test while lines are measured: unit registry and fonts are dear to load."""


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--write-touched", metavar="FOLDER", help="write which lines of the program each test runs")
    parser.addoption("--only-tests", metavar="FILE", help="run the tests of this list, each within its seconds")


@pytest.hookimpl(tryfirst=True)
def pytest_load_initial_conftests(early_config: pytest.Config) -> None:
    # Before any conftest is loaded, since those load the program.
    options = early_config.known_args_namespace
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
        self.coverage.switch_context(f"fixture {fixturedef.argname}")
        try:
            return (yield)
        finally:
            self.coverage.switch_context(request._pyfuncitem.nodeid)

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
        content = {"touched": sorted(touched), "key": key_of(file, touched), "tests": self.tests, "ran": mine}
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
    """Runs listed tests, the quickest first."""

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

        signal.signal(signal.SIGALRM, stop)
        signal.setitimer(signal.ITIMER_REAL, 20.0 + 10.0 * self.seconds[item.nodeid])
        try:
            return (yield)
        finally:
            signal.setitimer(signal.ITIMER_REAL, 0.0)


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
        self.by_line: dict[tuple[str, int], set[str]] = defaultdict(set)
        self.by_sample: set[tuple[str, int]] = set()
        self.by_loading: set[tuple[str, int]] = set()
        for name in test_files:
            path = written_for(folder, name)
            if path.exists():  # a file of benchmarks alone has none
                self._read(json.loads(path.read_text(encoding="utf-8")))
        self._uses: dict[str, list[tuple[str, int]]] = {}

    def _read(self, content: dict[str, Any]) -> None:
        shared: dict[str, list[str]] = defaultdict(list)
        for test, held in content["tests"].items():
            if held["passed"]:
                self.seconds[test] = held["seconds"]
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
        """Return the tests that run a changed line with their seconds, the quickest first.

        What is worked out once as a module is loaded no test runs: there it is the tests of the function whose default
        it is, or of the lines that use the name. A function that runs then alone answers to all tests of its module.
        """
        if not mutant.at_import:
            lines = [(mutant.file, line) for line in mutant.statement]
        elif mutant.scope is not None:
            lines = [(mutant.file, line) for line in mutant.scope]
        else:
            lines = [place for name in mutant.names for place in self.uses(name)]
        found = set().union(*(self.by_line.get(place, ()) for place in lines)) if lines else set()
        if not found and (mutant.at_import or any(place in self.by_loading for place in lines)):
            found = set().union(*(tests for (file, _), tests in self.by_line.items() if file == mutant.file))
        return {test: self.seconds[test] for test in sorted(found, key=lambda test: (self.seconds[test], test))}

    def makes_sample(self, mutant: Mutant) -> bool:
        """Whether the sample that tests share is made by the changed line too, so that it cannot be made before."""
        return mutant.at_import or any((mutant.file, line) in self.by_sample for line in mutant.statement)

    def uses(self, name: str) -> list[tuple[str, int]]:
        """Return the lines of the program that say a name."""
        if not self._uses:
            import re

            words = re.compile(r"[A-Za-z_]\w*")
            held: dict[str, list[tuple[str, int]]] = defaultdict(list)
            for path in sorted(PACKAGE.rglob("*.py")):
                for number, line in enumerate(path.read_text(encoding="utf-8").split("\n"), start=1):
                    for word in set(words.findall(line)):
                        held[word].append((path.relative_to(ROOT).as_posix(), number))
            self._uses = dict(held)
        return self._uses.get(name, [])
