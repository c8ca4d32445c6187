"""Rule: what holds a unit on a wall is made for it: plugs in masonry, anchors in board, machine screws in steel."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import FORM, SCREW_SIZE, SCREWS, SIZE, WALL_BUILD
from hwsched.rules.practice import wall_fixing
from hwsched.rules.reading import entry, leafless, part_fact, unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit = unit_part(given, fit)
    if unit is None or not leafless(given):
        return
    wall, count, size = given.opening.wall_build, unit.number_of(SCREWS), unit.text_of(SCREW_SIZE)
    if count == 0:
        yield Verdict(
            "It is bonded to glass and takes no screws: nothing holds it on a wall.",
            "Take a unit that is screwed on.",
            about=unit.number,
        )
        return
    needs = (("opening.wall_build", wall), (part_fact(unit, SCREWS), count), (part_fact(unit, SCREW_SIZE), size))
    if wall is None or count is None or size is None:
        yield unknown(tuple(name for name, value in needs if value is None), unit.number)
        return
    # Its fixings are chosen with its place.
    if fit.placement is None:
        return
    wanted = wall_fixing(wall)
    held = [part for each in fit.parts if each.role == "fastener" if (part := entry(given, each)) is not None]
    right = [part for part in held if wanted is not None and part.text_of(FORM) == wanted.form]
    for part in held:
        if part.text_of(WALL_BUILD) != wall:
            what = (part.text_of(WALL_BUILD) or "no wall that it names").replace("-", " ")
            yield Verdict(f"It is made for {what}; the wall is of {wall}.", about=part.number)
    if not any(part.text_of(SIZE) == size for part in right):
        what = wanted.form.replace("-", " ") if wanted is not None else "fixing"
        yield Verdict(f"The catalogue has no {what} {size} for a wall of {wall}.", about=unit.number)


RULE = Rule(
    id="wall-fixings",
    title="Fixings for the wall",
    discipline="catalogue-and-stock",
    severity="error",
    basis="common practice: the wall decides the fixing",
    cure="Add the fixing to the catalogue, for the wall that it is made for.",
    judge=_judge,
    slot="unit",
)
