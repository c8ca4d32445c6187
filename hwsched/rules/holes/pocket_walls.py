"""Rule: a pocket in the leaf's edge leaves a wall on each side and fits the stile's depth."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import POCKET_DEPTH_MM, POCKET_WIDTH_MM
from hwsched.rules.reading import lock_leaf, stile_mm, unit_part
from hwsched.rules.rounding import by_rounding, half_unit
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import TOUCH_MM
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit, leaf = unit_part(given, fit), lock_leaf(given)
    if unit is None or leaf is None or unit.kind != "edge-unit":
        return
    wide, deep = unit.number_of(POCKET_WIDTH_MM), unit.number_of(POCKET_DEPTH_MM)
    has_stile, stile = stile_mm(leaf)
    depth = stile if has_stile else leaf.width_mm
    needs = [
        name
        for name, value in (
            ("leaf.thickness_mm", leaf.thickness_mm),
            ("leaf.stile_mm" if has_stile else "leaf.width_mm", depth),
            (f"part {unit.number}.pocket_width_mm", wide),
            (f"part {unit.number}.pocket_depth_mm", deep),
        )
        if value is None
    ]
    if leaf.thickness_mm is None or depth is None or wide is None or deep is None:
        yield unknown(tuple(needs), unit.number)
        return
    thick = (("leaf.thickness_mm", leaf.thickness_mm, 0.5),)
    behind = (("leaf.stile_mm" if has_stile else "leaf.width_mm", depth, 1.0),)
    for name, wall, wanted, facts in (
        ("each side", (leaf.thickness_mm - wide) / 2, limits["side_wall_mm"], thick),
        ("its back", depth - deep, limits["back_wall_mm"], behind),
    ):
        if wall >= wanted - TOUCH_MM:
            continue
        allowed = half_unit(facts, (wide, deep))
        if wanted - wall <= allowed.mm + TOUCH_MM:
            yield by_rounding(given, allowed, wanted - wall, unit.number)
        else:
            yield Verdict(
                f"The unit's pocket leaves {length(given, wall)} at {name}; {length(given, wanted)} is needed, "
                f"short by {length(given, wanted - wall)}.",
                values={"wall_mm": wall, "needed_mm": wanted, "short_mm": wanted - wall},
                about=unit.number,
            )


RULE = Rule(
    id="pocket-walls",
    title="Walls of the in-edge unit's pocket",
    discipline="holes",
    severity="error",
    basis="the unit's template says how deep and wide its pocket is",
    cure="Take a surface unit.",
    judge=_judge,
    slot="unit",
    limits=(
        Limit(
            "side_wall_mm",
            9.525,
            "Least wall on each side of the pocket.",
            "from memory, unverified",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
        Limit(
            "back_wall_mm",
            6.35,
            "Least material behind the pocket.",
            "from memory, unverified",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)
