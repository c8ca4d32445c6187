"""The solid model of an opening as it will stand: every body of the lock's leaf in one frame of coordinates.

x from the lock edge, y up from the finished floor, z from the inside face (0) to the key face; all mm. Here belongs
what stands where. Which bodies must be apart, and by how much, stands in `clashes`.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace
from functools import lru_cache
from math import atan, cos, degrees, inf, radians, sin, tan
from typing import Final, Literal

from hwsched.attributes.of_parts import (
    CASE_HEIGHT_MM,
    CASE_WIDTH_MM,
    CROSS_BORE_MM,
    DEPTH_MM,
    EDGE_BORE_MM,
    FACE_HEIGHT_MM,
    FACE_WIDTH_MM,
    FORM,
    HEAD_DIAMETER_MM,
    HOLE_MM,
    LENGTH_MM,
    MOUNTING,
    OUTER_DIAMETER_MM,
    SCREW_SEAT_MM,
    SIZE,
    THREAD_DIAMETER_MM,
    TRIM_DIAMETER_MM,
)
from hwsched.calc.opening.bore import Box, Rod, Vector
from hwsched.calc.opening.placement import Rect
from hwsched.calc.opening.solid import Solid, bounds
from hwsched.rules.carried import NOTHING, Carried, of_case, of_centre, of_front, of_item, of_middle
from hwsched.rules.practice import distance_mm, screw_diameter_mm
from hwsched.rules.reading import (
    beside_here,
    entry,
    in_role,
    leaf_name,
    leaf_reach_mm,
    leaf_span_mm,
    lock_item,
    lock_leaf,
    lock_part,
    on_leaf,
    other_locks,
    remains,
    stile_mm,
    unit_part,
)
from hwsched.rules.solid.bores import as_rod
from hwsched.rules.solid.clearances import ON_FACE, plate_sizes
from hwsched.rules.solid.edge import front_of
from hwsched.rules.solid.exit_devices import devices, rod_line_mm, stretches
from hwsched.rules.solid.fixings import KINDS as FIXED_KINDS
from hwsched.rules.solid.fixings import NAMES, NEEDS, fixings
from hwsched.rules.solid.footprints import (
    Footprint,
    face_of,
    face_unknown,
    footprints,
    missing,
    rectangle,
    stop_bands,
    stop_carried,
)
from hwsched.rules.solid.housing import housing_rect
from hwsched.rules.solid.levers import sweep_deg
from hwsched.rules.solid.nuts import corners, is_bolted, is_under, nut_limits
from hwsched.rules.solid.nuts import on_face as nut_on_face
from hwsched.rules.solid.screws import screw_places
from hwsched.rules.solid.tools import at_edge, at_hole, at_screw, fingers, is_square, proud_of, sizes
from hwsched.rules.solid.turns import half_mm, turn_limits
from hwsched.rules.wording import length
from hwsched.values import Fit, Hole, Item, Leaf, OpeningInput, Part

Kind = Literal[
    "case", "bore", "spindle", "bolt", "glass", "other-lock", "on-face", "sweep", "stop", "beyond-stile", "beyond-leaf",
    "proud", "nut", "on-edge", "front", "screw", "lead-hole", "new-bore", "pocket", "way-across", "head", "bolted-on",
    "plate", "tool", "usual-tool",
]  # fmt: skip
EXISTING: Final[tuple[Kind, ...]] = (
    "case", "bore", "spindle", "bolt", "glass", "other-lock", "on-face", "sweep", "stop", "beyond-stile", "beyond-leaf",
    "proud", "nut", "on-edge", "front",
)  # fmt: skip
"""What stands there already, the leaf's own limits included; what is on a face as a plane and, proud, as a solid; on
the other face the nuts of what is bolted through the leaf, as broad as the socket that turns them; the fronts of locks
in the lock edge."""
NEW: Final[tuple[Kind, ...]] = (
    "screw", "lead-hole", "new-bore", "pocket", "way-across", "head", "bolted-on", "plate", "tool", "usual-tool",
)  # fmt: skip
"""What comes in: a screw, a hole or channel for the lead, a bore for the lock, an in-edge unit's pocket, a way for the
supply's wire from the hinge edge, a head, collar or rose on a face, a lock that is bolted on with its nuts on the other
face, a unit's plate; and for the time of the work what bores and drives, and fingers: what must come to each hole and
screw in any case, and what one has at hand."""

_FACE: Final = ("existing_item.face",)
"""What is missing of an item that may stand on either face."""
_OF_STOP: Final = ("opening.hand", "opening.frame_stop_mm")
"""Facts without which it is unknown whether a stop stands at the lock edge of a face."""
_SWEEP_STEPS: Final = 5
"""Places of a handle on its way down that stand for the whole of it."""
_FAR: Final = 10_000.0
"""Beyond every leaf [mm]."""
_PROUD: Final = 50.0
"""Depth of what stands on a face: faces are compared as planes, so that it only has to be there [mm]."""
_IN_LEAF: Final = ("lite", "louvre")
"""Kinds of item that take the leaf's place."""
_NOT_ON_EDGE: Final = ("hinge", "label", "lock", "deadbolt", "flush-bolt")
"""Kinds of item that lie flush in an edge, or stand in the other one."""
_TURNED: Final = ("thumb-turn", "lever")
"""Kinds of item with a spindle from the face into the lock."""
_ENTERS: Final = {
    "thumb-turn": "turn-hole",
    "lever": "spindle-hole",
    "viewer": "spindle-hole",
    "deadbolt": "deadbolt-bore",
    "pull": "pull-bolt",
    "flush-bolt": "flush-bolt-wide",
}
"""Kinds of item that have something in the leaf, and how wide it is at the most, by the name of the distance."""
_MEANT_THROUGH: Final = ("through-bolt", "machine-screw")
"""Forms of fastener that pass the leaf."""


