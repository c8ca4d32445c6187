"""Whatever is asked of whatever verb, wherever it is run: it ends with a status that means it, and leaves no half work.

Each run tries a fortieth, another one each day and with each run of CI (``GITHUB_RUN_NUMBER``), so that forty of them
try all; ``HWSCHED_SEED`` repeats one, ``HWSCHED_FUZZ=1`` tries all at once. What fails names its seed. Where nobody may
mount a volume, no full one is tried.
"""

import os
import random
import shutil
import subprocess
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial
from pathlib import Path

import pytest

from hwsched.cli import ENTRIES
from hwsched.model.file import sqlite_file
from tests.cli.hostile import DAMAGED, HOSTILE, TOLERABLE
from tests.cli.trying import (
    ENVELOPED,
    Outcome,
    complaints,
    content_of,
    left_wrong,
    options_of,
    run_apart,
    run_here,
    run_interrupted,
    run_interrupted_at,
    state_at,
)
from tests.model.test_stranger import within
from tests.operations.command_lines import ELSEWHERE, WRITING, furnish, words_of
from tests.turns import SEED

pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(not hasattr(os, "fork"), reason="pipes and signals as POSIX has them"),
]

ALL = bool(os.environ.get("HWSCHED_FUZZ"))
SHARE = 40
VERBS = [each.spelling for each in ENTRIES]
WRITES = {" ".join(line.split()[:2]) for line in WRITING.values()}
GOOD = {" ".join(line.split()[:2]): line for line in reversed((*WRITING.values(), *ELSEWHERE.values()))}
"""A good command line a verb."""
PASSED, ENDED = {0, 1, 5}, {0, 1, 2, 3, 4, 5}
LONG = "A long text, " * 7_700

UNKNOWN = {
    "project settings": "project settings P --rule-off NOSUCH",
    "project people": "project people P --remove NOSUCH",
    "project history": None,
    "project today": None,
    "project backups": "project backups P --restore NOSUCH",
    "project list": "project list P settings NOSUCH",
    "project batch": "project batch P F/unknown.jsonl",
    "project undo": "project undo P --step 4711",
    "project redo": "project redo P --step 4711",
    "project calc": "project calc NOSUCH",
    "project completion": "project completion NOSUCH",
    "survey import": "survey import P F/survey.csv --sheet NOSUCH",
    "survey add": "survey add P NOSUCH --item kind=lock",
    "survey edit": "survey edit P NOSUCH opening wave W1",
    "survey remove": "survey remove P NOSUCH",
    "survey retire": "survey retire P NOSUCH",
    "survey restore": "survey restore P NOSUCH",
    "survey questions": "survey questions P --delivery 4711",
    "survey decide": "survey decide P --delivery 4711",
    "survey deliveries": "survey deliveries P 4711",
    "survey origin": "survey origin P NOSUCH",
    "survey plan": "survey plan NOSUCH",
    "survey field": "survey field P opening NOSUCH --remove",
    "survey list": "survey list P openings NOSUCH",
    "opening show": "opening show P NOSUCH",
    "opening list": "opening list P fits NOSUCH",
    "opening choose": "opening choose P NOSUCH unit UNIT",
    "opening place": "opening place P NOSUCH 40mm 1100mm",
    "opening unchoose": "opening unchoose P NOSUCH unit",
    "opening draw": "opening draw P NOSUCH inside -o F/inside.svg",
    "opening pieces": "opening pieces P NOSUCH --serial unit=123",
    "power level": "power level P NOSUCH 1 3.5",
    "power add": "power add P circuit NOSUCH/C1",
    "power remove": "power remove P NOSUCH",
    "power connect": "power connect P PS1/C1 NOSUCH",
    "power route": "power route P NOSUCH PA 12.5",
    "power plan": "power plan P NOSUCH",
    "power layout": "power layout P NOSUCH",
    "power list": "power list P supplies NOSUCH",
    "parts list": "parts list P parts NOSUCH",
    "parts add": "parts add P NEW --like NOSUCH",
    "parts edit": "parts edit P NOSUCH list_price=3",
    "parts withdraw": "parts withdraw P NOSUCH",
    "parts used": "parts used P NOSUCH",
    "parts set": "parts set P assign HS NOSUCH",
    "parts terms": "parts terms P --hours NOSUCH=3",
    "findings list": "findings list P findings NOSUCH",
    "findings why": "findings why P NOSUCH",
    "findings waive": "findings waive P case-offset-taken NOSUCH --person Doe --reason seen",
    "findings rules": "findings rules NOSUCH",
    "release list": "release list P revisions NOSUCH",
    "release revision": "release revision P --show B NOSUCH",
    "release gate": "release gate P --mark NOSUCH",
    "release labels": "release labels P --sheet NOSUCH",
    "release verify": "release verify P NOSUCH",
    "release office": "release office P F/nowhere.toml",
    "release transmit": "release transmit P --fetch 4711",
    "release attach": "release attach P NOSUCH F/survey.csv",
    "release attachments": "release attachments P NOSUCH",
    "release detach": "release detach P NOSUCH",
}
"""A line that names a thing which is not there, of the verbs that take no scope."""

