"""What goes with lock, unit and power: fasteners with their pilots, gaskets, sleeves, credentials, jigs and bits."""

from dataclasses import replace
from typing import Final

from hwsched.cases import Case, Fit, FittedPart, Hole, Part
from hwsched.fitting.candidate import fitted, offered, with_parts
from hwsched.fitting.practice import distance_mm, screw_pilot_mm
from hwsched.rules.lock_and_cylinder.bored_preparation import wanted_prep
from hwsched.rules.reading import lock_item, lock_leaf, lock_part, unit_part

_SLEEVES: Final = {"wood": "sleeve", "mineral-core": "sleeve", "composite": "sleeve", "aluminium": "sleeve",
                   "hollow-metal": "grommet", "steel-gate": "grommet"}  # fmt: skip
_TOOL_SLACK_MM: Final = 0.05


def with_sundries(case: Case, base: Fit) -> Fit:
    """Add to a chosen chain what mounts, seals, opens and drills it."""
    unit, leaf = unit_part(case, base), lock_leaf(case)
    material = leaf.material if leaf is not None and leaf.material else ""
    parts: list[FittedPart] = []
    holes = list(base.holes)
    if unit is not None:
        parts += _mounting(case, unit)
        screw = _screws(case, unit, material)
        if screw is not None:
            parts.append(screw)
            holes += _pilots(base, unit, material, len(holes))
        elif material == "glass":
            parts += _bond(case)
    holes += _bored(case, base, len(holes))
    parts += _consumables(case, base, material)
    keys = offered(case, "credential", "credential")
    key = next((each for each in keys if each.text_of("form") == "electronic-key"), None)
    if key is not None:
        parts.append(fitted(case, "credential", key, "one key to commission and test the opening"))
    held = replace(with_parts(base, *parts), holes=tuple(holes))
    return with_parts(held, *_tools(case, held, material))


def _mounting(case: Case, unit: Part) -> list[FittedPart]:
    if case.opening.exposure != "exterior":
        return []
    gaskets = (
        part
        for part in offered(case, "mounting", "mounting")
        if part.text_of("form") == "gasket" and part.text_of("for_part") == unit.number
    )
    return [fitted(case, "mounting", part, "the opening is exterior") for part in list(gaskets)[:1]]


def _screws(case: Case, unit: Part, material: str) -> FittedPart | None:
    size, count = unit.text_of("screw_size"), unit.number_of("screws")
    if not size or not count or not material:
        return None
    for part in offered(case, "fastener", "fastener"):
        if part.text_of("size") == size and part.text_of("leaf_material") == material:
            return fitted(
                case, "fastener", part, f"the unit takes {count:g} screws {size}; the leaf is {material}", count
            )
    return None


def _bond(case: Case) -> list[FittedPart]:
    pads = (p for p in offered(case, "fastener", "fastener") if p.text_of("form") == "adhesive")
    return [fitted(case, "fastener", pad, "glass is not drilled: the unit is bonded") for pad in list(pads)[:1]]


def _pilots(fit: Fit, unit: Part, material: str, order: int) -> list[Hole]:
    place, size, count = fit.placement, unit.text_of("screw_size"), unit.number_of("screws")
    if place is None or not size or not count:
        return []
    pilot = screw_pilot_mm(material, size)
    if pilot is None:
        return []
    face = "lock-edge" if place.face == "edge" else place.face
    # Drilled through the plate itself, so the plate gives their place.
    return [
        Hole(
            "pilots for the unit's screws, through its plate", place.leaf, face, round(place.x_mm + place.width_mm / 2, 3)
            if place.face != "edge" else 0.0, round(place.y_mm + place.height_mm / 2, 3), pilot, depth_mm=19.05,
            tool="twist-drill", order=order + 1, count=int(count),
        )
    ]  # fmt: skip


