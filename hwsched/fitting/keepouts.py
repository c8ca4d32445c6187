"""What a unit keeps off on its face, with the distances that the rules of placement ask for."""

from dataclasses import dataclass, replace
from typing import Final

from hwsched.attributes.of_parts import FORM, LEAF_MATERIAL, PLATE_HEIGHT_MM, PLATE_WIDTH_MM, SCREW_SIZE, SIZE
from hwsched.calc.opening.bore import Vector
from hwsched.calc.opening.placement import KeepOut, Rect
from hwsched.calc.opening.solid import bounds, shrunk
from hwsched.fitting.candidate import offered_of
from hwsched.rules import RULES, limits_of, rule_named
from hwsched.rules.carried import Carried, of_case, of_centre
from hwsched.rules.practice import screw_diameter_mm
from hwsched.rules.reading import leaf_reach_mm, leaf_span_mm, lock_item, lock_leaf
from hwsched.rules.rounding import apart_allowances, in_inches, rounding_mm
from hwsched.rules.solid.bodies import Body, Kind, depth_of
from hwsched.rules.solid.clashes import bodies_of, pairs_of
from hwsched.rules.solid.clearances import less, moved, plate_sizes
from hwsched.rules.solid.footprints import footprints, stop_bands, stop_carried
from hwsched.rules.solid.off_stop import off_stop_mm
from hwsched.rules.solid.screws import screw_places
from hwsched.values import Fit, Leaf, OpeningInput, Part

_FRAME_STOP_CLEAR: Final = rule_named("frame-stop-clear")
_GUARDS: Final = {
    kind: tuple(rule for rule in RULES if kind in rule.guards)
    for kind in dict.fromkeys(kind for rule in RULES for kind in rule.guards)
}
"""Kind of existing item to the rules that keep a unit off it."""

_STOP: Final = "frame stop"
_ROUNDS: Final = 4
_SCREW_BESIDE_HOLE: Final = rule_named("screw-beside-hole")
SCREW_BESIDE_HOLE: Final = _SCREW_BESIDE_HOLE.id
_NUT_ROOM: Final = rule_named("nut-room")
_OF_SCREWS: Final = (rule_named("screw-clear"), rule_named("screw-in-leaf"))


@dataclass(frozen=True, slots=True)
class Surroundings:
    """Keep-outs of a face, in leaf coordinates above the floor."""

    keepouts: tuple[KeepOut, ...]
    needs: tuple[str, ...]
    carried: tuple[Carried, ...]
    """Of each keep-out the facts of the survey by which it stands there."""
    unsure: bool = False
    """Whether any of it may as well not be there, or the leaf reach farther: nobody measured it."""


def surroundings(given: OpeningInput, fit: Fit, leaf: Leaf, face: str, *, surely: bool = False) -> Surroundings:
    """Return what a unit keeps off on a face, by the rules that guard each thing; a rule switched off guards none.

    surely: only what stands there whatever was not measured.
    """
    off = given.settings.rules_off
    found: list[tuple[KeepOut, Carried, bool]] = []
    needs: dict[str, None] = {}
    for item in footprints(given, fit, face):
        for rule in _GUARDS.get(item.kind, ()):
            if rule.id in off:
                continue
            # Where it stands nobody measured: a unit placed as if it were not there could be drilled into it.
            if item.rect is None:
                needs.update(dict.fromkeys(item.needs))
                continue
            limits = limits_of(rule, given.settings)
            found.append(
                (KeepOut(item.name, moved(item.rect, limits), limits["clearance_mm"]), item.carried, item.perhaps)
            )
    # The stop hides a band of the face that closes against it: what stands there hits the frame.
    if _FRAME_STOP_CLEAR.id not in off:
        bands, missing = stop_bands(given, leaf, face, surely=surely)
        needs.update(dict.fromkeys(missing))
        clearance = limits_of(_FRAME_STOP_CLEAR, given.settings)["clearance_mm"]
        found += [(KeepOut(_STOP, band, clearance), stop_carried(given, leaf, band), False) for band in bands]
    if _NUT_ROOM.id not in off:
        nuts = (body for body in bodies_of(given, fit, ("nut",)) if body.face == face)
        found += [(KeepOut(body.name, _seen(body), 0.0), body.carried, bool(body.needs)) for body in nuts]
    if surely:
        found = [each for each in found if not each[2]]
    return Surroundings(
        tuple(each for each, _, _ in found),
        tuple(needs),
        tuple(facts for _, facts, _ in found),
        any(unsure for _, _, unsure in found) or leaf_reach_mm(given, leaf) != leaf_span_mm(given, leaf),
    )


def _seen(body: Body) -> Rect:
    (x0, y0, _), (x1, y1, _) = body.reach
    return Rect(x0, y0, x1, y1)


