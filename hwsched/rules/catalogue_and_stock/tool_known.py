"""Rule: the tools that the holes want are in the catalogue."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import DIAMETER_MM, FORM, REACH_MM
from hwsched.quantities.drill_sizes import format_drill
from hwsched.rules.practice import pocket_tools
from hwsched.rules.reading import entry, lock_leaf
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.bores import is_long
from hwsched.rules.solid.clearances import TOUCH_MM
from hwsched.rules.wording import length, style_of, unknown
from hwsched.values import Fit, Hole, OpeningInput, Part


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    tools = [part for fit_part in fit.parts if fit_part.role == "tool" if (part := entry(given, fit_part))]
    for hole in fit.holes:
        if hole.purpose == "pocket":
            leaf = lock_leaf(given)
            forms = pocket_tools(leaf.material) if leaf is not None and leaf.material is not None else ()
            if not any(tool.text_of(FORM) in forms for tool in tools):
                named = " or ".join(form.replace("-", " ") for form in forms) or "tool"
                yield Verdict(f"No {named} is in the catalogue for the {hole.name}.", about=hole.name)
            continue
        for size in (hole.diameter_mm, hole.pilot_mm):
            near = [
                tool
                for tool in tools
                if size is None or abs((tool.number_of(DIAMETER_MM) or 0.0) - size) <= limits["tolerance_mm"]
            ]
            if size is None or (near and not is_long(hole)):
                continue
            if is_long(hole):
                yield from _long(given, hole, [tool for tool in near if tool.text_of(FORM) == hole.tool])
                continue
            named = format_drill(size, style_of(given.settings.length_style))
            yield Verdict(
                f"No bit of {named} is in the catalogue for the {hole.name}.",
                values={"diameter_mm": size},
                about=hole.name,
            )


def _long(given: OpeningInput, hole: Hole, bits: list[Part]) -> Iterable[Verdict]:
    """Judge the bit of a way across a leaf: only one that is as long as the way goes through."""
    deep = hole.depth_mm or 0.0
    reaches = [bit.number_of(REACH_MM) for bit in bits]
    if any(reach is not None and reach >= deep - TOUCH_MM for reach in reaches):
        return
    if None in reaches:
        bit = bits[reaches.index(None)]
        yield unknown((f"part {bit.number}.reach_mm",), hole.name)
        return
    yield Verdict(
        f"No installer bit of {length(given, hole.diameter_mm)} that is {length(given, deep)} long is in the catalogue "
        f"for the {hole.name}.",
        values={"diameter_mm": hole.diameter_mm, "needed_mm": deep},
        about=hole.name,
    )


RULE = Rule(
    id="tool-known",
    title="Tools for the holes in the catalogue",
    discipline="catalogue-and-stock",
    severity="note",
    basis="common practice",
    cure="Add the bit to the catalogue, or see that the crew has it.",
    judge=_judge,
    limits=(
        Limit(
            "tolerance_mm",
            0.06,
            "How far a bit may be off the hole's size.",
            "from memory, unverified",
            unit="mm",
            low=0.0,
            high=25.0,
        ),
    ),
)
