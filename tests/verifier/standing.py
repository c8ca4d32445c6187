"""Puts a finished opening together: what was there and how large by the cells, what goes where by the answer.

Sizes that neither cells nor answer give are taken at their least, so that what is found in the way surely is:

| what | taken as | source |
|---|---|---|
| spindle of a lever or knob | 3/4 in through the leaf | function holes, trade usage, from memory |
| spindle of a thumb turn | 5/8 in, from the inside to the leaf's middle | the same |
| deadbolt | 1-1/2 in cross bore, 1 in edge bore | old bored preparation, encyclopedic page; 160 preparation |
| hole of a cylinder | 1-1/4 in | code-article quiz |
| plate under a screw's head, where its cell is empty | 3 mm | from memory |
| screw | body 0.060 + 0.013 N in | ASME B18.6.1, secondary copies |
"""

from dataclasses import dataclass, field
from math import hypot
from typing import Any, Final

from tests.verifier.bodies import TOLERANCE_MM, Body, Box, Point, Rod
from tests.verifier.cells import Cells, Opening
from tests.verifier.held import fixings, in_leaf

INCH: Final = 25.4
PLATE_MM: Final = 3.0
CORNER_MM: Final = 6.0
"""Screw from both edges of the plate at a corner, where the catalogue gives no places; common practice, unverified."""
CYLINDER_HOLE_MM: Final = 1.25 * INCH
SKINNED: Final = ("Hollow metal", "Aluminium", "Steel gate")
SOLID: Final = ("Wood, solid core", "Wood, mineral core", "Composite")
Rect = tuple[float, float, float, float]


@dataclass(frozen=True)
class Bore:
    """One hole, pilot, channel or pocket of the answer in its place."""

    name: str
    purpose: str
    face: str
    body: Body
    from_depth: float
    diameter: float
    slot: float = 0.0
    """How far along the face, from its centre, the slot of a tilted bit reaches; up positive."""


@dataclass(frozen=True)
class CircuitFeed:
    """What a laid circuit brings to an opening, which then has no supply of its own."""

    source: Cells
    wire: Cells
    run_m: float
    end_v: float | None
    """Down to which its standby battery feeds it; None without one."""
    drawn_a: float
    """What everything draws that hangs on the same supply."""


