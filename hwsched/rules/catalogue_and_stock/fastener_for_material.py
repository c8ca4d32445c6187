"""Rule: there is a fastener of the unit's size for the leaf's material."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import FORM, LEAF_MATERIAL, SCREW_SIZE, SCREWS, SIZE, WALL_BUILD
from hwsched.rules.reading import entry, leafless, lock_leaf, unit_in_lock, unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit, leaf = unit_part(given, fit), lock_leaf(given)
    if unit is None or leafless(given) or leaf is None or unit_in_lock(given, fit):
        return
    count, size = unit.number_of(SCREWS), unit.text_of(SCREW_SIZE)
    if leaf.material is None or (count is None and not size):
        yield unknown(("leaf.material" if leaf.material is None else f"part {unit.number}.screws",), unit.number)
        return
    material = leaf.material.replace("-", " ")
    if count == 0 and leaf.material != "glass":
        return
    fasteners = [part for fit_part in fit.parts if fit_part.role == "fastener" if (part := entry(given, fit_part))]
    for part in fasteners:
        if part.text_of(LEAF_MATERIAL) is None:
            # One that holds in a wall names no leaf, and one that names neither may hold in nothing.
            if part.text_of(WALL_BUILD) is not None:
                yield Verdict(f"It is made for walls; the leaf is {material}.", about=part.number)
            else:
                yield unknown((f"part {part.number}.leaf_material",), part.number)
        elif part.text_of(LEAF_MATERIAL) != leaf.material:
            yield Verdict(f"It is made for {part.text_of(LEAF_MATERIAL)}; the leaf is {material}.", about=part.number)
    held = any(p.text_of(FORM) == "adhesive" or p.text_of(SIZE) == size for p in fasteners)
    if not held:
        what = "bonding pad" if leaf.material == "glass" else f"screw {size or 'of known size'}"
        yield Verdict(f"The catalogue has no {what} for a leaf of {material}.", about=unit.number)


RULE = Rule(
    id="fastener-for-material",
    title="Fasteners for the leaf's material",
    discipline="catalogue-and-stock",
    severity="error",
    basis="common practice: the leaf's material decides the fastener; #6 screws hold a surface unit on wood",
    cure="Add the fastener to the catalogue.",
    judge=_judge,
    slot="unit",
)