def _bored(case: Case, fit: Fit, order: int) -> list[Hole]:
    part, lock, leaf = lock_part(case, fit), lock_item(case), lock_leaf(case)
    if part is None or part.kind != "bored-lever-lock" or lock is None or leaf is None:
        return []
    wanted = wanted_prep(part)
    x, y = lock.backset_mm, lock.cylinder_height_mm
    if wanted is None or x is None or y is None:
        return []
    found: list[Hole] = []
    name = leaf.position or "single"
    if lock.cross_bore_mm is not None and lock.cross_bore_mm < wanted.cross_bore_mm - 0.5:
        found.append(
            Hole("cross bore", name, "key", x, y, wanted.cross_bore_mm, from_cylinder_mm=(0.0, 0.0), tool="hole-saw",
                 jig="jig for cross and edge bore", order=order + 1, enlarges_mm=lock.cross_bore_mm or None)
        )  # fmt: skip
    if lock.edge_bore_mm is not None and lock.edge_bore_mm < wanted.edge_bore_mm - 0.5:
        found.append(
            Hole("edge bore", name, "lock-edge", 0.0, y, wanted.edge_bore_mm, depth_mm=x, tool="hole-saw",
                 jig="jig for cross and edge bore", order=order + 2, enlarges_mm=lock.edge_bore_mm or None)
        )  # fmt: skip
    bolt = part.number_of("bolt_hole_mm") or distance_mm("bolt-hole")
    found.append(
        Hole("bolt holes, square through", name, "key", x, y, bolt, from_cylinder_mm=(0.0, 0.0), tool="twist-drill",
             jig="jig for cross and edge bore", order=order + 3, count=2)
    )  # fmt: skip
    return found


def _consumables(case: Case, fit: Fit, material: str) -> list[FittedPart]:
    stock = offered(case, "consumable", "consumable")
    wanted: list[tuple[str, str]] = []
    if fit.holes and fit.cable is not None and (form := _SLEEVES.get(material)):
        wanted.append((form, "the lead passes an edge that would chafe it"))
    if fit.part("cam") is not None or fit.part("tailpiece") is not None:
        wanted.append(("thread-lock", "screws of cam or tailpiece"))
    if case.opening.exposure == "exterior":
        wanted.append(("sealant", "the opening is exterior"))
    found = []
    for form, reason in wanted:
        part = next((each for each in stock if each.text_of("form") == form), None)
        if part is not None:
            share = 0.05 if form in ("thread-lock", "sealant") else 1.0
            found.append(fitted(case, "consumable", part, reason, share))
    return found


def _tools(case: Case, fit: Fit, material: str) -> list[FittedPart]:
    stock = case.catalogue.of_kind("tool")
    found: dict[str, FittedPart] = {}
    for hole in fit.holes:
        for diameter in (hole.diameter_mm, hole.pilot_mm):
            if diameter is None:
                continue
            matching = [
                tool
                for tool in stock
                if (size := tool.number_of("diameter_mm")) is not None
                and abs(size - diameter) <= _TOOL_SLACK_MM
                and tool.text_of("form") != "drilling-jig"
                and tool.text_of("leaf_material") in (None, material)
            ]
            matching.sort(key=lambda tool: (tool.text_of("leaf_material") is None, tool.number))
            if matching:
                found.setdefault(matching[0].number, fitted(case, "tool", matching[0], f"for the {hole.name}"))
        if hole.tool == "mortiser":
            for tool in stock:
                if tool.text_of("form") == "mortiser":
                    found.setdefault(tool.number, fitted(case, "tool", tool, f"for the {hole.name}"))
    if fit.holes:
        jigs = [tool for tool in stock if tool.text_of("form") == "drilling-jig"]
        bored = any(hole.jig for hole in fit.holes)
        for jig in jigs:
            if (jig.number_of("diameter_mm") is not None) == bored:
                found.setdefault(jig.number, fitted(case, "tool", jig, "keeps the bit square"))
    return list(found.values())
