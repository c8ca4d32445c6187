"""The one routine that finds bodies of an opening where they must not be, by the table of pairs.

Bodies stand in `bodies`; by how much a pair must be apart is a limit of the rule that speaks of it.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import inf
from typing import Final

from hwsched.calc.opening.bore import Box
from hwsched.calc.opening.solid import apart_mm, shrunk
from hwsched.rules.last import last
from hwsched.rules.reading import in_role, lock_part
from hwsched.rules.rounding import apart_allowances, by_rounding, least_excuse
from hwsched.rules.rule import Verdict
from hwsched.rules.solid.bodies import (
    EXISTING,
    NEW,
    Body,
    Kind,
    head_bodies,
    hole_bodies,
    lasting_bodies,
    lock_bodies,
    tool_bodies,
    unit_bodies,
)
from hwsched.rules.solid.clearances import TOUCH_MM
from hwsched.rules.solid.tools import COME_OFF
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput


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
_HEADS: Final[tuple[Kind, ...]] = ("head", "bolted-on")
_STANDING: Final = ("on-face", "proud")
_TOOLS: Final[tuple[Kind, ...]] = ("tool", "usual-tool")
_IN_LEAF: Final[tuple[Kind, ...]] = ("case", "bore", "spindle", "bolt", "other-lock")
_LIMITS: Final[tuple[Kind, ...]] = ("beyond-stile", "beyond-leaf")
TABLE: Final = (
    Pair("screw-clear", ("screw",), ("case", "bore", "spindle", "bolt", "other-lock")),
    Pair("screw-beside-hole", ("screw",), _CUTS),
    Pair("screw-in-leaf", ("screw",), ("glass", "beyond-stile", "beyond-leaf")),
    Pair("head-clear", _HEADS, ("sweep", "nut")),
    Pair("head-clear", _HEADS, ("on-face",), lies_on=("trim", "push-plate", "kick-plate")),
    Pair("head-clear-of-stop", _HEADS, ("stop",)),
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
    Pair("lever-clear", ("plate",), ("sweep",)),
    Pair("trim-clear", ("plate",), _HEADS),
    Pair("nut-room", ("plate",), ("nut",)),
    Pair(
        "", ("plate",), ("case", "bore", "spindle", "bolt", "other-lock"), why="it stands on the face, they in the leaf"
    ),
    Pair("", ("plate",), ("screw", *_CUTS), why="it covers them"),
    Pair("", ("screw", *_CUTS), ("on-face", "sweep", "stop"), why="they are in the leaf, the others on a face"),
    Pair("", _CUTS, ("case", "bore"), why="the hole for the lead comes into the lock, the new bore enlarges the old"),
    Pair("", ("new-bore", "pocket"), ("beyond-leaf",), why="a bore or pocket begins at an edge"),
    Pair("", ("bolted-on",), ("glass", "beyond-stile", "beyond-leaf"), why="its width and the stile are asked alone"),
    Pair("", _HEADS, ("case", "bore", "spindle", "bolt", "other-lock"), why="a head stands over what it closes"),
    Pair("", ("bolted-on",), ("head",), why="a lock has one or the other"),
    Pair("", _HEADS, ("screw", *_CUTS), why="a head stands over the bore that it closes; screws are the unit's"),
    Pair("", _CUTS, _CUTS, why="one leads into the other"),
    Pair("way-clear", ("way-across",), ("spindle", "bolt", "other-lock")),
    Pair("way-clear", ("screw",), ("way-across",)),
    Pair("", ("way-across",), ("case", "bore", *_CUTS), why="it ends in the lock's pocket, or behind the unit"),
    Pair("", ("way-across",), ("glass",), why="what may be bored or pulled keeps farther off, by another rule"),
    Pair("", ("way-across",), ("beyond-leaf", "beyond-stile"), why="it begins at the hinge edge"),
    Pair("", ("way-across",), ("on-face", "sweep", "stop", *_HEADS, "plate"), why="it is in the leaf, they on a face"),
    Pair("tool-room", ("tool",), ("proud",), lies_on=COME_OFF),
    Pair("long-tool", ("usual-tool",), ("proud", "on-edge")),
    Pair("", ("screw", *_CUTS, "way-across"), ("proud",), why="they are in the leaf, it stands out of a face"),
    Pair(
        "", ("screw", *_CUTS, "way-across"), ("nut", "on-edge"), why="they keep off the bolts; the edge is asked alone"
    ),
    Pair("", (*_HEADS, "plate"), ("on-edge", "front"), why="they stand on a face, it on the edge or in it"),
    Pair("front-clear", ("pocket",), ("front",)),
    Pair("", ("lead-hole", "new-bore"), ("front",), why="they pass behind it, or come into the case behind it"),
    Pair("", ("screw", "way-across"), ("front",), why="it is let in no deeper than they keep off the lock edge"),
    Pair("", _TOOLS, ("front",), why="a tool stands before the face, it is flush in the edge"),
    Pair("", ("tool",), ("on-edge",), why="what is on the edge comes off for the work; a note says so"),
    Pair("", _TOOLS, ("nut",), why="a nut is no higher than the blade before it"),
    Pair("", (*_HEADS, "plate"), ("proud",), why="what stands on one face is held apart in its plane"),
    Pair("", _TOOLS, (*_IN_LEAF, "glass", *_LIMITS), why="a tool stands before the face, they in the leaf or beyond"),
    Pair("", _TOOLS, ("on-face",), why="the same things are there as the solids that they are"),
    Pair("", _TOOLS, ("sweep", "stop"), why="the leaf stands open for the work, and a lever is not held down"),
    Pair("", _TOOLS, ("screw", *_CUTS, "way-across", *_HEADS, "plate"), why="it makes or drives them, or comes before"),
    Pair("", ("tool",), ("usual-tool",), why="one is taken in place of the other"),
)
"""The table: each new kind with every kind that is there and every other new kind, once."""


_OF_RULE: Final = {pair.rule: tuple(each for each in TABLE if each.rule == pair.rule) for pair in TABLE if pair.rule}


def pairs_of(rule_id: str) -> tuple[Pair, ...]:
    """Return the pairs that a rule speaks of."""
    return _OF_RULE.get(rule_id, ())


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
        One for each two that are nearer, by more than the measuring tolerance, of bodies of one name the worst alone;
        "unknown" where only facts that nobody measured could bring them together.
    """
    held = last("bodies", (given, fit), _nothing_yet)
    for pair in pairs_of(rule_id):
        # What comes in is asked first: where it is nothing, nobody need know what stands there. Tools are many, and
        # made only where something stands that could be in their way.
        late = pair.new[0] in _TOOLS
        movers = [] if late else bodies_of(given, fit, pair.new, held)
        if not movers and not (late and _is_worked_on(fit, pair)):
            continue
        others = bodies_of(given, fit, pair.off, held)
        if pair.lies_on:
            others = [each for each in others if each.kind not in _STANDING or each.item not in pair.lies_on]
        if not others:
            continue
        if late:
            movers = bodies_of(given, fit, pair.new, held)
        worst: dict[tuple[str, str, str | int], Verdict] = {}
        for mover in movers:
            for other, verdict in _judged(given, mover, others, clearance_mm):
                # Screws of a unit are alike, and nuts of a pull: what the one says that comes farthest into a body goes
                # for all of them.
                key = (mover.name, mover.face, other.name if other.kind == "nut" else id(other))
                if key not in worst or _short(verdict) > _short(worst[key]):
                    worst[key] = verdict
        yield from worst.values()