@dataclass
class Standing:
    """A finished opening."""

    opening: Opening
    parts: dict[str, Cells]
    roles: dict[str, list[tuple[str, Cells, float]]]
    place: Cells
    bores: list[Bore]
    pilots: list[Point]
    lead: list[Point]
    stack: Cells
    power: str
    templates: list[str] = field(default_factory=list)
    laid: CircuitFeed | None = None

    # --- the leaf ---------------------------------------------------------------------------------------------------

    @property
    def mark(self) -> str:
        """The opening's mark."""
        return self.opening.mark

    @property
    def leaf(self) -> Cells:
        """Its leaf; empty at a wall."""
        return self.opening.leaf()

    @property
    def lock(self) -> Cells:
        """The lock that was converted."""
        return self.opening.lock

    @property
    def thick(self) -> float:
        """Thickness of the leaf; 0 at a wall."""
        return float(self.leaf.get("thick") or 0.0)

    @property
    def low(self) -> float:
        """Lower end of the leaf above the floor."""
        return float(self.leaf.get("undercut") or 0.0)

    @property
    def top(self) -> float:
        """Upper end of the leaf above the floor."""
        return self.low + float(self.leaf.get("height") or 0.0)

    @property
    def stile(self) -> float | None:
        """Width of the lock stile; None for a leaf without one."""
        return self.leaf.get("stile")

    @property
    def at(self) -> tuple[float, float]:
        """Centre of the cylinder or cross bore."""
        return float(self.lock.get("backset") or 0.0), float(self.lock["y"])

    @property
    def middle(self) -> float:
        """Plane of the case's middle from the inside face; a case off centre stands toward the key side."""
        return self.thick / 2 + float(self.lock.get("case_offset") or 0.0)

    def stops(self, face: str) -> list[Rect]:
        """Bands of a face that the frame's stop hides: on the key face where the leaf swings to the inside."""
        facts, wide = self.opening.facts, self.leaf.get("width")
        stop = facts.get("stop")
        if not stop or wide is None or facts["form"] == "Cabinet":
            return []
        against = "key" if facts.get("hand") in ("LH", "RH") else "inside"
        if face != against:
            return []
        bands = [(wide - stop, 0.0, wide, self.top), (0.0, self.top - stop, wide, self.top)]
        if facts["form"] != "Pair":
            bands.append((0.0, 0.0, stop, self.top))
        return bands

    # --- parts ------------------------------------------------------------------------------------------------------

    def part(self, *names: str) -> Cells | None:
        """The first part in one of some roles."""
        for name in names:
            if self.roles.get(name):
                return self.roles[name][0][1]
        return None

    @property
    def locking(self) -> Cells:
        """The new cylinder, lock or reader."""
        return self.part("cylinder", "lock", "reader") or {"kind": ""}

    @property
    def unit(self) -> Cells | None:
        """The control unit; of a lock that carries its own, the lock."""
        own = self.locking if self.locking.get("own_unit") == "yes" else None
        return self.part("unit") or own

    @property
    def source(self) -> Cells | None:
        """What feeds the unit: the opening's own supply, or that of the circuit it hangs on."""
        return self.part("supply") or (self.laid.source if self.laid is not None else None)

    @property
    def wire(self) -> Cells | None:
        """The wire from the supply to the opening."""
        return self.laid.wire if self.laid is not None else self.part("wire")

    def fasteners(self, *forms: str) -> list[tuple[str, Cells, float]]:
        """Fasteners of some forms; all without."""
        return [each for each in self.roles.get("fastener", []) if not forms or each[1]["form"] in forms]

    def own_plates(self, face: str) -> Rect | None:
        """What the lock's own plates cover on a face where they stand proud; None where nobody measured them."""
        lock, names = self.lock, ("Inside" if face == "inside" else "Key side", "Both faces")
        if any(lock.get(name) is None for name in ("ix", "iy", "iw", "ih")) or lock.get("face", names[1]) not in names:
            return None
        return footprint(lock) if lock.get("trim_inside" if face == "inside" else "trim_key") else None

    @property
    def plate(self) -> Rect | None:
        """What the unit's plate covers on its face; None for a unit in the edge."""
        if not self.place or self.place["face"] not in ("inside", "key") or self.unit is None:
            return None
        x, y = self.place["x_mm"], self.place["y_mm"]
        return x, y, x + self.unit["width"], y + self.unit["height"]

    # --- what was there ---------------------------------------------------------------------------------------------

    def items(self, *faces: str) -> list[tuple[Cells, Rect]]:
        """What stays on some faces of the lock's leaf, with its footprint."""
        found = []
        for item in self.opening.items:
            if item.get("fate") not in (None, "Keep") or item.get("face") not in faces:
                continue
            if item.get("on_leaf") != self.leaf.get("leaf"):
                continue
            if any(item.get(name) is None for name in ("ix", "iy", "iw", "ih")):
                continue
            found.append((item, footprint(item)))
        return found

    def lock_case(self) -> Box | None:
        """The lock's case in the leaf, or a rim lock's on its inside face."""
        lock = self.lock
        if any(lock.get(name) is None for name in ("case_height", "case_depth", "case_width", "case_above")):
            return None
        top = lock["y"] + lock["case_above"]
        half = lock["case_width"] / 2
        z0, z1 = self.middle - half, self.middle + half
        if lock["lock"].startswith("Rim"):
            z0, z1 = -lock["case_width"], 0.0
        return Box((0.0, top - lock["case_height"], z0), (lock["case_depth"], top, z1), "lock's case")

    def hollows(self) -> list[Body]:
        """Where the lead may run in a leaf of solid material besides what is drilled for it."""
        x, y = self.at
        found: list[Body] = []
        lock_case = self.lock_case()
        if lock_case is not None and not self.lock["lock"].startswith("Rim"):
            found.append(lock_case)
        bore = CYLINDER_HOLE_MM
        if self.lock["lock"].startswith("Bored"):
            bore = max(self.lock.get("cross_bore") or 0.0, self.locking.get("cross_bore") or 0.0)
        # Only a threaded cylinder ends in its case; the tail of a rim cylinder goes on through the same hole.
        depth = min(self._rear(), self.thick) if self.lock["lock"].startswith("Mortise") else 0.0
        found.append(Rod((x, y, depth), (x, y, self.thick), bore / 2))
        return found

    def _rear(self) -> float:
        """Plane of a threaded cylinder's back from the inside face."""
        part = self.locking
        return self.thick - (part["length"] - self.under_head()) if part["kind"] == "mortise-cylinder" else 0.0

    def under_head(self) -> float:
        """What stands between a threaded cylinder's head and the leaf: trim, collar, rings."""
        stacked = sum(
            each["height"] * count for role in ("collar", "ring") for _, each, count in self.roles.get(role, [])
        )
        return float(self.lock.get("trim_key") or 0.0) + stacked

    def bodies(self) -> list[tuple[str, Body]]:
        """What stays in the leaf's thickness besides the lock's own case: kind and body."""
        found: list[tuple[str, Body]] = []
        t = self.thick
        for item, rect in self.items("Inside", "Key side", "Both faces", "Lock edge"):
            kind, x, y = item["kind"], item["ix"], item["iy"]
            if kind == "Lever or knob":
                found.append((kind, Rod((x, y, 0.0), (x, y, t), 0.375 * INCH)))
            elif kind == "Thumb turn":
                found.append((kind, Rod((x, y, 0.0), (x, y, t / 2), 0.3125 * INCH)))
            elif kind == "Deadbolt":
                found.append((kind, Rod((x, y, 0.0), (x, y, t), 0.75 * INCH)))
                found.append((kind, Rod((0.0, y, t / 2), (x, y, t / 2), 0.5 * INCH)))
            elif kind in ("Lite or vision panel", "Louvre"):
                found.append((kind, Box((rect[0], rect[1], 0.0), (rect[2], rect[3], t))))
            found += [(f"Fixing of the {kind.lower()}", body) for body in self.held(item, rect)]
        turned = any(item["kind"] == "Thumb turn" for item in self.opening.items)
        if self.lock.get("thumb_turn") == "yes" and not turned and self.lock["lock"].startswith("Mortise"):
            x, y = self.at
            found.append(("Thumb turn", Rod((x, y, 0.0), (x, y, t / 2), 0.3125 * INCH)))
        return found

    def held(self, item: Cells, rect: Rect) -> list[Body]:
        """What holds an item in the leaf; of an exit device its rods in the leaf too."""
        rim = self.lock["lock"].startswith("Rim")
        found = fixings(item, rect, self.thick, self.lock.get("case_depth") if rim else None)
        return [*found, *in_leaf(item, self.low, self.top, self.thick)]

    def own_bores(self) -> list[tuple[str, Body]]:
        """What the lock itself takes from the leaf: its case, or its bores."""
        x, y = self.at
        lock_case = self.lock_case()
        if lock_case is not None and not self.lock["lock"].startswith("Rim"):
            return [("lock's case", lock_case)]
        if self.lock["lock"].startswith("Bored"):
            cross = max(self.lock["cross_bore"] or 0.0, self.locking.get("cross_bore") or 0.0)
            edge = max(self.lock["edge_bore"] or 0.0, self.locking.get("edge_bore") or 0.0)
            t = self.thick
            return [
                ("cross bore", Rod((x, y, 0.0), (x, y, t), cross / 2)),
                ("edge bore", Rod((0.0, y, t / 2), (x, y, t / 2), edge / 2)),
            ]
        if self.lock["lock"].startswith(("Rim", "Cabinet")):
            hole = self.locking.get("thread") or CYLINDER_HOLE_MM
            return [("cylinder's hole", Rod((x, y, 0.0), (x, y, self.thick), hole / 2))]
        return []


