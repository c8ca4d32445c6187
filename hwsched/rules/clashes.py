"""The one routine that finds bodies of an opening where they must not be, by the table of pairs.

Bodies stand in `bodies`; by how much a pair must be apart is a limit of the rule that speaks of it.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from math import inf
from typing import Final

from hwsched.calc.opening.bore import Box
from hwsched.calc.opening.solid import apart_mm, bounds
from hwsched.rules.bodies import EXISTING, NEW, Body, Kind, existing_bodies, new_bodies
from hwsched.rules.clearances import TOUCH_MM
from hwsched.rules.reading import lock_part
from hwsched.rules.rule import Verdict
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput, Part


@dataclass(frozen=True, slots=True)
class Pair:
    """Kinds of bodies of which the first must keep off the second."""

    rule: str
    """Identifier of the rule that says by how much, and speaks where they come nearer; empty where they may meet."""
    new: tuple[Kind, ...]
    off: tuple[Kind, ...]
    lies_on: tuple[str, ...] = ()
    """Kinds of existing item on which the first may stand all the same."""
    why: str = ""
    """Why they may meet."""


_CUTS: Final[tuple[Kind, ...]] = ("lead-hole", "new-bore", "pocket")
TABLE: Final = (
    Pair("screw-clear", ("screw",), ("case", "bore", "spindle", "bolt", "other-lock")),
    Pair("screw-beside-hole", ("screw",), _CUTS),
    Pair("screw-in-leaf", ("screw",), ("glass", "beyond-stile", "beyond-leaf")),
    Pair("head-clear", ("head",), ("on-face",), lies_on=("trim", "push-plate", "kick-plate")),
    Pair("head-clear-of-stop", ("head",), ("stop",)),
    Pair("head-on-leaf", ("head",), ("glass", "beyond-stile", "beyond-leaf")),
    Pair("hole-clear", _CUTS, ("spindle", "bolt")),
    Pair("hole-clear-of-lock", _CUTS, ("other-lock",)),
    Pair("hole-clear-of-glass", _CUTS, ("glass",)),
    Pair("hole-edge-distance", ("lead-hole",), ("beyond-stile", "beyond-leaf")),
    Pair("bore-in-stile", ("new-bore", "pocket"), ("beyond-stile",)),
    Pair("plate-within-leaf", ("plate",), ("beyond-leaf",)),
    Pair("plate-on-stile", ("plate",), ("beyond-stile",)),
    Pair("frame-stop-clear", ("plate",), ("stop",)),
    Pair("glazing-clear", ("plate",), ("glass",)),
    Pair("item-clear", ("plate",), ("on-face",)),
    Pair("trim-clear", ("plate",), ("head",)),
    Pair(
        "", ("plate",), ("case", "bore", "spindle", "bolt", "other-lock"), why="it stands on the face, they in the leaf"
    ),
    Pair("", ("plate",), ("screw", *_CUTS), why="it covers them"),
    Pair("", ("screw", *_CUTS), ("on-face", "stop"), why="they are in the leaf, the others on a face"),
    Pair("", _CUTS, ("case", "bore"), why="the hole for the lead comes into the lock, the new bore enlarges the old"),
    Pair("", ("new-bore", "pocket"), ("beyond-leaf",), why="a bore or pocket begins at an edge"),
    Pair("", ("head",), ("case", "bore", "spindle", "bolt", "other-lock"), why="a head stands over what it closes"),
    Pair("", ("head",), ("screw", *_CUTS), why="a head stands over the bore that it closes; screws are the unit's"),
    Pair("", _CUTS, _CUTS, why="one leads into the other"),
)
"""The table: each new kind with every kind that is there and every other new kind, once."""


def pairs_of(rule_id: str) -> tuple[Pair, ...]:
    """Return the pairs that a rule speaks of."""
    return tuple(pair for pair in TABLE if pair.rule == rule_id)


def clashes(given: OpeningInput, fit: Fit, rule_id: str, clearance_mm: float) -> Iterator[Verdict]:
    """Judge every two bodies of a rule's pairs.

    Parameters
    ----------
    given, fit : OpeningInput, Fit
        The opening and what comes in.
    rule_id : str
        Whose pairs.
    clearance_mm : float
        By how much they must be apart.

    Yields
    ------
    Verdict
        One for each two that are nearer, by more than the measuring tolerance; "unknown" where only facts that nobody
        measured could bring them together.
    """
    for pair in pairs_of(rule_id):
        new, there = bodies_of(given, fit)
        others = (*there, *(body for body in new if body.kind in pair.off))
        for mover in new:
            if mover.kind in pair.new:
                yield from _judged(given, mover, others, pair, clearance_mm)


def _judged(
    given: OpeningInput, mover: Body, others: Sequence[Body], pair: Pair, clearance_mm: float
) -> Iterable[Verdict]:
    reach = bounds(mover.solid)
    for other in others:
        if other.kind not in pair.off or other is mover or (other.item in pair.lies_on and other.kind == "on-face"):
            continue
        # Most pairs are far from each other: their boxes tell, at a tenth of the cost.
        if _far(reach, bounds(other.solid), clearance_mm) or (gap := apart_mm(mover.solid, other.solid)) >= (
            clearance_mm - TOUCH_MM
        ):
            continue
        sure = gap if not other.needs else inf if other.surely is None else apart_mm(mover.solid, other.surely)
        if sure >= clearance_mm - TOUCH_MM:
            yield unknown(other.needs, other.name)
        else:
            yield _verdict(given, mover, other, sure, clearance_mm)


def _far(a: Box, b: Box, clearance_mm: float) -> bool:
    return any(
        b.low[each] - a.high[each] >= clearance_mm or a.low[each] - b.high[each] >= clearance_mm for each in (0, 1, 2)
    )


def _verdict(given: OpeningInput, mover: Body, other: Body, gap: float, clearance_mm: float) -> Verdict:
    name = f"{mover.name[:1].upper()}{mover.name[1:]}"
    at = f" on the {mover.face} face" if mover.kind == "head" else ""
    if gap < 0:
        said = f"{name}{at} runs {length(given, -gap)} into {other.name}"
    else:
        said = f"{name}{at} leaves {length(given, gap)} to {other.name}"
    if clearance_mm > 0:
        said += f"; {length(given, clearance_mm)} is needed, short by {length(given, clearance_mm - gap)}"
    return Verdict(
        f"{said}.",
        values={"gap_mm": gap, "needed_mm": clearance_mm, "short_mm": clearance_mm - gap},
        about=mover.about,
    )


# --- bodies, worked out once for all rules that ask one after the other -----------------------------------------------

_there: tuple[OpeningInput, Part | None, tuple[Body, ...]] | None = None
_new: tuple[OpeningInput, Fit, tuple[Body, ...]] | None = None


def bodies_of(given: OpeningInput, fit: Fit) -> tuple[tuple[Body, ...], tuple[Body, ...]]:
    """Return what comes in, and what is there already."""
    global _there, _new
    # Rules ask one after the other for the same opening: the last answer is kept, and belongs to these very objects.
    part = lock_part(given, fit)
    held = _there
    if held is None or held[0] is not given or held[1] is not part:
        held = _there = (given, part, existing_bodies(given, fit))
    made = _new
    if made is None or made[0] is not given or made[1] is not fit:
        made = _new = (given, fit, new_bodies(given, fit))
    return made[2], held[2]


def pair_for(a: Kind, b: Kind) -> Pair | None:
    """Return the line of the table that speaks of two kinds, the new one first or second."""
    return next((p for p in TABLE if (a in p.new and b in p.off) or (b in p.new and a in p.off)), None)


KINDS: Final = (*EXISTING, *NEW)
