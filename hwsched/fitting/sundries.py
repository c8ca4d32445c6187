"""What goes with lock, unit and power: gaskets, sleeves, keys, the lock's holes, jigs and bits, parts added by hand."""

from dataclasses import replace
from typing import Final, get_args

from hwsched.attributes.of_parts import (
    DEPTH_MM,
    DIAMETER_MM,
    FOR_PART,
    FORM,
    HOLE_MM,
    LEAF_MATERIAL,
    REACH_MM,
    THREAD_DIAMETER_MM,
)
from hwsched.calc.calculator import InputError
from hwsched.calc.opening.bored_prep import PrepWork, bored_prep
from hwsched.fitting.bolts import bolt_holes, lock_bolts
from hwsched.fitting.candidate import cheapest, chosen_by, fit_part, offered, offered_of, with_parts
from hwsched.fitting.fastening import pilots
from hwsched.rules import limits_of, rule_named
from hwsched.rules.practice import SLEEVE_SLACK_MM, Wanted, consumables, credentials, pocket_tools
from hwsched.rules.reading import leaf_name, lock_item, lock_leaf, lock_part, unit_part
from hwsched.rules.solid.bores import is_long
from hwsched.rules.solid.clearances import TOUCH_MM
from hwsched.rules.solid.preparation import found_prep, wanted_prep
from hwsched.rules.solid.templates import template_mm
from hwsched.values import Fit, FitPart, Hole, OpeningInput, Part, Role

_BORED_PREPARATION: Final = rule_named("bored-preparation")

_TOOL_SLACK_MM = 0.06
"""How far a bit may be off a hole's size: less than there is between two number drills, or the sheet names one bit and
the box holds another."""
_BORED_JIG = "jig for cross bore and edge bore"


def with_sundries(given: OpeningInput, base: Fit) -> Fit:
    """Add to a chosen chain what mounts, seals, opens and drills it, and what a person added."""
    leaf = lock_leaf(given)
    material = leaf.material if leaf is not None and leaf.material else ""
    own, part = lock_holes(given, base), lock_part(given, base)
    # The jig for a bored lock's lead stands on the holes of its through-bolts: they come first.
    first = own if part is not None and part.kind == "bored-lever-lock" else []
    holes = [*first, *base.holes, *([] if first else own), *bolt_holes(given, base)]
    # Pilots last: the unit is their template, and it is held up once its lead hole is drilled.
    holes += pilots(given, base, 0)
    numbered = tuple(replace(hole, order=i) for i, hole in enumerate(holes, start=1))
    parts = [*lock_bolts(given, base), *_mounting(given, base), *_consumables(given, base, material)]
    parts += _keys(given, base)
    held = replace(with_parts(base, *parts), holes=numbered)
    held = _with_tools(given, held, material)
    return with_parts(held, *_added(given, held))


def _mounting(given: OpeningInput, fit: Fit) -> list[FitPart]:
    unit = unit_part(given, fit)
    # Unknown exposure adds nothing here: the rules on weather ask for it.
    if unit is None or given.opening.exposure != "exterior":
        return []
    gasket = cheapest(
        given,
        [
            part
            for part in offered(given, "mounting", "mounting")
            if part.text_of(FORM) == "gasket" and part.text_of(FOR_PART) == unit.number
        ],
    )
    return [] if gasket is None else [fit_part(given, "mounting", gasket, "the opening is exterior")]


def _consumables(given: OpeningInput, fit: Fit, material: str) -> list[FitPart]:
    applies = {
        "lead hole": any(hole.purpose == "cable" for hole in fit.holes),
        "cam": fit.part("cam") is not None or fit.part("tailpiece") is not None,
        "exterior": given.opening.exposure == "exterior",
        "bonded": material == "glass" and fit.part("unit") is not None,
    }
    found = []
    for wanted in consumables(material):
        if not applies.get(wanted.when, False):
            continue
        if wanted.when == "lead hole":
            found += _sleeves(given, fit, wanted)
            continue
        part = cheapest(given, offered_of(given, "consumable", FORM, wanted.form))
        if part is not None:
            found.append(fit_part(given, "consumable", part, wanted.reason, wanted.quantity))
    return found