def _is_worked_on(fit: Fit, pair: Pair) -> bool:
    """Tell whether anything is bored or driven at all, or turned where a pair asks for the lock edge."""
    return bool(fit.holes) or fit.placement is not None or ("on-edge" in pair.off and bool(fit.parts))


def _short(verdict: Verdict) -> float:
    return verdict.values.get("short_mm", -inf)


def _judged(
    given: OpeningInput, mover: Body, others: Sequence[Body], clearance_mm: float
) -> Iterable[tuple[Body, Verdict]]:
    for other in others:
        # Most pairs are far from each other: their boxes tell, at a tenth of the cost.
        if _far(mover.reach, other.reach, clearance_mm) or other is mover:
            continue
        gap = apart_mm(mover.solid, other.solid)
        if gap >= clearance_mm - TOUCH_MM:
            continue
        sure = gap if not other.needs else inf if other.surely is None else apart_mm(mover.solid, other.surely)
        if sure >= clearance_mm - TOUCH_MM:
            yield other, unknown(other.needs, other.name)
        else:
            yield (
                other,
                _excused(given, mover, other, sure, clearance_mm) or _verdict(given, mover, other, sure, clearance_mm),
            )


def _excused(given: OpeningInput, mover: Body, other: Body, gap: float, clearance_mm: float) -> Verdict | None:
    """Say that two bodies are far enough apart by the rounding of how the survey was written; None where not so."""
    solid = other.solid if not other.needs or other.surely is None else other.surely
    axes = apart_allowances(mover.carried, other.carried, mover.made)
    excuse = least_excuse(axes, lambda more: apart_mm(mover.solid, shrunk(solid, more)) >= clearance_mm - TOUCH_MM)
    return None if excuse is None else by_rounding(given, excuse, clearance_mm - gap, mover.about)