@dataclass(frozen=True, slots=True)
class Body:
    """One solid of the opening."""

    kind: Kind
    name: str
    """As findings name it."""
    solid: Solid
    about: str = ""
    """Part or hole that it is."""
    face: str = ""
    """For what stands on a face, or starts in it: inside, key, lock-edge."""
    item: str = ""
    """For an existing item: its kind."""
    needs: tuple[str, ...] = ()
    """Facts that are missing to know its size: then it is the greatest that it can be."""
    surely: Solid | None = None
    """Where facts are missing: what of it is there in any case; None: perhaps nothing."""
    carried: Carried = NOTHING
    """Facts of the survey by which it stands where it does and is as large as it is."""
    made: tuple[float | None, ...] = ()
    """For what comes in: sizes by which is told whether it is made in inches."""
    reach: Box = field(init=False, compare=False)
    """The smallest box that holds it."""

    def __post_init__(self) -> None:
        object.__setattr__(self, "reach", bounds(self.solid))


def existing_bodies(given: OpeningInput, fit: Fit) -> tuple[Body, ...]:
    """Return what stands in and on the lock's leaf before the new parts come, without what is taken away.

    Parameters
    ----------
    given, fit : OpeningInput, Fit
        The fit gives the new lock, whose bores count where they are larger.

    Returns
    -------
    tuple of Body
        The lock first; empty for an opening without a leaf or of unknown thickness.
    """
    return (*lock_bodies(given, fit), *lasting_bodies(given))


def new_bodies(given: OpeningInput, fit: Fit) -> tuple[Body, ...]:
    """Return what the fit brings: screws, holes, pocket, heads and plate; empty as above."""
    return (
        *unit_bodies(given, fit),
        *hole_bodies(given, fit),
        *head_bodies(given, fit),
        *tool_bodies(given, fit, long=True),
        *tool_bodies(given, fit, long=False),
    )


def lasting_bodies(given: OpeningInput) -> tuple[Body, ...]:
    """Return what is there whatever lock comes in: other locks, existing items, stop, the leaf's own limits."""
    leaf = lock_leaf(given)
    if leaf is None or leaf.thickness_mm is None:
        return ()
    thick = leaf.thickness_mm
    return (
        *_of_other_locks(given, leaf, thick),
        *_of_items(given, leaf, thick),
        *_of_devices(given, leaf, thick),
        *_on_faces(given, leaf, thick),
        *_on_edge(given, leaf, thick),
        *_fronts(given, leaf, thick),
        *_limits(given, leaf),
    )


# --- what is there ------------------------------------------------------------------------------------------------


def lock_bodies(given: OpeningInput, fit: Fit) -> Iterator[Body]:
    """Yield the existing lock's body in the leaf, and its bores as wide as the new lock needs them."""
    lock, part, leaf = lock_item(given), lock_part(given, fit), lock_leaf(given)
    if lock is None or lock.backset_mm is None or lock.cylinder_height_mm is None:
        return
    if leaf is None or leaf.thickness_mm is None:
        return
    x, y, thick = lock.backset_mm, lock.cylinder_height_mm, leaf.thickness_mm
    form = lock.lock_form
    if form in ("mortise", "euro-profile"):
        yield _case(lock, leaf, thick, "the lock's case")
    elif form == "bored":
        sizes = [lock.cross_bore_mm, part.number_of(CROSS_BORE_MM) if part is not None else None]
        edges = [lock.edge_bore_mm, part.number_of(EDGE_BORE_MM) if part is not None else None]
        yield from _bores(lock, x, y, thick, sizes, edges)
    elif form == "rim":
        hole = _through(x, y, thick, distance_mm("cylinder-hole"))
        yield Body("bore", "the cylinder's hole", hole, carried=of_centre(lock))
    elif form == "cabinet" and part is not None and (wide := part.number_of(THREAD_DIAMETER_MM)) is not None:
        yield Body("bore", "the cabinet lock's hole", _through(x, y, thick, wide), carried=of_centre(lock))
    elif form == "reader" and part is not None and (wide := part.number_of(HOLE_MM)) is not None:
        deep = min(part.number_of(DEPTH_MM) or thick, thick)
        body = Rod((x, y, thick - deep), (x, y, thick), wide)
        yield Body("bore", "the reader's hole", body, carried=of_centre(lock))


