"""Rule: an in-edge unit goes only into leaves and beside locks where a pocket can be made."""

from collections.abc import Iterable
from typing import Final

from hwsched.rules.reading import leafless, lock_form, lock_leaf, unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput

MATERIALS: Final = ("wood", "composite", "aluminium")
FORMS: Final = ("mortise", "euro-profile", "bored")


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit, leaf = unit_part(given, fit), lock_leaf(given)
    if unit is None or unit.kind != "edge-unit":
        return
    if leafless(given) or leaf is None:
        yield Verdict("There is no leaf whose edge could take the unit.", about=unit.number)
    elif leaf.material is None:
        yield unknown(("leaf.material",), unit.number)
    elif leaf.material not in MATERIALS:
        yield Verdict(
            f"No pocket is cut on site into the edge of a leaf of {leaf.material.replace('-', ' ')}.", about=unit.number
        )
    elif lock_form(given) not in FORMS or given.opening.form in ("cabinet", "gate"):
        yield Verdict(
            f"A lock of the form {lock_form(given)} has no pocket in the edge to lead from.", about=unit.number
        )


RULE = Rule(
    id="edge-unit-leaf",
    title="In-edge unit only where a pocket can be cut",
    discipline="placement",
    severity="error",
    basis="common practice: wood is mortised on site; sheet steel and mineral core are prepared by the leaf's maker",
    cure="Take a surface unit, or order the leaf prepared.",
    judge=_judge,
    slot="unit",
)