def _far(a: Box, b: Box, clearance_mm: float) -> bool:
    (ax0, ay0, az0), (ax1, ay1, az1) = a
    (bx0, by0, bz0), (bx1, by1, bz1) = b
    return (
        by0 - ay1 >= clearance_mm
        or ay0 - by1 >= clearance_mm
        or bx0 - ax1 >= clearance_mm
        or ax0 - bx1 >= clearance_mm
        or bz0 - az1 >= clearance_mm
        or az0 - bz1 >= clearance_mm
    )


def _verdict(given: OpeningInput, mover: Body, other: Body, gap: float, clearance_mm: float) -> Verdict:
    name = f"{mover.name[:1].upper()}{mover.name[1:]}"
    at = f" on the {mover.face} face" if mover.kind in _HEADS else ""
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

_Found = Mapping[Kind, Sequence[Body]]
_Group = Callable[[OpeningInput, Fit], _Found]
_Held = dict[_Group, _Found]


def _nothing_yet() -> _Held:
    return {}


def bodies_of(given: OpeningInput, fit: Fit, kinds: Iterable[Kind], held: _Held | None = None) -> list[Body]:
    """Return the bodies of some kinds, in the order of the kinds; held: what was asked of the same two before."""
    if held is None:
        held = {}
    bodies: list[Body] = []
    for kind in kinds:
        group = _GROUP_OF[kind]
        found = held.get(group)
        if found is None:
            found = held[group] = group(given, fit)
        bodies += found.get(kind, ())
    return bodies


def _lasting(given: OpeningInput, fit: Fit) -> _Found:
    return last("lasting bodies", (given,), _grouped(lambda: lasting_bodies(given)))


def _of_lock(given: OpeningInput, fit: Fit) -> _Found:
    return last("lock bodies", (given, lock_part(given, fit)), _grouped(lambda: lock_bodies(given, fit)))


def _heads(given: OpeningInput, fit: Fit) -> _Found:
    key = (given, lock_part(given, fit), in_role(given, fit, "collar"))
    return last("heads bodies", key, _grouped(lambda: head_bodies(given, fit)))


def _holes(given: OpeningInput, fit: Fit) -> _Found:
    return last("holes bodies", (given, fit.holes), _grouped(lambda: hole_bodies(given, fit)))


def _unit(given: OpeningInput, fit: Fit) -> _Found:
    return last("unit bodies", (given, fit), _grouped(lambda: unit_bodies(given, fit)))


def _tools(given: OpeningInput, fit: Fit) -> _Found:
    return last("tools", (given, fit), _grouped(lambda: tool_bodies(given, fit, long=True)))


def _usual_tools(given: OpeningInput, fit: Fit) -> _Found:
    return last("usual tools", (given, fit), _grouped(lambda: tool_bodies(given, fit, long=False)))


def _grouped(make: Callable[[], Iterable[Body]]) -> Callable[[], _Found]:
    def made() -> _Found:
        found: dict[Kind, list[Body]] = {}
        for body in make():
            found.setdefault(body.kind, []).append(body)
        return found

    return made


_GROUP_OF: Final[Mapping[Kind, _Group]] = {
    **dict.fromkeys(EXISTING, _lasting),
    **dict.fromkeys(("case", "bore"), _of_lock),
    **dict.fromkeys(NEW, _holes),
    **dict.fromkeys(("head", "bolted-on"), _heads),
    **dict.fromkeys(("screw", "plate"), _unit),
    "tool": _tools,
    "usual-tool": _usual_tools,
}


def pair_for(a: Kind, b: Kind) -> Pair | None:
    """Return the line of the table that speaks of two kinds, the new one first or second."""
    return next((p for p in TABLE if (a in p.new and b in p.off) or (b in p.new and a in p.off)), None)


KINDS: Final = (*EXISTING, *NEW)