WRONG_UNIT = {
    "project new": ("project new F/new.hwsched --bare-unit furlong", {2}),
    "project settings": ("project settings P --limit battery-life.days=5kg", {2}),
    "project history": ("project history P --last 5kg", {2}),
    "survey import": ("survey import P F/survey.csv --bare-unit furlong", {2}),
    "survey form": ("survey form P -o F/form.xlsx --bare-unit furlong", {2}),
    "survey add": ("survey add P NEW rise=5kg", {3}),
    "survey edit": ("survey edit P 1 leaf thickness_mm 5kg", {3}),
    "opening choose": ("opening choose P 1 unit UNIT --quantity 5kg", {2}),
    "opening place": ("opening place P 1 5kg 1100mm", {3}),
    "opening what-if": ("opening what-if P --limit battery-life.days=5kg", {2, 3}),
    "power level": ("power level P Main 1 5kg", {2}),
    "power add": ("power add P supply PS9 building=Main level=1 rise=5kg", {3}),
    "power connect": ("power connect P PS1/C1 3 --length 5kg", {2}),
    "power route": ("power route P 3 PA 5kg", {2}),
    "power plan": ("power plan P Main --gap 5kg", {2}),
    "power layout": ("power layout P Main --gap 5kg", {2}),
    "parts add": ("parts add P CYL-2 --like CYL length_mm=5kg", {3}),
    "parts edit": ("parts edit P CYL length_mm=5kg", {3}),
    "parts set": ("parts set P make HS-2 unit=UNIT*5kg", {2, 3}),
    "parts fewest": ("parts fewest P --price 5kg", {2, 3}),
    "parts terms": ("parts terms P --labour 5kg", {2, 3}),
}
"""A line with a quantity in another unit than it can have, and what is said to that."""
NO_OUTPUT = {"-o", "--to", "--output"}


@dataclass(frozen=True)
class Bench:
    """What is tried with: a folder with a fresh project, and the good command line of a verb."""

    verb: str
    folder: Path
    rng: random.Random
    mount: Path | None

    @property
    def project(self) -> Path:
        return self.folder / "yard.hwsched"

    @property
    def answers(self) -> bool:
        """Whether it answers machines by the envelope."""
        return self.verb in ENVELOPED

    @property
    def works(self) -> bool:
        """Whether its good line is done in no time."""
        return self.verb not in ("project sample", "project desktop")

    def words(self, line: str = "", folder: Path | None = None) -> list[str]:
        """The words of a line; asked as a machine asks, of the verbs that answer machines."""
        line = line or GOOD[self.verb]
        words = words_of(line, folder or self.folder)
        if self.verb not in WRITES:
            words = words[: len(line.split())]
        return [*words, "--json"] if self.answers else words

    @property
    def outputs(self) -> set[int]:
        """Places of the words of the good line that are files to make."""
        words = self.words()
        return {
            place
            for place, word in enumerate(words)
            if words[place - 1] in NO_OUTPUT or word.endswith(("new.hwsched", "rescued.hwsched"))
        }

    @property
    def files(self) -> list[int]:
        """Places of the words of the good line that are files."""
        return [place for place, word in enumerate(self.words()) if word.startswith(str(self.folder))]

    @property
    def values(self) -> list[int]:
        """Places of the words that are neither verb nor file nor option."""
        return [
            place for place, word in enumerate(self.words())
            if place > 1 and not word.startswith("-") and place not in self.files
        ]  # fmt: skip

    def with_word(self, place: int, word: str) -> list[str]:
        words = self.words()
        name, sign, _ = words[place].rpartition("=")
        words[place] = f"{name}{sign}{word}"
        return words


Tries = Iterator[tuple[Outcome, set[int]]]


def as_it_should_be(bench: Bench) -> Tries:
    if bench.works:
        yield run_here(bench.words(), bench.folder), {0}


def no_argument(bench: Bench) -> Tries:
    """What needs none is done."""
    if bench.works:
        alone = {"project manual", "findings rules", "survey plan"}
        words = [*bench.verb.split(), *(["--json"] if bench.answers else [])]
        yield run_here(words, bench.folder), {0} if bench.verb in alone else {2}


def unknown_option(bench: Bench) -> Tries:
    yield run_here([*bench.words(), "--no-such-option"], bench.folder), {2}