def _case(lock: Item, leaf: Leaf, thick: float, name: str, kind: Kind = "case") -> Body:
    """Return a lock's case; what is not measured counts as large as it can be, and what is surely there is told too."""
    x, y = lock.backset_mm or 0.0, lock.cylinder_height_mm or 0.0
    middle = thick / 2 + (lock.case_offset_mm or 0.0)
    hole = distance_mm("cylinder-hole") / 2
    above, high, deep, wide = lock.case_above_mm, lock.case_height_mm, lock.case_depth_mm, lock.case_width_mm
    far = distance_mm("case-at-most")
    facts = {"case_above_mm": above, "case_height_mm": high, "case_depth_mm": deep, "case_width_mm": wide}
    needs = tuple(f"existing_item.{fact}" for fact, value in facts.items() if value is None)
    # The case is there at least round the cylinder; where it ends nobody measured.
    top, most_top = (above, above) if above is not None else (hole, far)
    down, most_down = (high - top, high - top) if high is not None and above is not None else (hole, far)
    back, most_back = (deep, deep) if deep is not None else (x + hole, x + far)
    half, most_half = (wide / 2, wide / 2) if wide is not None else (hole / 2, thick / 2)
    large = Box((0.0, y - most_down, middle - most_half), (most_back, y + most_top, middle + most_half))
    small = Box((0.0, y - down, middle - half), (back, y + top, middle + half))
    return Body(kind, name, large, needs=needs, surely=small, carried=of_case(lock, leaf))


def _bores(
    lock: Item, x: float, y: float, thick: float, cross: Iterable[float | None], edge: Iterable[float | None]
) -> Iterator[Body]:
    carried = of_centre(lock)
    across = max((size for size in cross if size is not None), default=None)
    along = max((size for size in edge if size is not None), default=None)
    if across is not None:
        yield Body("bore", "the lock's cross bore", _through(x, y, thick, across), carried=carried)
    if along is not None:
        body = Rod((0.0, y, thick / 2), (x, y, thick / 2), along)
        yield Body("bore", "the lock's edge bore", body, carried=carried)


def _through(x: float, y: float, thick: float, diameter: float) -> Rod:
    return Rod((x, y, 0.0), (x, y, thick), diameter)


def _of_other_locks(given: OpeningInput, leaf: Leaf, thick: float) -> Iterator[Body]:
    for lock in other_locks(given):
        if on_leaf(lock, leaf):
            yield from _another(lock, leaf, thick)
    for each in beside_here(given):
        for hole in each.fit.holes if each.fit is not None else ():
            solid = solid_of(hole, thick) if not hole.by_template and hole.leaf == leaf_name(leaf) else None
            if solid is not None:
                yield Body("other-lock", f"the {hole.name} of the {each.point.name}", solid)


def _another(lock: Item, leaf: Leaf, thick: float) -> Iterator[Body]:
    """Yield what another lock of the leaf takes from it."""
    x, y = lock.backset_mm, lock.cylinder_height_mm
    if x is None or y is None:
        return
    name = f"the {(lock.kind or 'lock').replace('-', ' ')}'s body"
    if lock.lock_form in ("mortise", "euro-profile"):
        yield _case(lock, leaf, thick, name, "other-lock")
    elif lock.lock_form == "bored":
        for body in _bores(lock, x, y, thick, [lock.cross_bore_mm], [lock.edge_bore_mm]):
            yield replace(body, kind="other-lock", name=name)
    elif lock.lock_form == "rim":
        hole = _through(x, y, thick, distance_mm("cylinder-hole"))
        yield Body("other-lock", name, hole, carried=of_centre(lock))


def _of_items(given: OpeningInput, leaf: Leaf, thick: float) -> Iterator[Body]:
    lock = lock_item(given)
    for item in given.items:
        if item is lock or item.id in given.point.others or not remains(item) or not on_leaf(item, leaf):
            continue
        rect = rectangle(item)
        if item.kind == "lock" or (item.kind == "deadbolt" and item.lock_form in ("mortise", "euro-profile")):
            # A lock that stays as it is: no lock point, and all the same in the way.
            yield from _another(item, leaf, thick)
            continue
        if rect is None or item.kind is None:
            yield from _somewhere(item, thick)
            continue
        carried = of_item(item)
        x, y = (rect.x0 + rect.x1) / 2, (rect.y0 + rect.y1) / 2
        name = f"the {item.kind.replace('-', ' ')}"
        if item.kind in _IN_LEAF:
            # It goes through, and its frame stands on both faces: what is put on a face keeps off it too.
            box = Box((rect.x0, rect.y0, -_PROUD), (rect.x1, rect.y1, thick + _PROUD))
            yield Body("glass", name, box, item=item.kind, carried=carried)
        elif item.kind in _TURNED:
            yield _spindle(item, lock, rect, thick)
        elif item.kind == "viewer":
            hole = _through(x, y, thick, min(rect.x1 - rect.x0, rect.y1 - rect.y0))
            yield Body("spindle", name, hole, item="viewer", carried=of_middle(item))
        elif item.kind == "deadbolt":
            bore = item.cross_bore_mm or distance_mm("deadbolt-bore")
            hole = _through(x, y, thick, bore)
            yield Body("bolt", "the deadbolt's cross bore", hole, item="deadbolt", carried=of_middle(item))
            edge = item.edge_bore_mm or distance_mm("deadbolt-edge-bore")
            hole = Rod((0.0, y, thick / 2), (x, y, thick / 2), edge)
            yield Body("bolt", "the deadbolt's edge bore", hole, item="deadbolt", carried=of_middle(item))
        elif item.kind == "flush-bolt":
            deep, half = distance_mm("flush-bolt-deep"), distance_mm("flush-bolt-wide") / 2
            box = Box((0.0, rect.y0, thick / 2 - half), (deep, rect.y1, thick / 2 + half))
            yield Body("bolt", name, box, item="flush-bolt", carried=carried)
        if item.kind in FIXED_KINDS and item.kind != "exit-device":
            yield from _fixings(item, rect, _spindle_x(item, lock, rect), thick)


