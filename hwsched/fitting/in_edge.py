"""An in-edge unit: its pocket beside the lock's own, the way of the lead through the bridge, the service length."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from hwsched.attributes.of_parts import CONNECTOR_Y_MM, POCKET_DEPTH_MM, POCKET_LENGTH_MM, POCKET_WIDTH_MM, SERVICE_MM
from hwsched.calc.calculator import InputError
from hwsched.calc.opening.pocket import EdgeItem, PocketInput, PocketSpot, pocket
from hwsched.fitting.lead import with_cable
from hwsched.fitting.ways import Point
from hwsched.rules import limits_of, rule_named
from hwsched.rules.reading import leaf_name, lock_part, stile_mm
from hwsched.rules.solid.cavity import Cavity
from hwsched.rules.solid.edge import bridge_is_solid, edge_items, fronts, lock_pocket_span
from hwsched.rules.solid.templates import template_mm
from hwsched.rules.wording import in_units, length
from hwsched.values import Fit, Hole, Leaf, OpeningInput, Part, Placement

_POCKET_LENGTH: Final = rule_named("pocket-length")


def pockets(
    given: OpeningInput, bare: Fit, unit: Part, leaf: Leaf, at: Cavity, span: tuple[float, float]
) -> Iterator[tuple[Fit, str]]:
    """Yield partial fits with the unit in the edge, shortest lead first, each with what was tried."""
    part, own, thick = lock_part(given, bare), lock_pocket_span(given), leaf.thickness_mm
    long, deep, wide = (unit.number_of(name) for name in (POCKET_LENGTH_MM, POCKET_DEPTH_MM, POCKET_WIDTH_MM))
    service, connector = unit.number_of(SERVICE_MM), unit.number_of(CONNECTOR_Y_MM)
    has_stile, stile = stile_mm(leaf)
    # Behind a stile lies glass or a panel; a leaf without one is taken as one body to its hinge edge.
    depth = stile if has_stile else leaf.width_mm
    if part is None or own is None or thick is None or long is None or deep is None or wide is None or depth is None:
        return
    if service is None or connector is None:
        return
    limits = limits_of(_POCKET_LENGTH, given.settings)
    # Survey heights count from the floor, the calculation from the leaf's lower end, which stands above it.
    low = span[0]
    # The lead leaves the lock in its own plane and comes to the leaf's middle, where the pocket lies.
    before = abs(at.lead_z - thick / 2)
    try:
        result = pocket(
            PocketInput(
                leaf_mm=thick,
                leaf_height_mm=span[1] - low,
                stile_mm=depth,
                # A lock surveyed as reaching below its leaf is a slip that a rule speaks of; here it must not stop
                # the search.
                lock_y0=max(own[0] - low, 0.0),
                lock_y1=own[1] - low,
                length_mm=long,
                depth_mm=deep,
                width_mm=wide,
                bridge_mm=limits["bridge_mm"],
                hand_mm=service,
                lead_from_y=min(max(at.y - low, own[0] - low), own[1] - low),
                lead_before_mm=before,
                connector_mm=connector,
                edge_margin_mm=limits["edge_margin_mm"],
                items=tuple(
                    EdgeItem(i.name, i.y0 - low, i.y1 - low, i.clearance_mm)
                    for i in (*edge_items(given, limits["bridge_mm"])[0], *fronts(given))
                ),
            )
        )
    except InputError as error:
        # Refused with what is wrong, and not as if nobody had looked.
        yield bare, f"{in_units(given, error)}; "
        return
    for spot in result.spots:
        yield _built(given, bare, unit, leaf, at, spot, (long, deep, wide), low), f"In the edge {spot.side} the lock: "


def _built(
    given: OpeningInput,
    bare: Fit,
    unit: Part,
    leaf: Leaf,
    at: Cavity,
    spot: PocketSpot,
    size: tuple[float, float, float],
    low: float,
) -> Fit:
    long, deep, wide = size
    service, connector = unit.number_of(SERVICE_MM) or 0.0, unit.number_of(CONNECTOR_Y_MM) or 0.0
    y0, y1 = spot.y0 + low, spot.y1 + low
    above = spot.side == "above"
    enter = y0 if above else y1
    middle = (leaf.thickness_mm or 0.0) / 2
    # Drawn to the middle of the pocket: how deep inside the unit its connector lies is not known.
    inset = deep / 2
    where = Placement(
        leaf=leaf_name(leaf),
        face="edge",
        pattern="in-edge",
        x_mm=middle - wide / 2,
        y_mm=y0,
        width_mm=wide,
        height_mm=long,
        hole_x_mm=middle,
        hole_y_mm=enter,
        clearances=(("lock's pocket", round(spot.bridge_mm, 3)),),
    )
    cut = Hole(
        "pocket for the unit",
        leaf_name(leaf),
        "lock-edge",
        middle,
        (y0 + y1) / 2,
        0.0,
        depth_mm=deep,
        from_cylinder_mm=(round(-at.x, 3), round((y0 + y1) / 2 - at.y, 3)),
        tool="mortiser",
        order=1,
        purpose="pocket",
        width_mm=wide,
        height_mm=long,
    )
    bridge = Hole(
        "hole through the bridge for the lead, from pocket to pocket",
        leaf_name(leaf),
        "lock-edge",
        middle,
        enter - spot.bridge_mm / 2 if above else enter + spot.bridge_mm / 2,
        template_mm(unit, "bridge-hole"),
        depth_mm=round(spot.bridge_mm, 3),
        tool="twist-drill",
        order=2,
        purpose="channel",
        by_template=True,
    )
    end: Point = (inset, enter + (connector if above else -connector), middle)
    points: list[Point] = [(at.x, at.y, at.lead_z)]
    for point in ((at.x, at.y, middle), (inset, enter, middle), end):
        if max(abs(a - b) for a, b in zip(point, points[-1], strict=True)) > 1e-6:
            points.append(point)
    # The drawing shows the unit in place; pocket depth and the hand's allowance are lead that is stowed, and told
    # apart.
    run = spot.lead_needed_mm - deep - service
    segments = (
        (f"from the cylinder to the unit's connector, {length(given, spot.bridge_mm)} of bridge", round(run, 3)),
        ("whole depth of the pocket, since it is connected before it slides in", deep),
        ("a hand's allowance", service),
    )
    base = replace(bare, placement=where, holes=(cut, bridge) if bridge_is_solid(leaf) else (cut,))
    return with_cable(given, base, unit, points, spot.lead_needed_mm, deep + service, segments)