def unknown_name(bench: Bench) -> Tries:
    line = UNKNOWN.get(bench.verb) or (
        f"{GOOD[bench.verb]} --mark NOSUCH" if "--mark" in options_of(bench.verb) else ""
    )
    (bench.folder / "unknown.jsonl").write_text(
        '{"verb": "survey edit", "mark": "NOSUCH", "where": "opening", "fact": "notes", "value": "seen"}\n'
    )
    # Where there is no more than a handful it is one of the words that the verb takes.
    chosen = {"project calc", "project completion", "findings rules"}
    if line:
        yield run_here(bench.words(line), bench.folder), {2} if bench.verb in chosen else {3}


def _in_place_of_files(bench: Bench, other: Callable[[str, int], str]) -> Tries:
    for place in bench.files if bench.works else ():
        word = bench.words()[place]
        # A folder that is not there is made, and one that is there written into.
        fitting = {0, 3, 4} if place in bench.outputs else {4} if word == str(bench.project) else {3}
        yield run_here(bench.with_word(place, other(Path(word).suffix, place)), bench.folder), fitting


def unknown_file(bench: Bench) -> Tries:
    yield from _in_place_of_files(bench, lambda ending, place: str(bench.folder / "nowhere" / f"none{ending}"))


def folder_for_a_file(bench: Bench) -> Tries:
    def made(ending: str, place: int) -> str:
        folder = bench.folder / f"folder{place}{ending}"
        folder.mkdir()
        (folder / "mine.txt").write_text("mine")
        return str(folder)

    yield from _in_place_of_files(bench, made)
    for each in bench.folder.glob("folder*"):
        assert (each / "mine.txt").read_text() == "mine"


def long_text(bench: Bench) -> Tries:
    for place in bench.values:
        yield run_here(bench.with_word(place, LONG), bench.folder), ENDED


def wrong_unit(bench: Bench) -> Tries:
    if bench.verb in WRONG_UNIT:
        line, fitting = WRONG_UNIT[bench.verb]
        yield run_here(bench.words(line), bench.folder), fitting
    if "--where" in options_of(bench.verb):
        yield run_here(bench.words(f"{GOOD[bench.verb]} --where leaf.thickness>5kg"), bench.folder), {3}
    for place in bench.values:
        yield run_here(bench.with_word(place, "12 furlongs"), bench.folder), ENDED


def closed_pipe(bench: Bench) -> Tries:
    if bench.works:
        yield run_apart(bench.words(), bench.folder, to="| head -c 0"), {0}


def full_disk(bench: Bench) -> Tries:
    if bench.works and (bench.answers or bench.verb == "project completion"):
        yield run_apart(bench.words(), bench.folder, to="> /dev/full"), {6}
    if bench.works and "-o" in GOOD[bench.verb].split():
        words = bench.with_word(bench.words().index("-o") + 1, "/dev/full")
        yield run_here(words, bench.folder), {3}


def full_volume(bench: Bench) -> Tries:
    """Copied back before it is looked at: to look at it there, its log would need room."""
    if bench.mount is None or not bench.works:
        return
    there = Path(shutil.copytree(bench.folder, bench.mount / "yard"))
    try:
        room = shutil.disk_usage(bench.mount).free - bench.rng.choice((0, 4096, 40_960, 120_000))
        (bench.mount / "rest").write_bytes(bytes(max(room, 0)))
        yield run_here(bench.words(folder=there), there), {0, 1, 3, 4, 5}
        for each in there.glob("yard.hwsched*"):
            shutil.copy(each, bench.folder)
    finally:
        shutil.rmtree(there)
        (bench.mount / "rest").unlink()


def interrupted(bench: Bench, *, moment: int) -> Tries:
    if bench.verb == "project desktop":
        if moment < 2:
            yield run_interrupted(bench.words(), bench.folder, bench.rng.uniform(0, 3)), {130}
    elif moment < 2:
        yield run_interrupted(bench.words(), bench.folder, bench.rng.uniform(0, 0.6)), {0, 130}
    else:
        step = round(2 ** bench.rng.uniform(0, 7))
        yield run_interrupted_at(bench.words(), bench.folder, step), {0, 130}


def _told_in(bench: Bench, name: str, env: dict[str, str]) -> Tries:
    if bench.works:
        folder = Path(shutil.copytree(bench.folder, bench.folder / name))
        yield run_apart(bench.words(folder=folder), folder, env=env), {0}


def locale_c(bench: Bench) -> Tries:
    """Files may have any name where Python goes over to UTF-8, as it does if nobody forbids it."""
    ways = [("Süd → 北", {}), ("south", {"PYTHONCOERCECLOCALE": "0", "PYTHONUTF8": "0"})]
    for name, env in ways if ALL else [bench.rng.choice(ways)]:
        yield from _told_in(bench, name, {"LC_ALL": "C", **env})


def western_console(bench: Bench) -> Tries:
    yield from _told_in(bench, "Süd → 北", {"PYTHONIOENCODING": "cp1252"})


