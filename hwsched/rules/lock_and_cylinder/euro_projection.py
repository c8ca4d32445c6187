"""Rule: each half of a euro-profile cylinder reaches its trim and stands out no farther than allowed."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import INSIDE_HALF_MM, KEY_HALF_MM
from hwsched.rules.reading import lock_item, lock_leaf, lock_part
from hwsched.rules.rounding import EQUAL_MM
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.wording import length, length_up, unknown
from hwsched.values import Fit, OpeningInput

BLIND_MM = 10.0
"""Blind side of a half cylinder [mm]; DIN 18252 / EN 1303 as quoted in trade."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    part = lock_part(given, fit)
    if part is None or part.kind != "euro-cylinder":
        return
    leaf, lock = lock_leaf(given), lock_item(given)
    thickness = leaf.thickness_mm if leaf is not None else None
    key_trim = lock.trim_key_mm if lock is not None else None
    inside_trim = lock.trim_inside_mm if lock is not None else None
    key_half, inside_half = part.number_of(KEY_HALF_MM), part.number_of(INSIDE_HALF_MM)
    blind = inside_half is not None and inside_half <= BLIND_MM
    needs = [
        name
        for name, value in (
            ("leaf.thickness_mm", thickness),
            ("existing_item.trim_key_mm", key_trim),
            ("existing_item.trim_inside_mm", 0.0 if blind else inside_trim),
            (f"part {part.number}.key_half_mm", key_half),
            (f"part {part.number}.inside_half_mm", inside_half),
        )
        if value is None
    ]
    if needs or thickness is None or key_trim is None or key_half is None or inside_half is None:
        yield unknown(tuple(needs), part.number)
        return
    # The fixing screw sits in the case, and sizes count from the screw.
    offset = lock.case_offset_mm or 0.0 if lock is not None else 0.0
    sides = [("key", key_half - (thickness / 2 - offset + key_trim), limits["key_limit_mm"])]
    # A half cylinder ends inside the leaf, where the inside trim has nothing to ask of it.
    if not blind:
        sides.append(
            ("inside", inside_half - (thickness / 2 + offset + (inside_trim or 0.0)), limits["inside_limit_mm"])
        )
    for side, stands, allowed in sides:
        where = f"{side} side" if side == "key" else side
        if stands < -EQUAL_MM:
            yield Verdict(
                f"On the {where} the cylinder ends {length_up(given, -stands)} behind its trim.",
                f"Take a cylinder whose {side} half is at least {length_up(given, -stands)} longer.",
                values={"projection_mm": stands, "allowed_mm": allowed, "short_mm": -stands},
                about=part.number,
            )
        elif stands > allowed + EQUAL_MM:
            yield Verdict(
                f"On the {where} the cylinder stands {length(given, stands)} past its trim; "
                f"{length(given, allowed)} is allowed, {length_up(given, stands - allowed)} too much.",
                f"Take a cylinder whose {side} half is at least {length_up(given, stands - allowed)} shorter.",
                values={"projection_mm": stands, "allowed_mm": allowed, "short_mm": stands - allowed},
                about=part.number,
            )


RULE = Rule(
    id="euro-projection",
    title="Euro-profile halves end at their trim",
    discipline="lock-and-cylinder",
    severity="error",
    basis="sizes from the fixing screw, DIN 18252 / EN 1303 as quoted in trade; 3 mm projection, insurance practice",
    cure="Take other halves, or other trim.",
    judge=_judge,
    slot="lock",
    limits=(
        Limit(
            "key_limit_mm",
            3.0,
            "How far the key side may stand past its trim.",
            "insurance practice, trade glossary",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
        Limit(
            "inside_limit_mm",
            10.0,
            "How far the inside may stand past its trim.",
            "from memory, unverified",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)
