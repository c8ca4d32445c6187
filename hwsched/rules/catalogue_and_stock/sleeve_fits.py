"""Rule: a sleeve or grommet is made for the hole that it goes into, and every hole of the lead has one."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import FORM, HOLE_MM
from hwsched.rules.practice import SLEEVE_SLACK_MM, consumables
from hwsched.rules.reading import entry, lock_leaf, part_fact
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput

_IN_HOLES = ("sleeve", "grommet")


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf = lock_leaf(given)
    sizes = sorted({hole.diameter_mm for hole in fit.holes if hole.purpose == "cable"})
    if not sizes or leaf is None or leaf.material is None:
        return
    held = [part for each in fit.parts if each.role == "consumable" and (part := entry(given, each)) is not None]
    sleeves = [part for part in held if part.text_of(FORM) in _IN_HOLES]
    made = [part.number_of(HOLE_MM) for part in sleeves]
    for part, size in zip(sleeves, made, strict=True):
        if size is None:
            yield unknown((part_fact(part, HOLE_MM),), part.number)
        elif not any(abs(size - hole) <= SLEEVE_SLACK_MM for hole in sizes):
            nearest = min(sizes, key=lambda hole: abs(hole - size))
            off = size - nearest
            how = "does not go in" if off > 0 else "falls through"
            yield Verdict(
                f"It is made for a hole of {length(given, size)}; the lead's is {length(given, nearest)}: it {how}.",
                values={"made_mm": size, "hole_mm": nearest, "short_mm": abs(off)},
                about=part.number,
            )
    wanted = [each.form for each in consumables(leaf.material) if each.when == "lead hole"]
    if None in made or not wanted:
        return
    for hole in sizes:
        if not any(size is not None and abs(size - hole) <= SLEEVE_SLACK_MM for size in made):
            yield Verdict(
                f"No {wanted[0]} of the catalogue is made for the lead's hole of {length(given, hole)}.",
                values={"hole_mm": hole},
                about="lead",
                severity="note",
            )


RULE = Rule(
    id="sleeve-fits",
    title="Sleeve made for its hole",
    discipline="catalogue-and-stock",
    severity="error",
    basis="common practice: the lead passes no bare edge of sheet or bore",
    cure="Add the sleeve or grommet of that size to the catalogue.",
    judge=_judge,
)
