"""Rule: an angled bore for the lead comes out in the lock's hollow and nowhere else."""

from collections.abc import Iterable

from hwsched.calc.calculator import InputError
from hwsched.calc.opening.bore import LeafSize, bore
from hwsched.rules.reading import leaf_reach_mm, lock_leaf
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.solid.bores import angled, as_bore
from hwsched.rules.solid.cavity import cavity
from hwsched.rules.wording import in_units
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf = lock_leaf(given)
    holes = angled(fit)
    if leaf is None or not holes or leaf.width_mm is None or leaf.height_mm is None or leaf.thickness_mm is None:
        return
    found = cavity(given, fit)
    if found is None:
        return
    # Heights count from the floor; the leaf as a solid must reach up to them.
    reach = leaf_reach_mm(given, leaf)
    top = reach[1] if reach is not None else leaf.height_mm
    for hole in holes:
        try:
            reached = bore(as_bore(hole, LeafSize(leaf.width_mm, top, leaf.thickness_mm), found.box))
        except InputError as error:
            yield Verdict(f"The {hole.name} cannot be made: {in_units(given, error.message)}.", about=hole.name)
            continue
        if not reached.enters_target:
            yield Verdict(f"The {hole.name} misses the lock's hollow.", about=hole.name)


RULE = Rule(
    id="bore-enters",
    title="Angled bore enters the lock's hollow",
    discipline="holes",
    severity="error",
    basis="geometry; compound angles, Machinery's Handbook, 31st edition, p. 121 to 122",
    cure="Take another place for the unit, where the bore leads into the lock's pocket.",
    judge=_judge,
    slot="unit",
)