def footprint(item: Cells) -> Rect:
    """Rectangle of an item on its face."""
    x, y, w, h = item["ix"], item["iy"], item["iw"] / 2, item["ih"] / 2
    return x - w, y - h, x + w, y + h


def mouth(bore: Rod) -> Rect | None:
    """Rectangle round what a bore cuts out of the inside face; None where it runs along the face."""
    d, r = bore.direction, bore.radius
    if abs(d[2]) < 1e-9:
        return None
    sx, sy = r * hypot(1.0, d[0] / d[2]), r * hypot(1.0, d[1] / d[2])
    x, y = bore.start[0], bore.start[1]
    return x - sx, y - sy, x + sx, y + sy


def within(rect: Rect, other: Rect) -> float:
    """By how much one rectangle reaches out of another; 0 where it does not."""
    out = max(other[0] - rect[0], other[1] - rect[1], rect[2] - other[2], rect[3] - other[3], 0.0)
    return out if out > TOLERANCE_MM else 0.0


def screw_spots(unit: Cells) -> list[tuple[float, float]]:
    """Where screws stand from the lower left corner of a plate: as its maker says, else four inside the corners."""
    if unit.get("screw_places"):
        pairs = [pair.split(",") for pair in unit["screw_places"].split(";")]
        return [(float(across), float(up)) for across, up in pairs]
    return [(x, y) for x in (CORNER_MM, unit["width"] - CORNER_MM) for y in (CORNER_MM, unit["height"] - CORNER_MM)]