def _somewhere(item: Item, thick: float) -> Iterator[Body]:
    """Yield what an item has in the leaf whose place or size nobody told in full: wherever it may be."""
    if item.kind not in _ENTERS:
        return
    x, y, name = item.x_mm, item.y_mm, f"the {item.kind.replace('-', ' ')}"
    half = distance_mm(_ENTERS[item.kind]) / 2
    left, right = (-_FAR, _FAR) if x is None else (x - half, x + half)
    if item.kind == "flush-bolt":
        left, right = 0.0, distance_mm("flush-bolt-deep")
    # As high as it may be: half of a pull's length may lie above its middle.
    long = _FAR if y is None or (item.height_mm is None and item.kind in ("pull", "flush-bolt")) else half
    long = max(long, (item.height_mm or 0.0) / 2)
    low, high = ((y or 0.0) - long, (y or 0.0) + long)
    front, back = {"inside": (0.0, thick / 2), "key": (thick / 2, thick)}.get(face_of(item), (0.0, thick))
    if item.kind not in _TURNED:
        front, back = 0.0, thick
    box = Box((left, low, front), (right, high, back))
    kind: Kind = "spindle" if item.kind in (*_TURNED, "viewer") else "bolt"
    yield Body(kind, name, box, item=item.kind, needs=missing(item))


def _fixings(item: Item, rect: Rect, line: float, thick: float, reach: float | None = None) -> Iterator[Body]:
    """Yield what holds an existing item in the leaf; where nobody told the places, all that it may take."""
    needs, name, kind = NEEDS if item.bolt_inset_mm is None else (), NAMES[item.kind or ""], item.kind or ""
    for solid in fixings(item, rect, line, thick, reach):
        yield Body("bolt", name, solid, item=kind, needs=needs, carried=of_item(item))


def _of_devices(given: OpeningInput, leaf: Leaf, thick: float) -> Iterator[Body]:
    """Yield what exit devices have in the leaf: the fixings of case and end cap, rods and their latches."""
    for item in devices(given, leaf):
        rect = rectangle(item)
        if rect is None:
            continue
        lock = lock_item(given)
        rim = lock if lock is not None and lock.lock_form == "rim" and on_leaf(lock, leaf) else None
        yield from _fixings(item, rect, 0.0, thick, rim.case_depth_mm if rim is not None else None)
        if item.device_form in ("rim", "mortise", "surface-rods"):
            continue
        x, lacking = rod_line_mm(item)
        half, rod = distance_mm("device-latch-deep") / 2, distance_mm("device-rod-hole")
        span, middle = leaf_span_mm(given, leaf), thick / 2
        if x is None:
            # Whether rods run in the leaf, or where, nobody told: in the lock stile, if they do.
            low, top = span or (-_FAR, _FAR)
            column = Box((0.0, low, middle - half), (distance_mm("device-rod-at-most"), top, middle + half))
            yield Body("bolt", "the exit device's rods", column, item="exit-device", needs=lacking)
            continue
        wide = distance_mm("device-latch-wide-in") / 2
        for low, high, latch_low, latch_high, needs in stretches(item, (rect.y0 + rect.y1) / 2, span):
            run = Rod((x, low, middle), (x, high, middle), rod)
            line = Carried((("existing_item.rod_x_mm", item.rod_x_mm, 1.0),), of_item(item).up)
            yield Body("bolt", "the exit device's rod", run, item="exit-device", needs=needs, carried=line)
            latch = Box((x - wide, latch_low, middle - half), (x + wide, latch_high, middle + half))
            yield Body("bolt", "the exit device's latch", latch, item="exit-device", needs=needs, carried=line)


def _spindle(item: Item, lock: Item | None, rect: Rect, thick: float) -> Body:
    """Return the hole in which a turn's or lever's spindle runs, from its face to the leaf's middle."""
    x, y = _spindle_x(item, lock, rect), (rect.y0 + rect.y1) / 2
    ends = {"inside": (0.0, thick / 2), "key": (thick / 2, thick)}.get(face_of(item), (0.0, thick))
    wide = distance_mm("turn-hole" if item.kind == "thumb-turn" else "spindle-hole")
    name = f"the {(item.kind or '').replace('-', ' ')}'s spindle"
    needs = _FACE if face_unknown(item) else ()
    hole = Rod((x, y, ends[0]), (x, y, ends[1]), wide)
    return Body("spindle", name, hole, item=item.kind or "", needs=needs, carried=of_middle(item))


def _spindle_x(item: Item, lock: Item | None, rect: Rect) -> float:
    # A lever's handle reaches to one side of its rose: the spindle stands on the lock's backset line.
    backset = lock.backset_mm if lock is not None and item.kind == "lever" else None
    return backset if backset is not None and rect.x0 < backset < rect.x1 else (rect.x0 + rect.x1) / 2


