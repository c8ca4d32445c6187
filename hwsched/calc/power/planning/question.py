"""What a plan of supplies and runs is asked, and how it is answered; plain values.

A leg is what leaves a supply's terminals as one pair of wires: a run of its own to one opening, a daisy chain, or a way
to one opening from which runs branch off at junctions on it. Here belong no calculations.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Final

from hwsched.calc.calculator import InputError, check_number

AIMS: Final = ("least-cost", "fewest-supplies", "least-wire", "most-margin")
SHAPES: Final = ("home-run", "daisy-chain", "junctions")
_LARGEST: Final = 1e9


@dataclass(frozen=True, slots=True)
class Drawn:
    """What an opening draws of supplies of one voltage and kind of current."""

    held_a: float
    """Of a supply's current that may be used, everything held at once [A]."""
    rest_a: float
    """At rest, as the runs see it [A]."""
    work_a: float
    """While it operates, its first moment [A]."""
    needed_v: float
    """At its frame [V]."""


@dataclass(frozen=True, slots=True)
class PlanOpening:
    """An opening that is to be supplied."""

    id: str
    drawn: Mapping[str, Drawn]
    """By kind of supply; a kind that is left out does not suit it."""


@dataclass(frozen=True, slots=True)
class Size:
    """A supply that stands in a place, or may stand there."""

    id: str
    kind: str
    """Voltage and kind of current, as openings name them."""
    left_a: float
    """That may still be used of it [A]."""
    terminals_v: float
    """At its terminals in the worst state, everything drawn that may be used [V]."""
    cost: float
    """Of the supply and its mounting; 0 where it stands already."""


@dataclass(frozen=True, slots=True)
class PlanPlace:
    """A place where one supply stands, or may stand."""

    id: str
    sizes: tuple[Size, ...]
    at_once: int
    """Openings that operate at one time on what is planned there."""
    warmth: float = 1.0
    """Resistance of its warm conductors over that of the wires as given."""
    must: bool = False
    counts: bool = True
    """Whether it is one more supply; not where it feeds something that stays."""


@dataclass(frozen=True, slots=True)
class Wire:
    """A wire that may be bought."""

    id: str
    ohm_per_m: float
    """There and back [ohm/m]."""
    cost_per_m: float
    """With the work of laying it."""


@dataclass(frozen=True, slots=True)
class Question:
    """Places, openings, wires and the ways between them."""

    places: tuple[PlanPlace, ...]
    openings: tuple[PlanOpening, ...]
    wires: tuple[Wire, ...]
    to_place_m: Sequence[Sequence[float | None]]
    """A row an opening with the way to each place [m]; None where there is none."""
    between_m: Sequence[Sequence[float | None]] = ()
    """A row an opening with the way to each opening [m]; empty where none is known."""
    junction_cost: float = 0.0
    most_on_leg: int = 12
    """Openings on one leg at most."""
    shapes: frozenset[str] = frozenset(SHAPES)


@dataclass(frozen=True, slots=True)
class PlannedRun:
    """A run of a leg."""

    begin: int
    """Point of the leg that it begins at; -1: the supply's terminals."""
    end: int
    metres: float


@dataclass(frozen=True, slots=True)
class Leg:
    """What leaves a supply as one pair of wires."""

    place: str
    shape: str
    wire: str
    openings: tuple[str, ...]
    """In the order of their points."""
    points: tuple[str | None, ...]
    """Opening at each point; None: a junction."""
    runs: tuple[PlannedRun, ...]
    wire_m: float
    cost: float
    margin_v: float
    """Least room above what an opening of it needs [V]."""