def stand(
    opening: Opening, parts: dict[str, Cells], point: dict[str, Any], laid: CircuitFeed | None = None
) -> Standing:
    """Put one lock point of an answer together."""
    roles: dict[str, list[tuple[str, Cells, float]]] = {}
    for each in point["parts"]:
        roles.setdefault(each["role"], []).append((each["part"], parts[each["part"]], each["quantity"]))
    thick = float(opening.leaf().get("thick") or 0.0)
    bores: list[Bore] = []
    pilots: list[Point] = []
    templates: list[str] = []
    for entry in [*point["holes"], *point["screws"]]:
        hole, places = entry["hole"], entry["places_mm"]
        if hole["purpose"] == "fixing":
            pilots += [_point(p) for p in places or ()]
            continue
        if places is None:
            templates.append(hole["name"])
            continue
        d = _point(entry["direction"])
        for place in places:
            s = _point(place)
            if hole["purpose"] == "pocket":
                half = hole["height_mm"] / 2, hole["width_mm"] / 2
                box = Box((0.0, s[1] - half[0], s[2] - half[1]), (hole["depth_mm"], s[1] + half[0], s[2] + half[1]))
                bores.append(Bore(hole["name"], "pocket", hole["face"], box, 0.0, 0.0))
                continue
            deep = hole["depth_mm"]
            if deep is None:
                deep = thick / abs(d[2]) if abs(d[2]) > 1e-9 else 0.0
            end = (s[0] + d[0] * deep, s[1] + d[1] * deep, s[2] + d[2] * deep)
            bores.append(
                Bore(
                    hole["name"],
                    hole["purpose"],
                    hole["face"],
                    Rod(s, end, hole["diameter_mm"] / 2),
                    hole["from_depth_mm"],
                    hole["diameter_mm"],
                    hole.get("slot_mm") or 0.0,
                )
            )
    lead = [_point(p) for p in (point["lead"] or {"points_mm": []})["points_mm"]]
    place = point["placement"] or {}
    stack = point["stack"] or {}
    return Standing(opening, parts, roles, place, bores, pilots, lead, stack, point["power"], templates, laid)


def _point(values: Any) -> Point:
    x, y, z = values
    return float(x), float(y), float(z)