def _on_faces(given: OpeningInput, leaf: Leaf, thick: float) -> Iterator[Body]:
    for face in ON_FACE:
        # The lock's own trim is what heads and collars stand on: whichever lock comes in, it is left out.
        for found in footprints(given, Fit("to-measure"), face):
            if found.rect is None or found.kind in _IN_LEAF:
                continue
            if found.kind != "lock" or found.other:
                yield Body(
                    "on-face",
                    f"the {found.name}",
                    _slab(found.rect, face, thick),
                    face=face,
                    item=found.kind,
                    needs=(found.needs or _FACE) if found.perhaps else (),
                    carried=found.carried,
                )
                yield _proud(given, found, face, thick)
        yield from _nuts(given, leaf, face, thick)
        yield from _sweeps(given, leaf, face, thick)
        yield from _turns(given, face, thick)
        bands, needs = stop_bands(given, leaf, face)
        if needs and given.opening.form != "pair":
            # Whether one stands there, or how wide, nobody told: at the lock edge it counts as wide as it can be.
            wide, needs = given.opening.frame_stop_mm, tuple(need for need in needs if need in _OF_STOP)
            bands = (Rect(0.0, -_FAR, distance_mm("stop-at-most") if wide is None else wide, _FAR),)
        for band in bands:
            slab, carried = _slab(band, face, thick), stop_carried(given, leaf, band)
            yield Body("stop", "the band that the frame's stop hides", slab, face=face, needs=needs, carried=carried)


def _proud(given: OpeningInput, found: Footprint, face: str, thick: float) -> Body:
    """Return what stands on a face as the solid that it is for a tool beside it."""
    rect, out = found.rect or Rect(0, 0, 0, 0), proud_of(found.kind, found.proud_mm, sizes(given.settings))
    low, high = (-out, 0.0) if face == "inside" else (thick, thick + out)
    name = f"the {found.name}"
    if found.proud_mm is None:
        name += f", taken to stand {length(given, out)} out (common practice, unverified)"
    needs = (found.needs or _FACE) if found.perhaps else ()
    box = Box((rect.x0, rect.y0, low), (rect.x1, rect.y1, high))
    return Body("proud", name, box, face=face, item=found.kind, needs=needs, carried=found.carried)


def _sweeps(given: OpeningInput, leaf: Leaf, face: str, thick: float) -> Iterator[Body]:
    """Yield where the handles of levers come as they are turned down: toward the hinges, about their spindles."""
    lock, bar = lock_item(given), distance_mm("lever-bar")
    most = sweep_deg(given.settings)
    z = -bar / 2 if face == "inside" else thick + bar / 2
    for item in given.items:
        rect = rectangle(item) if item.kind == "lever" and remains(item) and on_leaf(item, leaf) else None
        if rect is None or face_of(item) not in (face, "both"):
            continue
        x, y = _spindle_x(item, lock, rect), (rect.y0 + rect.y1) / 2
        long = rect.x1 - x - bar / 2
        for step in range(1, _SWEEP_STEPS + 1) if long > 0 else ():
            down = radians(most * step / _SWEEP_STEPS)
            end: Vector = (x + long * cos(down), y - long * sin(down), z)
            rod, needs = Rod((x, y, z), end, bar), _FACE if face_unknown(item) else ()
            carried = of_item(item)
            yield Body("sweep", "the lever as it is turned", rod, face=face, item="lever", needs=needs, carried=carried)


def _turns(given: OpeningInput, face: str, thick: float) -> Iterator[Body]:
    """Yield what thumb turns sweep."""
    limits = turn_limits(given.settings)
    z = 0.0 if face == "inside" else thick
    for found in footprints(given, Fit("to-measure"), face):
        half = half_mm(found.rect, limits) if found.kind == "thumb-turn" and found.rect is not None else 0.0
        if found.rect is not None and half > 0:
            x, y = (found.rect.x0 + found.rect.x1) / 2, (found.rect.y0 + found.rect.y1) / 2
            rod = Rod((x, y, z), (x, y, z + (-_PROUD if face == "inside" else _PROUD)), 2 * half)
            name, needs = "the thumb turn as it is turned", (found.needs or _FACE) if found.perhaps else ()
            yield Body("sweep", name, rod, face=face, item="thumb-turn", needs=needs, carried=found.carried)


def _nuts(given: OpeningInput, leaf: Leaf, face: str, thick: float) -> Iterator[Body]:
    """Yield where bolts of what stands on the other face alone have their nuts, unless under something else."""
    lock, socket = lock_item(given), nut_limits(given.settings)["socket_mm"]
    under = [found.rect for found in footprints(given, Fit("to-measure"), face) if found.rect is not None]
    for item in given.items:
        rect = rectangle(item) if is_bolted(item) and remains(item) and on_leaf(item, leaf) else None
        if rect is None or face_of(item) != ("key" if face == "inside" else "inside"):
            continue
        needs = NEEDS if item.bolt_inset_mm is None else ()
        name = f"the room for a socket at the nut of {NAMES[item.kind or '']}"
        for fixing in fixings(item, rect, _spindle_x(item, lock, rect), thick, None):
            if not is_under(fixing, under):
                nut = nut_on_face(fixing, face, thick, _PROUD, socket)
                kind, carried = item.kind or "", of_item(item)
                yield Body("nut", name, nut, face=face, item=kind, needs=needs, carried=carried)


def _on_edge(given: OpeningInput, leaf: Leaf, thick: float) -> Iterator[Body]:
    """Yield what stands on the lock edge before what is in it."""
    for item in given.items:
        if item is lock_item(given) or not remains(item) or not on_leaf(item, leaf) or face_of(item) != "edge":
            continue
        y, high, kind = item.y_mm, item.height_mm, item.kind or "other"
        if kind in _NOT_ON_EDGE or y is None or high is None:
            continue
        out = proud_of(kind, item.projection_mm, sizes(given.settings))
        box = Box((-out, y - high / 2, 0.0), (0.0, y + high / 2, thick))
        name = f"the {'item' if kind == 'other' else kind.replace('-', ' ')} on the lock edge"
        yield Body("on-edge", name, box, face="lock-edge", item=kind, carried=of_item(item))