@dataclass(frozen=True, slots=True)
class Plan:
    """The answer and what is proved of it."""

    legs: tuple[Leg, ...]
    sizes: Mapping[str, str]
    """Place to what stands there."""
    supplies: int
    """That count."""
    cost: float
    wire_m: float
    margin_v: float | None
    gap: float = field(compare=False)
    """Share of what is aimed at that a better plan of this kind might save; 0 where none is better."""
    bound: float = field(compare=False)
    """No plan of this kind has less of what is aimed at; of most margin: of the cost with that margin."""
    least_supplies: int = field(default=0, compare=False)
    tried: int = field(default=0, compare=False)
    """Legs that were looked at."""
    margin_left_v: float = field(default=0.0, compare=False)
    """By how much another plan's margin might be greater, where the greatest is aimed at [V]."""

    @property
    def proved_best(self) -> bool:
        """Whether no plan of this kind is better."""
        return self.gap == 0.0 and self.margin_left_v == 0.0

    @property
    def proved(self) -> str:
        """What is proved, in words."""
        if self.proved_best:
            return "proven best"
        cost = f"within {self.gap:.2%} of the best"
        return f"{cost}; up to {self.margin_left_v:.2f} V more margin is not ruled out" if self.margin_left_v else cost


class NoPlanError(InputError):
    """There is no plan.

    Parameters
    ----------
    field, message : str
        As of InputError.
    openings : tuple of str
        Those for which there is none.
    """

    def __init__(self, field: str, message: str, openings: tuple[str, ...] = ()) -> None:
        super().__init__(field, message)
        self.openings = openings


def check_question(question: Question) -> None:
    """See that a question can be answered; raises InputError naming the value that cannot be taken."""
    for name, rows in (("places", question.places), ("openings", question.openings), ("wires", question.wires)):
        ids = [each.id for each in rows]
        for i, each in enumerate(ids):
            if each in ids[:i]:
                raise InputError(f"{name}[{i}].id", f"{each!r} stands there twice")
        if not ids:
            raise InputError(name, "there is none")
    for i, place in enumerate(question.places):
        for size in place.sizes:
            for value, least in ((size.left_a, 0.0), (size.terminals_v, 0.0), (size.cost, 0.0)):
                check_number(value, f"places[{i}].sizes", at_least=least, at_most=_LARGEST)
        check_number(place.warmth, f"places[{i}].warmth", above=0, at_most=100)
        if place.at_once < 0:
            raise InputError(f"places[{i}].at_once", f"must be 0 or more, got {place.at_once}")
    for i, wire in enumerate(question.wires):
        check_number(wire.ohm_per_m, f"wires[{i}].ohm_per_m", above=0, at_most=_LARGEST)
        check_number(wire.cost_per_m, f"wires[{i}].cost_per_m", at_least=0, at_most=_LARGEST)
    for i, opening in enumerate(question.openings):
        for drawn in opening.drawn.values():
            for value in (drawn.held_a, drawn.rest_a, drawn.work_a, drawn.needed_v):
                check_number(value, f"openings[{i}].drawn", at_least=0, at_most=_LARGEST)
    _check_ways("to_place_m", question.to_place_m, len(question.openings), len(question.places), above=True)
    if question.between_m:
        _check_ways("between_m", question.between_m, len(question.openings), len(question.openings), above=False)
    if question.most_on_leg < 1:
        raise InputError("most_on_leg", f"must be 1 or more, got {question.most_on_leg}")


def _check_ways(name: str, rows: Sequence[Sequence[float | None]], height: int, width: int, *, above: bool) -> None:
    if len(rows) != height:
        raise InputError(name, f"needs a row an opening: {height}, got {len(rows)}")
    for i, row in enumerate(rows):
        if len(row) != width:
            raise InputError(f"{name}[{i}]", f"must be a list of {width}")
        for j, metres in enumerate(row):
            if metres is None:
                continue
            # A run of no length cannot be laid; the way of an opening to itself is none.
            check_number(metres, f"{name}[{i}][{j}]", at_least=0, at_most=_LARGEST)
            if above and metres == 0.0:
                raise InputError(f"{name}[{i}][{j}]", "must be above 0")
