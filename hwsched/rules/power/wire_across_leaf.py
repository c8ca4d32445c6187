"""Rule: the supply's wire has a way across the leaf, from its transfer at the hinges to the unit at the lock edge."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import FIRE_LISTED, GLASS_MOUNT, INSIDE_MM, OUTSIDE_DIAMETER_MM
from hwsched.rules.network import across_leaf
from hwsched.rules.network.leaf_runs import cables, leaf_wire
from hwsched.rules.practice import distance_mm
from hwsched.rules.reading import in_role, lock_leaf, rated, unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, Hole, Leaf, OpeningInput

_PULLS = ("honeycomb", "empty")
"""Cores through which a wire is pulled on site."""
_AGAINST_PULL = {
    "foam": "a foam core is not to be bored or pulled through",
    "steel-stiffened": "in a steel-stiffened leaf a raceway is made at the factory only",
    "mineral": "a mineral core is not to be bored or pulled through",
    "solid": "a solid core has no room to pull a wire",
}


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit, leaf = unit_part(given, fit), lock_leaf(given)
    if not across_leaf.needed(given, fit) or unit is None:
        return
    if leaf is None or leaf.width_mm is None:
        yield unknown(("leaf.width_mm",), unit.number)
        return
    way = across_leaf.standing(given, fit)
    if way is None:
        yield Verdict(
            "No way leads the supply's wire across the leaf, from the hinge edge to the unit at the lock edge.",
            about=unit.number,
        )
        return
    hole = next((each for each in fit.holes if each.purpose == across_leaf.THROUGH), None)
    if hole is not None:
        yield from _inside(given, fit, leaf, hole, way.kind == "bored")
    if in_role(given, fit, across_leaf.THROUGH) is not None:
        yield from _over(given, fit, leaf)


def _inside(given: OpeningInput, fit: Fit, leaf: Leaf, hole: Hole, bored: bool) -> Iterable[Verdict]:
    """Judge a way that is made inside the leaf."""
    carries = rated(given)
    if leaf.material == "glass":
        yield Verdict("A glass leaf is never drilled: no wire comes across inside it.", about=hole.name)
        return
    if carries is None:
        yield unknown(("opening.rating",), hole.name)
    elif carries:
        yield Verdict(
            f"The {hole.name} would run inside a leaf that is rated {given.opening.rating} min: stop, on site a "
            "raceway is made only where the listing laboratory and the door maker's listing permit it.",
            "Bring the wire over the face in a listed raceway, have the leaf prepared under label service, or feed the "
            "unit from batteries.",
            about=hole.name,
        )
    yield from (_bored if bored else _pulled)(given, leaf, hole)
    met = across_leaf.in_path(given, fit, leaf)
    if bored and met:
        needs = across_leaf.unplaced(met)
        if needs:
            yield unknown(needs, hole.name)
        else:
            yield Verdict(f"The {hole.name} would meet the {met[0].kind} of the leaf.", about=hole.name)
    wire = leaf_wire(given, fit)
    thick = wire.number_of(OUTSIDE_DIAMETER_MM) if wire is not None else None
    if wire is not None and thick is None:
        yield unknown((f"part {wire.number}.outside_diameter_mm",), wire.number)
    elif wire is not None and thick is not None:
        count = cables(given, fit, wire)
        holds = across_leaf.holds_mm(hole.diameter_mm, count)
        if thick > holds + 1e-6:
            many = f"{count} cables" if count > 1 else "a cable"
            yield Verdict(
                f"The {hole.name} of {length(given, hole.diameter_mm)} holds {many} up to {length(given, holds)}; "
                f"this one is {length(given, thick)} thick.",
                values={"short_mm": thick - holds},
                about=wire.number,
            )


def _bored(given: OpeningInput, leaf: Leaf, hole: Hole) -> Iterable[Verdict]:
    why = _AGAINST_PULL.get(leaf.core or "") if leaf.core != "solid" else None
    if leaf.material == "mineral-core":
        why = _AGAINST_PULL["mineral"]
    elif leaf.material == "composite" and leaf.core is None:
        yield unknown(("leaf.core",), hole.name)
    if why is not None:
        yield Verdict(f"No {hole.name}: {why}.", about=hole.name)
    reach = distance_mm("raceway-reach")
    if leaf.width_mm is not None and leaf.width_mm > reach:
        yield Verdict(
            f"The leaf is {length(given, leaf.width_mm)} wide; a clamp fixture keeps a bit true up to "
            f"{length(given, reach)}, short by {length(given, leaf.width_mm - reach)}.",
            values={"short_mm": leaf.width_mm - reach},
            about=hole.name,
        )
    if leaf.thickness_mm is None:
        yield unknown(("leaf.thickness_mm",), hole.name)
        return
    wall = (leaf.thickness_mm - hole.diameter_mm) / 2
    least = distance_mm("raceway-wall")
    if wall < least - 1e-6:
        yield Verdict(
            f"The {hole.name} leaves {length(given, wall)} of wood to each face; {length(given, least)} is needed, "
            f"short by {length(given, least - wall)}.",
            values={"short_mm": least - wall},
            about=hole.name,
        )


def _pulled(given: OpeningInput, leaf: Leaf, hole: Hole) -> Iterable[Verdict]:
    # Stiles and rails of aluminium and of a gate are tubes; what stands in a flush leaf has to be known.
    tubes = leaf.material == "steel-gate" or (leaf.material == "aluminium" and leaf.construction not in ("flush", None))
    if leaf.core is None and not tubes:
        yield unknown(("leaf.core",), hole.name)
    elif leaf.core is not None and leaf.core not in _PULLS:
        yield Verdict(f"No {hole.name}: {_AGAINST_PULL[leaf.core]}.", about=hole.name)


def _over(given: OpeningInput, fit: Fit, leaf: Leaf) -> Iterable[Verdict]:
    """Judge a way over the face of the leaf."""
    raceway, wire, carries = in_role(given, fit, across_leaf.THROUGH), leaf_wire(given, fit), rated(given)
    if raceway is None:
        return
    if carries is None:
        yield unknown(("opening.rating",), raceway.number)
    elif carries:
        listed = raceway.flag_of(FIRE_LISTED)
        if listed is None:
            yield unknown((f"part {raceway.number}.fire_listed",), raceway.number)
        elif not listed:
            yield Verdict(
                f"The opening is rated {given.opening.rating} min; this raceway is not declared as listed for rated "
                "leaves.",
                about=raceway.number,
            )
    if leaf.material == "glass" and not raceway.flag_of(GLASS_MOUNT):
        yield Verdict("It is not declared for bonding to glass, which is never drilled.", about=raceway.number)
    holds, thick = raceway.number_of(INSIDE_MM), wire.number_of(OUTSIDE_DIAMETER_MM) if wire is not None else None
    if wire is not None and thick is None:
        yield unknown((f"part {wire.number}.outside_diameter_mm",), wire.number)
    elif holds is None:
        yield unknown((f"part {raceway.number}.inside_mm",), raceway.number)
    elif wire is not None and thick is not None and thick * cables(given, fit, wire) > holds + 1e-6:
        yield Verdict(
            f"It holds {length(given, holds)}; the wire is {length(given, thick)} thick.",
            values={"short_mm": thick * cables(given, fit, wire) - holds},
            about=raceway.number,
        )
    at_mm = fit.placement.y_mm + fit.placement.height_mm / 2 if fit.placement is not None else None
    if at_mm is None:
        return
    met, needs = across_leaf.on_face_in_path(given, fit, at_mm)
    if met:
        yield Verdict(f"On the inside face {met[0]} stands in its way to the hinge edge.", about=raceway.number)
    elif needs:
        yield unknown(needs, raceway.number)


RULE = Rule(
    id="wire-across-leaf",
    title="Way of the supply's wire across the leaf",
    discipline="power",
    severity="error",
    basis="trade article and field guideline on raceways in leaves; NFPA 80 (2016), raceways in rated leaves, "
    "secondary copies; fill by NEC Chapter 9 Table 1, from memory",
    cure="Bore or pull it through a leaf that allows it, lay a raceway over the face, or feed the unit from batteries.",
    judge=_judge,
    slot="power",
    defers=True,
)