def _sleeves(given: OpeningInput, fit: Fit, wanted: Wanted) -> list[FitPart]:
    """Return a sleeve or grommet for every size of the lead's holes: the one that is made for it."""
    offers = offered_of(given, "consumable", FORM, wanted.form)
    found: dict[str, FitPart] = {}
    for size in sorted({hole.diameter_mm for hole in fit.holes if hole.purpose == "cable"}):
        known = [each for each in offers if (made := each.number_of(HOLE_MM)) and abs(made - size) <= SLEEVE_SLACK_MM]
        # One of unknown size only where none is known to suit: a rule then asks for its size.
        part = cheapest(given, known) or cheapest(given, [each for each in offers if each.number_of(HOLE_MM) is None])
        if part is not None:
            found.setdefault(part.number, fit_part(given, "consumable", part, wanted.reason, wanted.quantity))
    return list(found.values())


def _keys(given: OpeningInput, fit: Fit) -> list[FitPart]:
    unit = unit_part(given, fit)
    if unit is None:
        return []
    found = []
    for wanted in credentials():
        key = cheapest(
            given,
            [
                part
                for part in offered(given, "credential", "credential")
                if part.text_of(FORM) == wanted.form and part.text_of(FOR_PART) in (None, "", unit.number)
            ],
        )
        if key is not None:
            found.append(fit_part(given, "credential", key, wanted.reason, wanted.quantity))
    return found


# --- holes of the lock --------------------------------------------------------------------------------------------


def lock_holes(given: OpeningInput, fit: Fit) -> list[Hole]:
    """Return the bores and through-holes that the new lock itself needs, still without numbers."""
    part, lock, leaf = lock_part(given, fit), lock_item(given), lock_leaf(given)
    if part is None or lock is None or leaf is None or lock.backset_mm is None or lock.cylinder_height_mm is None:
        return []
    x, y, name = lock.backset_mm, lock.cylinder_height_mm, leaf_name(leaf)
    if part.kind == "bored-lever-lock":
        return _bored(given, part, name, x, y)
    size = {"cabinet-lock": THREAD_DIAMETER_MM, "fixed-reader": HOLE_MM}.get(part.kind)
    diameter = part.number_of(size) if size is not None else None
    # A lock that is kept has its hole already.
    if diameter is None or leaf.material == "glass" or lock.disposition == "keep":
        return []
    if any(hole.purpose == "function" and (hole.x_mm, hole.y_mm) == (x, y) for hole in fit.holes):
        # Unit straight behind it: one hole takes the reader and its lead.
        return []
    deep = part.number_of(DEPTH_MM) if part.kind == "fixed-reader" else None
    what = "cabinet bolt" if part.kind == "cabinet-lock" else "reader"
    return [
        Hole(
            f"hole for the {what}",
            name,
            "key",
            x,
            y,
            diameter,
            depth_mm=deep if deep is not None and deep < (leaf.thickness_mm or 0.0) else None,
            from_cylinder_mm=(0.0, 0.0),
            tool="hole-saw",
            purpose="function",
        )
    ]


def _bored(given: OpeningInput, part: Part, name: str, x: float, y: float) -> list[Hole]:
    wanted, lock, leaf = wanted_prep(part), lock_item(given), lock_leaf(given)
    if wanted is None or lock is None or leaf is None:
        return []
    limits = limits_of(_BORED_PREPARATION, given.settings)
    # Old through-bolt holes are not surveyed: the two of the new lock are drilled by its template below.
    found, _ = found_prep(given, wanted)
    try:
        work = bored_prep(wanted, found, tolerance_mm=limits["tolerance_mm"]).work
    except InputError:
        work = ()
    holes = [_bore_hole(each, name, x, y, (leaf.thickness_mm or 0.0) / 2) for each in work if each.action != "deepen"]
    bolt = template_mm(part, "bored-bolt-hole")
    holes.append(
        Hole(
            "through-bolt holes, square through",
            name,
            "key",
            x,
            y,
            bolt,
            from_cylinder_mm=(0.0, 0.0),
            tool="twist-drill",
            jig=_BORED_JIG,
            count=2,
            purpose="bolt",
            by_template=True,
        )
    )
    return holes


def _bore_hole(work: PrepWork, name: str, x: float, y: float, middle: float) -> Hole:
    edge = work.item == "edge bore"
    return Hole(
        work.item,
        name,
        "lock-edge" if edge else "key",
        middle if edge else x,
        y,
        work.to_mm,
        # The edge bore goes to the cross bore's centre, which is the backset away.
        depth_mm=x if edge else None,
        from_cylinder_mm=(0.0, 0.0),
        tool="hole-saw",
        jig=_BORED_JIG,
        enlarges_mm=work.from_mm or None,
        purpose="bore",
    )


