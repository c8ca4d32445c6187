"""Rule: an angled bore stays inside the leaf with enough wall."""

from collections.abc import Iterable
from dataclasses import replace

from hwsched.calc.calculator import InputError
from hwsched.calc.opening.bore import LeafSize, bore
from hwsched.rules.reading import lock_leaf
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.bores import angled, as_bore
from hwsched.rules.solid.clearances import TOUCH_MM
from hwsched.rules.wording import in_units, length
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf = lock_leaf(given)
    if leaf is None or leaf.width_mm is None or leaf.thickness_mm is None:
        return
    for hole in angled(fit):
        # Only its two faces and the lock edge can be near; the height is set so that top and bottom are not.
        size = LeafSize(leaf.width_mm, 2 * (hole.depth_mm or 0.0) + 1000.0, leaf.thickness_mm)
        middle = replace(hole, y_mm=size.height_mm / 2)
        try:
            found = bore(as_bore(middle, size))
        except InputError as error:
            yield Verdict(
                f"The bore for the {hole.name} cannot be made: {in_units(given, error.message)}.", about=hole.name
            )
            continue
        wall = found.min_wall_mm
        # Coming out on the other side has no wall at all, though the sides of the bore may have plenty.
        if found.exit is not None or wall < limits["wall_mm"] - TOUCH_MM:
            wall = min(wall, 0.0) if found.exit is not None else wall
            yield Verdict(
                f"The bore for the {hole.name} leaves a wall of {length(given, wall)}; "
                f"{length(given, limits['wall_mm'])} is needed.",
                values={"wall_mm": wall, "needed_mm": limits["wall_mm"], "short_mm": limits["wall_mm"] - wall},
                about=hole.name,
            )


RULE = Rule(
    id="bore-wall",
    title="Wall beside an angled bore",
    discipline="holes",
    severity="error",
    basis="geometry; the least wall is common practice",
    cure="Change the place of the access hole, or take the straight place.",
    judge=_judge,
    slot="unit",
    limits=(
        Limit(
            "wall_mm",
            3.175,
            "Least wall between a bore and a face of the leaf.",
            "from memory, unverified",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)
