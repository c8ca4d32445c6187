"""What is to be done next, by the person whose work it is, and how far each level is: counts, and what is counted.

Here belongs only what is counted; where a count leads on the screen belongs to the desktop.
"""

from collections import Counter
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Any, Final, Literal

from hwsched.documents.stock.pick_list import quantities
from hwsched.documents.view import OpeningView, ProjectView
from hwsched.language import phrase
from hwsched.model.project import Project
from hwsched.model.record_queries import read_packets
from hwsched.operations.findings.checked import Checked
from hwsched.operations.findings.checking import Cancelled, Checker, Progress, check_openings
from hwsched.operations.release.project_view import project_view
from hwsched.operations.release.revision_differences import differences
from hwsched.operations.release.revisions import revisions
from hwsched.operations.snapshot import of_one_state
from hwsched.operations.survey.deliveries import OpenQuestion, open_questions
from hwsched.telling.natural import natural
from hwsched.wiring.batteries import dues

Person = Literal["surveyor", "specifier", "storekeeper", "installer"]
PERSONS: Final[tuple[Person, ...]] = ("surveyor", "specifier", "storekeeper", "installer")
State = Literal["ready", "held", "does-not-fit", "to-measure", "not-worked-out"]
STATES: Final[tuple[State, ...]] = ("ready", "held", "does-not-fit", "to-measure", "not-worked-out")
"""Of an opening, the furthest first: it may go out, it fits and something holds it, and so on."""
AHEAD: Final = timedelta(days=60)
"""Cells that are due within so long are told of: time to order and to visit (common practice)."""


@dataclass(frozen=True, slots=True)
class Task:
    """Something to be done, as a count with what is counted."""

    name: str
    person: Person
    says: str
    """What is counted, as it goes on after a number of several."""
    count: int
    openings: tuple[str, ...] = ()
    """Identifiers of the openings behind it, in the project's order."""
    parts: tuple[str, ...] = ()
    """Catalogue numbers behind it."""

    @property
    def words(self) -> str:
        """What is counted, as it goes on after its own number.

        Examples
        --------
        >>> Task("to-measure", "surveyor", "openings to measure", 1).words
        'opening to measure'
        """
        first, _, rest = self.says.partition(" ")
        return f"{first.removesuffix('s')} {rest}".rstrip() if self.count == 1 else self.says


@dataclass(frozen=True, slots=True)
class LevelProgress:
    """How many openings of a level are in which state."""

    building: str
    level: str
    states: Mapping[State, int]
    """In the order of `STATES`; all of them."""
    openings: tuple[str, ...]

    @property
    def total(self) -> int:
        """How many openings the level has."""
        return sum(self.states.values())


@dataclass(frozen=True, slots=True)
class SinceRelease:
    """What is otherwise since the last revision."""

    letter: str
    at: str
    new: tuple[str, ...]
    """Identifiers of openings that are new, and of those that have changed."""
    changed: tuple[str, ...]
    gone: int
    others: int
    """Settings, parts, supplies and rules that are otherwise."""


@dataclass(frozen=True, slots=True)
class Today:
    """What is to be done next, and how far the project is."""

    tasks: tuple[Task, ...]
    """Of each person in their order; a count of nought is told too, so that what is done is seen."""
    levels: tuple[LevelProgress, ...]
    marks: Mapping[str, str]
    """Mark of each opening by its identifier."""
    since: SinceRelease | None = None
    """None: nothing was released under a letter yet."""

    def of(self, person: Person) -> tuple[Task, ...]:
        """Return the tasks of one person."""
        return tuple(task for task in self.tasks if task.person == person)


def state_of(view: OpeningView) -> State:
    """Return the state of an opening."""
    if view.fit is None:
        return "not-worked-out"
    if view.fit.status == "fits":
        return "ready" if view.ready else "held"
    return "to-measure" if view.fit.status == "to-measure" else "does-not-fit"