def _fronts(given: OpeningInput, leaf: Leaf, thick: float) -> Iterator[Body]:
    """Yield the fronts of the leaf's locks, let into the lock edge over their cases and past both ends of them."""
    own = lock_item(given)
    for item in given.items:
        here = item is own or (item.id in given.point.others and remains(item))
        front = front_of(item) if here and on_leaf(item, leaf) else None
        if front is not None:
            middle, half = thick / 2 + (item.case_offset_mm or 0.0), front.width_mm / 2
            high = (middle - half, middle + half)
            plate = Box((0.0, front.low, high[0]), (distance_mm("front-deep"), front.high, high[1]))
            name = f"the {(item.kind or 'lock').replace('-', ' ')}'s front"
            yield Body("front", name, plate, face="lock-edge", carried=of_front(item, leaf))


def _slab(rect: Rect, face: str, thick: float) -> Box:
    low, high = (-_PROUD, 0.0) if face == "inside" else (thick, thick + _PROUD)
    return Box((rect.x0, rect.y0, low), (rect.x1, rect.y1, high))


def _limits(given: OpeningInput, leaf: Leaf) -> tuple[Body, ...]:
    """Return what lies beyond the leaf's edges, and beyond its lock stile."""
    has_stile, stile = stile_mm(leaf)
    sizes_mm = leaf.width_mm, leaf.height_mm, leaf.undercut_mm
    return _beyond(stile if has_stile else None, *sizes_mm, leaf_span_mm(given, leaf), leaf_reach_mm(given, leaf))


# Leaves of a building are of few sizes.
@lru_cache(1024)
def _beyond(
    stile: float | None,
    width: float | None,
    height: float | None,
    undercut: float | None,
    span: tuple[float, float] | None,
    reach: tuple[float, float] | None,
) -> tuple[Body, ...]:
    low, high = -_FAR, _FAR
    found = [Body("beyond-leaf", "the lock edge", Box((low, low, low), (0.0, high, high)))]
    if stile is not None:
        carried = Carried((("leaf.stile_mm", stile, 1.0),))
        beyond = Box((stile, low, low), (high, high, high))
        found.append(Body("beyond-stile", "the stile's inner edge", beyond, carried=carried))
    if width is not None:
        carried = Carried((("leaf.width_mm", width, 1.0),))
        beyond = Box((width, low, low), (high, high, high))
        found.append(Body("beyond-leaf", "the hinge edge", beyond, carried=carried))
    if span is not None and reach is not None:
        needs = () if span == reach else ("leaf.undercut_mm",)
        under = ("leaf.undercut_mm", undercut, 1.0)
        for name, own, ends, surely in (
            ("the leaf's lower edge", (under,), (low, span[0]), (low, reach[0])),
            ("the leaf's top", (("leaf.height_mm", height, 1.0), under), (span[1], high), (reach[1], high)),
        ):
            beyond, least = (Box((low, y0, low), (high, y1, high)) for y0, y1 in (ends, surely))
            sure = least if needs else None
            found.append(Body("beyond-leaf", name, beyond, needs=needs, surely=sure, carried=Carried(up=own)))
    return tuple(found)


# --- what comes in ------------------------------------------------------------------------------------------------


def screws_of(given: OpeningInput, fit: Fit, thick: float) -> tuple[Body, ...]:
    """Return the unit's screws as they stand in the leaf; none while part, place or length is unknown."""
    unit, place = unit_part(given, fit), fit.placement
    if unit is None or place is None or place.face not in ON_FACE:
        return ()
    for fit_part in fit.parts:
        screw = entry(given, fit_part) if fit_part.role == "fastener" else None
        if screw is None or screw.text_of(SIZE) in (None, "") or screw.text_of(FORM) == "adhesive":
            continue
        deep = depth_of(screw, unit, thick)
        if deep is None:
            return ()
        spots = screw_places(unit, place.width_mm, place.height_mm)
        wide = screw_diameter_mm(screw.text_of(SIZE) or "")
        own, made = of_centre(lock_item(given)), plate_sizes(unit)
        ends = (0.0, deep) if place.face == "inside" else (thick, thick - deep)
        return tuple(
            Body(
                "screw",
                "a screw of the unit",
                Rod((place.x_mm + x, place.y_mm + y, ends[0]), (place.x_mm + x, place.y_mm + y, ends[1]), wide),
                about=screw.number,
                face=place.face,
                carried=own,
                made=made,
            )
            for x, y in spots
        )
    return ()


def depth_of(screw: Part, unit: Part, thick: float) -> float | None:
    """Return how deep a screw goes into the leaf [mm]; None while its length is unknown."""
    if screw.text_of(FORM) in _MEANT_THROUGH:
        return thick
    long = screw.number_of(LENGTH_MM)
    # How thick the plate is under the heads is seldom told: not told, nothing is taken off.
    return None if long is None else max(long - (unit.number_of(SCREW_SEAT_MM) or 0.0), 0.0)


