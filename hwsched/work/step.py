"""What a step of the work is: as it is declared, once for all openings, and as it stands in the plan of one."""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Literal

from hwsched.language import phrase
from hwsched.values import FitPart, Hole
from hwsched.work.situation import Situation, When, always

Where = Literal["bench", "door", "reader", "inside", "key side", "lock edge", "hinge edge", "frame", "wall", "hand"]
"""Where the hand is: at a bench before the way to the site, at the opening as a whole (a door, or a reader where there
is none), at a face or an edge of the leaf, at frame or wall, or with the part in the hand beside the opening."""
Turn = Literal["each", "first", "leaf", "last"]


@dataclass(frozen=True, slots=True)
class Caution:
    """What can hurt somebody or spoil something, and where it can."""

    name: str
    title: str
    """Two or three words by which later steps recall it."""
    text: str
    when: When


@dataclass(frozen=True, slots=True)
class Tool:
    """A kind of tool, with its size where it has one."""

    name: str
    """As a person asks for it."""
    form: str = ""
    """Form of a tool of the catalogue that serves; empty where the catalogue sells none."""
    size_mm: float | None = None


@dataclass(frozen=True, slots=True)
class Reading:
    """Something that is read and written down, with what is expected."""

    what: str
    unit: str
    low: float | None
    """None where the catalogue does not say it; then `needs` names what is missing."""
    high: float | None
    needs: str = ""

    @property
    def expected(self) -> str:
        """What is expected, in words."""
        if self.low is None or self.high is None:
            return phrase("unknown: needs {needs}", needs=self.needs)
        return f"{self.low:g} to {self.high:g} {self.unit}".strip()


def _no_holes(_: Situation) -> tuple[Hole, ...]:
    return ()


def _no_parts(_: Situation) -> tuple[FitPart, ...]:
    return ()


def _no_tools(_: Situation) -> tuple[Tool, ...]:
    return ()


def _no_readings(_: Situation) -> tuple[Reading, ...]:
    return ()


@dataclass(frozen=True, slots=True)
class StepKind:
    """A step as it is declared: when it is done, after what, and with what."""

    name: str
    where: Where | Callable[[Situation], Where]
    text: str | Callable[[Situation], str]
    when: When = always
    after: tuple[str, ...] = ()
    """Names of steps, or states that steps bring about, without which it cannot be done. Those that an opening does not
    have hand on what they were themselves after."""
    brings: str = ""
    """State that it helps to bring about; it stands when every step that brings it is done."""
    turn: Turn = "each"
    """At each lock point of an opening, at its first or last one only, or at the first one on a leaf."""
    holes: Callable[[Situation], tuple[Hole, ...]] = _no_holes
    parts: Callable[[Situation], tuple[FitPart, ...]] = _no_parts
    """What it takes out of the box."""
    tools: Callable[[Situation], tuple[Tool, ...]] = _no_tools
    cautions: tuple[Caution, ...] = ()
    readings: Callable[[Situation], tuple[Reading, ...]] = _no_readings
    tasks: tuple[str, ...] = ()
    """Tasks of the labour table whose hours it takes."""
    takes_rest: bool = False
    """Whether it takes every part that no other step takes."""
    on_record: tuple[tuple[str, str], ...] = ()
    """With what it is done at the bench: roles of pieces, and what was done to them; empty: it is never on record."""
    done_text: str = ""
    """What is said of it once it is done."""

    def at(self, situation: Situation) -> bool:
        """Tell whether a lock point has it."""
        due = {"each": True, "first": situation.first, "leaf": situation.new_leaf, "last": situation.last}
        return due[self.turn] and self.when(situation)


@dataclass(frozen=True, slots=True)
class Step:
    """A step in the plan of one lock point."""

    number: int
    name: str
    where: Where
    text: str
    holes: tuple[Hole, ...] = ()
    parts: tuple[FitPart, ...] = ()
    tools: tuple[Tool, ...] = ()
    cautions: tuple[Caution, ...] = ()
    """All that hold at it; the plan tells which of them come for the first time."""
    readings: tuple[Reading, ...] = ()
    tasks: tuple[str, ...] = ()
    done: bool = False
    """Whether it is on record as done at the bench."""
    at_bench: bool = False
    """Whether it can be on record so."""


@dataclass(frozen=True, slots=True)
class Check:
    """A line of the test sheet."""

    text: str
    expected: str
    reading: Reading | None = None


@dataclass(frozen=True, slots=True)
class Plan:
    """The ordered steps of the work at one lock point, and the tests that end it."""

    steps: tuple[Step, ...]
    checks: tuple[Check, ...] = ()
    tools: tuple[Tool, ...] = field(default=())
    """All tools of its steps, each once, in the order in which they are taken."""

    def step(self, name: str) -> Step | None:
        """Return the step of a name; None where the lock point has none."""
        return next((step for step in self.steps if step.name == name), None)

    def new_cautions(self, step: Step) -> tuple[Caution, ...]:
        """Return the cautions that hold at a step and at none before it that is still to do."""
        if step.done:
            return ()
        earlier = {
            caution.name
            for each in self.steps
            if each.number < step.number and not each.done
            for caution in each.cautions
        }
        return tuple(caution for caution in step.cautions if caution.name not in earlier)
