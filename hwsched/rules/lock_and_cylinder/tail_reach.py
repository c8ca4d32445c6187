"""Rule: a tailpiece reaches into the case and does not bottom in it, behind a rim or a mortise cylinder."""

from collections.abc import Iterable

from hwsched.calc.calculator import InputError
from hwsched.rules.reading import in_role, lock_part
from hwsched.rules.rounding import EQUAL_MM, Allowance, by_rounding
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.tails import TailWay, reach_off, tail_cut, tail_size, tail_way
from hwsched.rules.wording import in_units, length, unknown
from hwsched.values import Fit, OpeningInput, Part


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    part, tail = lock_part(given, fit), in_role(given, fit, "tailpiece")
    # A mortise cylinder has a tailpiece only as a conversion in place of its cam.
    if part is None or (part.kind != "rim-cylinder" and (part.kind != "mortise-cylinder" or tail is None)):
        return
    turns = fit.stack.turns if fit.stack is not None else 0
    way, needs = tail_way(given, part, turns, limits["case_sheet_mm"])
    long, step, name = tail_size(part, tail)
    if way is None or long is None:
        yield unknown((*needs, *(() if long is not None else (name,))), part.number)
        return
    yield from _reach(given, part, way, long, step, limits["engagement_mm"])


def _reach(
    given: OpeningInput, part: Part, way: TailWay, long: float, step: float | None, engagement: float
) -> Iterable[Verdict]:
    allowed = reach_off(given, part, long)
    if way.back_mm > way.case_mm + allowed.mm + EQUAL_MM:
        out = way.back_mm - way.case_mm
        yield Verdict(
            f"The cylinder's body comes {length(given, out)} out of the leaf on the inside: it reaches "
            f"{length(given, way.back_mm)} in, the leaf is {length(given, way.case_mm)} thick.",
            "Take a cylinder with a shorter body, or thicker trim.",
            values={"back_mm": way.back_mm, "leaf_mm": way.case_mm, "short_mm": out},
            about=part.number,
        )
        return
    if way.back_mm > way.case_mm + EQUAL_MM:
        yield by_rounding(given, allowed, way.back_mm - way.case_mm, part.number)
    shallow = engagement - way.room_mm
    if EQUAL_MM < shallow <= way.open_by.mm + EQUAL_MM:
        yield by_rounding(given, way.open_by, shallow, part.number)
    elif shallow > EQUAL_MM:
        yield Verdict(
            f"The tailpiece must reach {length(given, engagement)} into the case, which is only "
            f"{length(given, way.room_mm)} deep there: it jams, short by {length(given, shallow)}.",
            "Measure the case's thickness again, or take a cylinder that ends nearer to the key face.",
            values={"room_mm": way.room_mm, "needed_mm": engagement, "short_mm": shallow},
            about=part.number,
        )
        return
    try:
        cut = tail_cut(way, long, step, engagement, allowed)
    except InputError as error:
        yield Verdict(f"Tailpiece, leaf and case contradict each other: {in_units(given, error)}.", about=part.number)
        return
    if EQUAL_MM < cut.short_mm <= allowed.mm + EQUAL_MM:
        yield by_rounding(given, allowed, cut.short_mm, part.number)
    elif cut.short_mm > EQUAL_MM:
        yield Verdict(
            f"The tailpiece is {length(given, long)}; {length(given, cut.needed_mm)} reaches "
            f"{length(given, engagement)} into the case, short by {length(given, cut.short_mm)}.",
            values={"tail_mm": long, "needed_mm": cut.needed_mm, "short_mm": cut.short_mm},
            about=part.number,
        )
    elif step is not None and cut.method == "saw" and cut.longest_mm is not None:
        # At its scores it is broken off, and nowhere else: the catalogue says so by giving a step.
        left = long - int((long - cut.needed_mm + EQUAL_MM) / step) * step
        yield Verdict(
            f"Broken off at its last useful score the tailpiece is {length(given, left)}; in a case that is "
            f"{length(given, way.room_mm)} deep {length(given, cut.longest_mm)} is the most: it jams.",
            "Take a tailpiece that is cut anywhere, or one with a finer step.",
            values={"tail_mm": left, "longest_mm": cut.longest_mm, "short_mm": left - cut.longest_mm},
            about=part.number,
        )
    elif (deep := cut.engagement_mm - max(way.room_mm, engagement)) > EQUAL_MM:
        both = Allowance(allowed.mm + way.open_by.mm, allowed.facts + way.open_by.facts)
        yield by_rounding(given, both, deep, part.number)


RULE = Rule(
    id="tail-reach",
    title="Tailpiece reaches into the case and does not jam",
    discipline="lock-and-cylinder",
    severity="error",
    basis="trade practice, from memory, unverified; the arithmetic is geometry",
    cure="Take a cylinder with a longer tailpiece, or a longer tailpiece.",
    judge=_judge,
    slot="lock",
    limits=(
        Limit(
            "engagement_mm",
            9.525,
            "How far the tailpiece must reach into the case.",
            "from memory, unverified, 3/8 in",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
        Limit(
            "case_sheet_mm",
            1.5,
            "Sheet of the case, over which its thickness is measured and before which a tailpiece must end.",
            "from memory, unverified: sheet of about 1/16 in",
            unit="mm",
            low=0.0,
            high=10.0,
        ),
    ),
)