def solid_of(hole: Hole, thick: float) -> Solid | None:
    """Return what a hole takes from the leaf; None for one by template: it stands where its part does."""
    if hole.by_template or hole.face not in (*ON_FACE, "lock-edge"):
        return None
    if hole.face in ON_FACE:
        return as_rod(hole, thick)
    deep = hole.depth_mm or 0.0
    if hole.width_mm is not None and hole.height_mm is not None:
        half_wide, half_high = hole.width_mm / 2, hole.height_mm / 2
        return Box(
            (0.0, hole.y_mm - half_high, hole.x_mm - half_wide), (deep, hole.y_mm + half_high, hole.x_mm + half_wide)
        )
    return Rod((0.0, hole.y_mm, hole.x_mm), (deep, hole.y_mm, hole.x_mm), hole.diameter_mm)


def slot_of(hole: Hole) -> Rect:
    """Return what a hole takes from the face that it starts in, the slot of a tilted bit included."""
    half = hole.diameter_mm / 2
    if hole.up_deg or hole.edge_deg:
        # Slanted from the face on: there its section is longer than it is wide, on both sides of its centre.
        half = abs(hole.slot_mm) or half
        return Rect(hole.x_mm - half, hole.y_mm - half, hole.x_mm + half, hole.y_mm + half)
    up, down = max(hole.slot_mm, half), max(-hole.slot_mm, half)
    return Rect(hole.x_mm - half, hole.y_mm - down, hole.x_mm + half, hole.y_mm + up)


def hole_bodies(given: OpeningInput, fit: Fit) -> Iterator[Body]:
    """Yield the holes and pockets of a fit that are not taken from a template."""
    leaf = lock_leaf(given)
    if leaf is None or leaf.thickness_mm is None:
        return
    thick = leaf.thickness_mm
    for hole in fit.holes:
        if hole.leaf == leaf_name(leaf) and hole.face == "hinge-edge" and leaf.width_mm is not None:
            ends: tuple[Vector, Vector] = (
                (leaf.width_mm, hole.y_mm, hole.x_mm),
                (leaf.width_mm - (hole.depth_mm or 0.0), hole.y_mm, hole.x_mm),
            )
            yield Body("way-across", f"the {hole.name}", Rod(*ends, hole.diameter_mm), about=hole.name, face=hole.face)
        solid = solid_of(hole, thick) if hole.leaf == leaf_name(leaf) else None
        if solid is None:
            continue
        kind: Kind = "pocket" if hole.purpose == "pocket" else "new-bore"
        if hole.purpose in ("cable", "channel"):
            kind = "lead-hole"
        own, made = of_centre(lock_item(given)), (hole.diameter_mm,)
        yield Body(kind, f"the {hole.name}", solid, about=hole.name, face=hole.face, carried=own, made=made)
        if hole.slot_mm and not hole.up_deg and not hole.edge_deg:
            cut, deep = slot_of(hole), min(hole.depth_mm or thick, thick)
            low, high = (0.0, deep) if hole.face == "inside" else (thick - deep, thick)
            slot = Box((cut.x0, cut.y0, low), (cut.x1, cut.y1, high))
            name = f"the slot of the {hole.name}"
            yield Body(kind, name, slot, about=hole.name, face=hole.face, carried=own, made=made)


def head_bodies(given: OpeningInput, fit: Fit) -> Iterator[Body]:
    """Yield what the new lock shows on the faces: head with collar, rose, reader."""
    lock, part, leaf = lock_item(given), lock_part(given, fit), lock_leaf(given)
    if lock is None or part is None or lock.backset_mm is None or lock.cylinder_height_mm is None:
        return
    if leaf is None or leaf.thickness_mm is None:
        return
    x, y, thick = lock.backset_mm, lock.cylinder_height_mm, leaf.thickness_mm

    def head(name: str, solid: Solid, face: str, *made: float | None) -> Body:
        return Body("head", name, solid, part.number, face, carried=of_centre(lock), made=made)

    if part.kind == "bored-lever-lock":
        rose = part.number_of(TRIM_DIAMETER_MM)
        if rose is not None:
            yield head("the lock's rose", Rod((x, y, -_PROUD), (x, y, 0.0), rose), "inside", rose)
            yield head("the lock's rose", Rod((x, y, thick), (x, y, thick + _PROUD), rose), "key", rose)
        return
    if part.kind == "fixed-reader":
        wide, high = part.number_of(FACE_WIDTH_MM), part.number_of(FACE_HEIGHT_MM)
        if wide is not None and high is not None:
            face = Rect(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)
            yield head("the reader's face", _slab(face, "key", thick), "key", wide, high)
        return
    if part.kind == "gate-lock":
        yield from _bolted_on(given, lock, part, x, y, thick)
        return
    collar = in_role(given, fit, "collar")
    sizes = [part.number_of(HEAD_DIAMETER_MM), collar.number_of(OUTER_DIAMETER_MM) if collar is not None else None]
    widest = max((size for size in sizes if size is not None), default=None)
    if widest is not None and part.kind in ("mortise-cylinder", "rim-cylinder"):
        name = "the cylinder's collar" if collar is not None and sizes[1] == widest else "the cylinder's head"
        end: Vector = (x, y, thick + _PROUD)
        yield head(name, Rod((x, y, thick), end, widest), "key", widest)