def read_only(bench: Bench) -> Tries:
    if not bench.works:
        return
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(sqlite_file, "_writable", lambda path: False)
        fitting = {3} if bench.verb in WRITES else {4} if bench.verb in ("project new", "project rescue") else {0}
        before = content_of(bench.project)
        yield run_here(bench.words(), bench.folder), fitting
        assert content_of(bench.project) == before, f"HWSCHED_SEED={SEED} repeats this"


def hostile(bench: Bench, *, way: str) -> Tries:
    if not bench.works or str(bench.project) not in bench.words():
        return
    HOSTILE[way](bench.project)
    before = content_of(bench.project)
    with within(60):
        outcome = run_here(bench.words(), bench.folder)
    if outcome.status in (3, 4):
        assert content_of(bench.project) == before, f"{way}: HWSCHED_SEED={SEED} repeats this: {outcome}"
    looks_by_itself = bench.verb in {f"project {name}" for name in ("rescue", "backups", "verify", "upgrade")}
    if way in TOLERABLE or looks_by_itself:
        fitting = {0, 1, 3, 4, 5}
    elif way in DAMAGED:
        # What can be read of it is shown, to be read only; a list of stored rows looks at the tables of its rows.
        fitting = {0, 1, 3, 4} if bench.verb.endswith(" list") else {1, 3, 4}
    else:
        fitting = {4}
    yield outcome, fitting


TRIES: dict[str, Callable[[Bench], Tries]] = {
    "as it should be": as_it_should_be,
    "no argument": no_argument,
    "an unknown option": unknown_option,
    "an unknown name": unknown_name,
    "an unknown file": unknown_file,
    "a folder for a file": folder_for_a_file,
    "100 kB of text": long_text,
    "a wrong unit": wrong_unit,
    "a closed pipe": closed_pipe,
    "a full disk": full_disk,
    "a full volume": full_volume,
    **{f"interrupted {moment}": partial(interrupted, moment=moment) for moment in range(10)},
    "locale C": locale_c,
    "a console of cp1252": western_console,
    "read only": read_only,
    **{f"hostile: {way}": partial(hostile, way=way) for way in HOSTILE},
}
"""What is asked of every verb."""


def share(verb: str) -> list[str]:
    """What this run tries of a verb."""
    if ALL:
        return list(TRIES)
    order = random.Random(verb).sample(list(TRIES), len(TRIES))
    # Verbs begin at different places, so that every kind of try is among those of every run.
    return order[(SEED + VERBS.index(verb)) % SHARE :: SHARE]


def test_ten_runs_try_all(monkeypatch):
    monkeypatch.setattr("tests.cli.test_every_verb.ALL", False)
    tried = []
    for seed in range(SEED, SEED + SHARE):
        monkeypatch.setattr("tests.cli.test_every_verb.SEED", seed)
        tried += [(verb, name) for verb in VERBS for name in share(verb)]
    assert sorted(tried) == sorted((verb, name) for verb in VERBS for name in TRIES)


def test_every_verb_has_a_good_line():
    assert set(GOOD) == set(VERBS)
    assert len(VERBS) == len(GOOD)


@pytest.fixture(scope="module")
def yard(tmp_path_factory):
    folder = furnish(tmp_path_factory.mktemp("yard"))
    return folder, state_at(folder / "yard.hwsched")


@pytest.fixture(scope="module")
def mount(tmp_path_factory):
    """A volume of 2 MB; None where nobody may mount one."""
    folder = tmp_path_factory.mktemp("volume")
    made = subprocess.run(
        ["mount", "-t", "tmpfs", "-o", "size=2m", "tmpfs", str(folder)], capture_output=True, check=False
    )
    yield folder if made.returncode == 0 else None
    if made.returncode == 0:
        subprocess.run(["umount", str(folder)], check=True)


@pytest.mark.parametrize("verb", VERBS)
def test_whatever_is_asked_it_ends_as_it_should(verb, yard, mount, tmp_path):
    furnished, before = yard
    wrong = []
    for number, name in enumerate(share(verb)):
        folder = Path(shutil.copytree(furnished, tmp_path / str(number)))
        bench = Bench(verb, folder, random.Random(f"{verb} {name} {SEED}"), mount)
        for outcome, fitting in TRIES[name](bench):
            found = complaints(outcome, verb, fitting, names_rows=name.startswith("hostile"))
            wrong += [f"{name}: {each}\n  {outcome}" for each in found]
        if name.startswith("hostile"):
            continue
        wrong += [f"{name}: {each}" for each in left_wrong(bench.project, before, may_write=verb in WRITES)]
        shutil.rmtree(folder)
    assert not wrong, "\n".join([f"HWSCHED_SEED={SEED} repeats this:", *wrong])
