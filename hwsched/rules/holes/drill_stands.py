"""Rule: a slanted hole can be drilled: bit and drill clear the face that they lean over."""

from collections.abc import Iterable
from math import cos, radians, sin, tan

from hwsched.calc.opening.bore import Rod, Vector
from hwsched.calc.opening.solid import apart_mm
from hwsched.rules.reading import lock_leaf
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.bodies import drill_angle_deg, existing_bodies
from hwsched.rules.solid.bores import angled, bit_mm
from hwsched.rules.solid.clearances import TOUCH_MM
from hwsched.rules.wording import length
from hwsched.values import Fit, Hole, OpeningInput

_STAYS = ("exit-device", "closer")
"""What nobody takes off to drill beside it."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf = lock_leaf(given)
    if leaf is None or leaf.thickness_mm is None:
        return
    radius = limits["drill_radius_mm"]
    for hole in angled(fit):
        angle = drill_angle_deg(hole)
        if angle >= 90.0 - 1e-9:
            continue
        # What stands out of the leaf: the bit less what is in the hole, and less what a square hole before it takes.
        inside = (hole.depth_mm or 0.0) + hole.from_depth_mm / sin(radians(angle))
        free = bit_mm(given, hole, limits["bit_mm"]) - inside
        room = free * sin(radians(angle)) - radius * cos(radians(angle))
        if room < -TOUCH_MM:
            stands = f"{length(given, free)} of it stand out"
            if free <= 0:
                stands = f"it is {length(given, -free)} shorter than the hole"
            yield Verdict(
                f"At {angle:g} degrees to the face no drill holds the bit for the {hole.name}: {stands}, a drill "
                f"{length(given, 2 * radius)} thick comes {length(given, -room)} into the face.",
                values={"angle_deg": angle, "free_mm": free, "short_mm": -room},
                about=hole.name,
            )
            continue
        drill = _drill(hole, leaf.thickness_mm, free, limits["drill_long_mm"], radius)
        for body in existing_bodies(given, fit):
            if body.kind != "on-face" or body.face != hole.face or body.item not in _STAYS:
                continue
            gap = apart_mm(drill, body.solid)
            if gap < -TOUCH_MM:
                yield Verdict(
                    f"The drill for the {hole.name} stands where {body.name} is: {length(given, -gap)} too near.",
                    values={"short_mm": -gap},
                    about=hole.name,
                )


def _drill(hole: Hole, thick: float, free: float, long: float, radius: float) -> Rod:
    """Return the drill's body behind the bit, as it stands when the hole is as deep as it will be."""
    across, up = tan(radians(hole.edge_deg)), -tan(radians(hole.up_deg))
    out = -1.0 if hole.face == "inside" else 1.0
    size = (across * across + up * up + 1.0) ** 0.5
    way: Vector = (across / size, up / size, out / size)
    face = 0.0 if hole.face == "inside" else thick
    # Where the axis leaves the leaf: a channel begins below its face.
    at: Vector = (hole.x_mm + across * hole.from_depth_mm, hole.y_mm + up * hole.from_depth_mm, face)
    near: Vector = (at[0] + way[0] * free, at[1] + way[1] * free, at[2] + way[2] * free)
    far: Vector = (near[0] + way[0] * long, near[1] + way[1] * long, near[2] + way[2] * long)
    return Rod(near, far, 2 * radius)


RULE = Rule(
    id="drill-stands",
    title="A slanted hole can be drilled",
    discipline="holes",
    severity="error",
    basis="geometry; sizes of drills from memory, unverified",
    cure="Take another way for the lead, a longer bit, or another place for the unit.",
    judge=_judge,
    slot="unit",
    limits=(
        Limit(
            "drill_radius_mm",
            28.0,
            "From a drill's axis to the side of its housing.",
            "from memory, unverified: 28 to 35 mm, head of a right-angle drill 22 to 28 mm",
            unit="mm",
            low=5.0,
            high=100.0,
        ),
        Limit(
            "drill_long_mm",
            150.0,
            "Length of a drill without its bit.",
            "from memory, unverified: 150 to 200 mm",
            unit="mm",
            low=20.0,
            high=500.0,
        ),
        Limit(
            "bit_mm",
            304.8,
            "Length of the long bit, where the catalogue gives none of that diameter.",
            "encyclopedia: long bits of 6, 8, 12 and 18 in; 12 in taken",
            unit="mm",
            low=50.0,
            high=2000.0,
        ),
    ),
)