def _bolted_on(given: OpeningInput, lock: Item, part: Part, x: float, y: float, thick: float) -> Iterator[Body]:
    """Yield a gate lock's case on the key face, and on the inside the nuts of its bolts."""
    wide, high = part.number_of(CASE_WIDTH_MM), part.number_of(CASE_HEIGHT_MM)
    if wide is None or high is None:
        return
    lock_case, own = Rect(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2), of_centre(lock)
    name = "the gate lock's case"
    yield Body("bolted-on", name, _slab(lock_case, "key", thick), part.number, "key", carried=own, made=(wide, high))
    if part.text_of(MOUNTING) == "bolt-on":
        limits = nut_limits(given.settings)
        for at_x, at_y in corners(lock_case, limits["corner_mm"]):
            nut = Rod((at_x, at_y, -_PROUD), (at_x, at_y, 0.0), limits["socket_mm"])
            name = "a socket on a nut of the gate lock's bolts"
            yield Body("bolted-on", name, nut, part.number, "inside", carried=own, made=(wide, high))


def unit_bodies(given: OpeningInput, fit: Fit) -> Iterator[Body]:
    """Yield the unit's plate on its face, and its screws in the leaf."""
    unit, place, leaf = unit_part(given, fit), fit.placement, lock_leaf(given)
    if unit is None or place is None or leaf is None or leaf.thickness_mm is None or place.face not in ON_FACE:
        return
    rect = housing_rect(place, unit)
    slab, carried = _slab(rect, place.face, leaf.thickness_mm), of_centre(lock_item(given))
    yield Body("plate", "the unit", slab, unit.number, place.face, carried=carried, made=plate_sizes(unit))
    yield from screws_of(given, fit, leaf.thickness_mm)


def tool_bodies(given: OpeningInput, fit: Fit, *, long: bool) -> Iterator[Body]:
    """Yield what bores each hole square to a face, and what drives each screw of the unit, as the leaf stands open.

    long: with the longest bit and blade, so that what is in their way is in the way of any; else what one has at hand.
    """
    leaf = lock_leaf(given)
    if leaf is None or leaf.thickness_mm is None:
        return
    thick, size, own = leaf.thickness_mm, sizes(given.settings), of_centre(lock_item(given))
    kind: Kind = "tool" if long else "usual-tool"
    for hole in fit.holes:
        if hole.face in ON_FACE and hole.leaf == leaf_name(leaf) and is_square(hole):
            name = f"{'a drill on its longest bit' if long else 'an ordinary drill'} at the {hole.name}"
            for rod in at_hole(hole, thick, size, long=long):
                yield Body(kind, name, rod, hole.name, hole.face, carried=own, made=(hole.diameter_mm,))
    place = fit.placement
    for hole in fit.holes if long and place is not None else ():
        if hole.purpose == "cable" and hole.leaf == leaf_name(leaf) and place is not None and hole.face == place.face:
            # The lead is drawn out of its hole and plugged in before the unit closes over it.
            rod, name = fingers(hole, thick, size), "a hand that draws the lead out and plugs it in"
            yield Body(kind, name, rod, hole.name, hole.face, carried=own, made=(hole.diameter_mm,))
    for about, name, y, z in _edge_screws(given, fit, leaf, thick):
        which = "a screwdriver with its longest blade" if long else "an ordinary screwdriver"
        for solid in at_edge(y, z, size, long=long):
            yield Body(kind, f"{which} at {name}", solid, about, "lock-edge", carried=own)
    for screw in screws_of(given, fit, thick):
        if isinstance(screw.solid, Rod):
            which = "a screwdriver with its longest blade" if long else "an ordinary screwdriver"
            name, (x, y, _) = f"{which} at {screw.name}", screw.solid.start
            for solid in at_screw(x, y, screw.face, thick, size, long=long):
                yield Body(kind, name, solid, screw.about, screw.face, carried=own, made=screw.made)


def _edge_screws(given: OpeningInput, fit: Fit, leaf: Leaf, thick: float) -> Iterator[tuple[str, str, float, float]]:
    """Yield what is turned from the lock edge: part, name, height and place across the leaf."""
    lock, part, unit, place = lock_item(given), lock_part(given, fit), unit_part(given, fit), fit.placement
    if lock is not None and part is not None and lock.cylinder_height_mm is not None:
        middle = thick / 2 + (lock.case_offset_mm or 0.0)
        if part.kind == "mortise-cylinder":
            yield part.number, "the cylinder's set screw in the lock edge", lock.cylinder_height_mm, middle
        elif part.kind == "euro-cylinder":
            yield part.number, "the cylinder's fixing screw in the lock edge", lock.cylinder_height_mm, middle
    if unit is not None and place is not None and place.face == "edge" and place.leaf == leaf_name(leaf):
        for y in (place.y_mm, place.y_mm + place.height_mm):
            yield unit.number, "a screw of the unit in the lock edge", y, thick / 2


def drill_angle_deg(hole: Hole) -> float:
    """Return the angle between a hole's axis and the face in which it starts [deg]; 90 square to it.

    Examples
    --------
    >>> drill_angle_deg(Hole("channel", "single", "inside", 70, 1000, 9.5, depth_mm=50, up_deg=-80))
    10.0
    """
    across = tan(radians(hole.edge_deg)) ** 2 + tan(radians(hole.up_deg)) ** 2 if abs(hole.up_deg) < 90 else inf
    return round(90.0 - degrees(atan(across**0.5)), 9)