def has_rounding(given: OpeningInput, leaf: Leaf, unit: Part, around: Surroundings) -> bool:
    """Tell whether any fact by which the unit's place follows was written in the other system than the unit."""
    if not all(size is None or in_inches(size) for size in plate_sizes(unit)):
        return False
    lock = lock_item(given)
    standing = [*around.carried, of_centre(lock), *([of_case(lock, leaf)] if lock is not None else ())]
    facts = [fact for each in standing for fact in (*each.across, *each.up, *each.deep)]
    return any(mm is not None and rounding_mm(mm) > 0 for mm in (leaf.stile_mm, *(value for _, value, _ in facts)))


def rounded(given: OpeningInput, unit: Part, keepout: KeepOut, carried: Carried) -> KeepOut:
    """Return a keep-out with as much less on its sides as the rounding of the survey leaves open."""
    x, y, _ = apart_allowances(of_centre(lock_item(given)), carried, plate_sizes(unit))
    return keepout if not x.mm and not y.mm else replace(keepout, rect=less(keepout.rect, x.mm, y.mm))


def swung(given: OpeningInput, leaf: Leaf, unit: Part, keepout: KeepOut) -> KeepOut:
    """Return a keep-out as far off as a unit needs it: from the frame's stop as far as the leaf's swing asks."""
    if keepout.name != _STOP:
        return keepout
    limits, off = limits_of(_FRAME_STOP_CLEAR, given.settings), keepout.clearance_mm
    # The farther from the stop the shorter the arc, and the more is needed, by a two-hundredth: soon it stands.
    for _ in range(_ROUNDS):
        off = off_stop_mm(leaf, unit, keepout.rect, keepout.rect.x1 + off, limits)
    return replace(keepout, clearance_mm=off)


def screw_keepouts(given: OpeningInput, fit: Fit, unit: Part, *, loose: bool = False) -> list[KeepOut]:
    """Return where none of a unit's screws may stand: the shortest that the catalogue has would meet what is there.

    Parameters
    ----------
    given, fit : OpeningInput, Fit
        The fit gives the new lock, and nothing of the unit yet.
    unit : Part
        A surface unit.
    loose : bool
        Whether bodies count with as much less as the rounding of the survey leaves open.

    Returns
    -------
    list of KeepOut
        Above the floor; each for one screw of the plate and one body.
    """
    wide, high, screw = unit.number_of(PLATE_WIDTH_MM), unit.number_of(PLATE_HEIGHT_MM), _shortest(given, unit)
    if wide is None or high is None or screw is None:
        return []
    deep, radius = screw
    found = []
    for rule in _OF_SCREWS:
        if rule.id in given.settings.rules_off:
            continue
        clearance = next(iter(limits_of(rule, given.settings).values()))
        kinds: list[Kind] = [kind for pair in pairs_of(rule.id) for kind in pair.off]
        for body in bodies_of(given, fit, kinds):
            off = (0.0, 0.0, 0.0)
            if loose:
                x, y, z = apart_allowances(of_centre(lock_item(given)), body.carried, plate_sizes(unit))
                off = (x.mm, y.mm, z.mm)
            rect = _met(body, deep + clearance, off)
            if rect is not None and body.kind != "beyond-leaf":
                found += [
                    KeepOut(
                        f"{body.name}, where the unit's screws would end",
                        rect,
                        clearance,
                        Rect(x - radius, y - radius, x + radius, y + radius),
                    )
                    for x, y in screw_places(unit, wide, high)
                ]
    return found


def screw_gap_mm(given: OpeningInput, unit_fit: Fit) -> float:
    """Return how far the centre of a unit's screw keeps off what is cut round the hole for the lead [mm]."""
    unit = next((given.catalogue.get(part.part) for part in unit_fit.parts if part.role == "unit"), None)
    size = unit.text_of(SCREW_SIZE) if unit is not None else None
    wall = limits_of(_SCREW_BESIDE_HOLE, given.settings)["wall_mm"]
    return wall + (screw_diameter_mm(size) / 2 if size else 0.0)


def _shortest(given: OpeningInput, unit: Part) -> tuple[float, float] | None:
    """Return the least depth of a screw of the unit that the catalogue has, and its radius; None where it has none."""
    leaf, size = lock_leaf(given), unit.text_of(SCREW_SIZE)
    if leaf is None or leaf.thickness_mm is None or not size:
        return None
    depths = [
        deep
        for part in offered_of(given, "fastener", LEAF_MATERIAL, leaf.material)
        if part.text_of(SIZE) == size
        if part.text_of(FORM) != "adhesive" and (deep := depth_of(part, unit, leaf.thickness_mm)) is not None
    ]
    return (min(depths), screw_diameter_mm(size) / 2) if depths else None


def _met(body: Body, deep: float, off: Vector) -> Rect | None:
    """Return where on the inside face a screw of some depth would meet a body; None where it ends before it."""
    solid = body.reach
    if body.needs:
        # What is surely there; where nobody measured, the rule asks.
        if body.surely is None:
            return None
        solid = bounds(body.surely)
    if any(off):
        solid = bounds(shrunk(solid, off))
    if solid.low[2] >= deep or solid.high[2] <= 0:
        return None
    return Rect(solid.low[0], solid.low[1], solid.high[0], solid.high[1])