# --- tools --------------------------------------------------------------------------------------------------------


def _with_tools(given: OpeningInput, fit: Fit, material: str) -> Fit:
    """Add jigs and bits for every hole, and name the jig with the hole."""
    stock = [t for t in given.catalogue.of_kind("tool") if t.text_of(LEAF_MATERIAL) in (None, "", material)]
    jigs = [tool for tool in stock if tool.text_of(FORM) == "drilling-jig"]
    # Jigs for bored locks carry the size of their cross bore; those for leads have none.
    lead_jig = cheapest(given, [jig for jig in jigs if jig.number_of(DIAMETER_MM) is None])
    bored_jig = cheapest(given, [jig for jig in jigs if jig.number_of(DIAMETER_MM) is not None])
    tools: dict[str, FitPart] = {}
    holes = []
    for hole in fit.holes:
        jig = None
        # A hole that a part is the template for needs no jig.
        if hole.purpose in ("cable", "channel") and not hole.by_template:
            jig = lead_jig
        elif hole.jig == _BORED_JIG:
            jig = bored_jig
        if jig is not None:
            tools.setdefault(jig.number, fit_part(given, "tool", jig, f"keeps the bit true: {hole.name}"))
            hole = replace(hole, jig=jig.description or jig.number)
        bits = _bits(given, stock, hole)
        if hole.purpose == "pocket":
            ways = pocket_tools(material)
            hole = replace(hole, tool=(bits[0].text_of(FORM) or "") if bits else ways[0] if ways else "")
        for tool in bits:
            tools.setdefault(tool.number, fit_part(given, "tool", tool, f"for the {hole.name}"))
        holes.append(hole)
    return replace(with_parts(fit, *tools.values()), holes=tuple(holes))


def _bits(given: OpeningInput, stock: list[Part], hole: Hole) -> list[Part]:
    if hole.purpose == "pocket":
        leaf = lock_leaf(given)
        forms = pocket_tools(leaf.material) if leaf is not None and leaf.material is not None else ()
        # The usual way of the material first; a mortiser's chisel only breaks out aluminium.
        for form in forms:
            cutter = cheapest(given, [tool for tool in stock if tool.text_of(FORM) == form])
            if cutter is not None:
                return [cutter]
        return []
    found = []
    for size, wanted in ((hole.diameter_mm, hole.tool), (hole.pilot_mm, "twist-drill")):
        if size is None:
            continue
        near = [
            tool
            for tool in stock
            if (has := tool.number_of(DIAMETER_MM)) is not None
            # Equal within a slack: a size from a table of sixty-fourths and one from a table of millimetres are never
            # equal as floats.
            and abs(has - size) <= _TOOL_SLACK_MM
            and tool.text_of(FORM) not in ("drilling-jig", "mortiser", "mill", "saw-and-files", "driver")
            # No other saw goes through masonry.
            and (wanted != "core-bit" or tool.text_of(FORM) == wanted)
            and _reaches(tool, hole)
        ]
        near.sort(
            key=lambda tool: (
                tool.text_of(FORM) != wanted,
                not tool.text_of(LEAF_MATERIAL),
                abs((tool.number_of(DIAMETER_MM) or 0.0) - size),
                tool.number,
            )
        )
        # Form, then material, then nearest size: a bit of the wrong kind in the right size spoils the leaf.
        found += near[:1]
    return found


def _reaches(tool: Part, hole: Hole) -> bool:
    """Tell whether a bit goes through a way across a leaf: a long one that is not known to be too short."""
    if not is_long(hole):
        return True
    reach = tool.number_of(REACH_MM)
    return tool.text_of(FORM) == hole.tool and (reach is None or reach >= (hole.depth_mm or 0.0) - TOUCH_MM)


def _added(given: OpeningInput, fit: Fit) -> list[FitPart]:
    """Return what a person chose for a role that the fit has not filled with it."""
    held = {(part.role, part.part) for part in fit.parts}
    found = []
    for choice in given.chosen:
        part = given.catalogue.get(choice.part)
        role: Role | None = next((known for known in get_args(Role) if known == choice.role), None)
        if part is None or role is None or (choice.role, choice.part) in held:
            continue
        found.append(fit_part(given, role, part, chosen_by(given, role), choice.quantity))
    return found