def counted(
    view: ProjectView,
    *,
    questions: Sequence[OpenQuestion] = (),
    out: Collection[str] = (),
    today: date,
    since: SinceRelease | None = None,
) -> Today:
    """Count what is to be done.

    Parameters
    ----------
    view : ProjectView
        The whole project.
    questions : sequence of OpenQuestion
        What deliveries of the survey left to be decided.
    out : collection of str
        Identifiers of openings whose packet went out.
    today : date
        The day it is.
    since : SinceRelease, optional
        What is otherwise since the last revision.
    """
    states = {each.given.opening.id: state_of(each) for each in view.openings}

    def ids(kept: Iterable[OpeningView]) -> tuple[str, ...]:
        return tuple(each.given.opening.id for each in kept)

    def task(name: str, person: Person, says: str, kept: Iterable[OpeningView]) -> Task:
        found = ids(kept)
        return Task(name, person, says, len(found), found)

    def being(*wanted: State) -> list[OpeningView]:
        return [each for each in view.openings if states[each.given.opening.id] in wanted]

    ready = being("ready")
    to_pick = [each for each in ready if each.given.opening.id not in out]
    stale = [each for each in view.openings if any(f.rule == "packet-out-of-date" for f in each.findings)]
    asked = dict.fromkeys(each.undecided.opening_id for each in questions if each.undecided.opening_id in states)
    errors = [each for each in view.openings if each.blocking]
    unknown = [each for each in being("held") if any(f.needs and not f.waived for f in each.findings)]
    short, unsaid = _stock(replace(view, openings=tuple(to_pick)))
    late = {due.opening_id for due in dues((at.given, at.fit) for each in view.openings for at in each.points)
            if due.due_on is not None and due.due_on <= today + AHEAD}  # fmt: skip
    return Today(
        (
            task("to-measure", "surveyor", phrase("openings to measure"), being("to-measure")),
            task("unknown", "surveyor", phrase("openings fitting, a fact still unknown"), unknown),
            Task("questions", "surveyor", phrase("questions of deliveries to decide"), len(questions), tuple(asked)),
            task("not-worked-out", "specifier", phrase("openings to work out"), being("not-worked-out")),
            task("does-not-fit", "specifier", phrase("openings that nothing fits"), being("does-not-fit")),
            task("errors", "specifier", phrase("openings with an error nobody accepted"), errors),
            task("held", "specifier", phrase("openings fitting, held back"), being("held")),
            task("to-pick", "storekeeper", phrase("openings to pick: ready, packet not out"), to_pick),
            Task("short", "storekeeper", phrase("parts short for them"), len(short), parts=short),
            Task("stock-unknown", "storekeeper", phrase("parts of unknown stock for them"), len(unsaid), parts=unsaid),
            task(
                "to-install",
                "installer",
                phrase("openings to install: packet out and right"),
                [e for e in ready if e.given.opening.id in out and e not in stale],
            ),
            task("packets-old", "installer", phrase("packets out, older than the facts"), stale),
            task(
                "cells",
                "installer",
                phrase("openings with cells due within {days} days", days=AHEAD.days),
                [e for e in view.openings if e.given.opening.id in late],
            ),
        ),
        _levels(view, states),
        view.marks,
        since,
    )


def _stock(view: ProjectView) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Return the parts that are fewer in stock than what a view's openings take, and those of unknown stock."""
    needed: dict[str, float] = {}
    for lines in quantities(view).values():
        for number, line in lines.items():
            needed[number] = needed.get(number, 0.0) + line.quantity
    parts = view.catalogue.parts
    held = {number: parts[number].stock if number in parts else None for number in sorted(needed, key=natural)}
    short = tuple(number for number, stock in held.items() if stock is not None and stock < needed[number])
    return short, tuple(number for number, stock in held.items() if stock is None)


def _levels(view: ProjectView, states: Mapping[str, State]) -> tuple[LevelProgress, ...]:
    places: dict[tuple[str, str], list[str]] = {}
    for each in view.openings:
        opening = each.given.opening
        places.setdefault((opening.building or "", opening.level or ""), []).append(opening.id)

    def order(place: tuple[str, str]) -> tuple[Any, ...]:
        height = view.level_heights.get((place[0] or None, place[1] or None))
        # From the top down, as a house stands on paper; levels of unknown height below, by their names.
        return natural(place[0]), height is None, -(height or 0.0), natural(place[1])

    found = []
    for building, level in sorted(places, key=order):
        ids = places[building, level]
        count = Counter(states[each] for each in ids)
        found.append(LevelProgress(building, level, {state: count[state] for state in STATES}, tuple(ids)))
    return tuple(found)


@of_one_state
def read_today(
    project: Project,
    checked: Sequence[Checked] | None = None,
    *,
    checker: Checker | None = None,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> Today:
    """Read what is to be done next in a project.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    checked : sequence of Checked, optional
        All its openings as just checked, where somebody has them already.
    checker, progress, cancelled : optional
        As for `hwsched.operations.findings.checking.check_openings`.
    """
    if checked is not None and not all(each.stored for each in checked):
        # What was worked out on the spot, to be looked at, is not what goes out.
        unstored = [each.given.opening.id for each in checked if not each.stored]
        stored = {each.given.opening.id: each for each in check_openings(project, unstored, checker=checker)}
        checked = [stored.get(each.given.opening.id, each) for each in checked]
    view = project_view(project, checked=checked, checker=checker, progress=progress)
    with project.reading() as connection:
        packets = read_packets(connection, [each.given.opening.id for each in view.openings])
    return counted(
        view, questions=open_questions(project), out=packets.keys(), today=project.today(),
        since=_since(project, checker, cancelled),
    )  # fmt: skip


def _since(project: Project, checker: Checker | None, cancelled: Cancelled | None) -> SinceRelease | None:
    letters = revisions(project)
    if not letters:
        return None
    last = letters[-1]
    found = differences(project, last.letter, checker=checker, cancelled=cancelled)
    by_kind = {kind: tuple(each.opening_id for each in found.openings if each.kind == kind)
               for kind in ("new", "changed", "gone")}  # fmt: skip
    return SinceRelease(
        last.letter, last.at, by_kind["new"], by_kind["changed"], len(by_kind["gone"]), len(found.others)
    )
