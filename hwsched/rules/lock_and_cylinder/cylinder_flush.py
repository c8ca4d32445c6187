"""Rule: a threaded cylinder's head is level with its collar's rim or over it, its cam on or just past the centre."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import CAM_OFFSET_MM, LENGTH_MM, THREAD_PITCH_MM
from hwsched.rules.reading import lock_item, lock_leaf, lock_part
from hwsched.rules.rounding import EQUAL_MM, by_rounding
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.solid.threaded import LIMITS, heights_in, stack_allowance
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    part = lock_part(given, fit)
    if part is None or part.kind != "mortise-cylinder":
        return
    stack = fit.stack
    if stack is None or stack.form != "threaded":
        leaf, lock = lock_leaf(given), lock_item(given)
        needs = [] if leaf is not None and leaf.thickness_mm is not None else ["leaf.thickness_mm"]
        if lock is None or lock.trim_key_mm is None:
            needs.append("existing_item.trim_key_mm")
        needs += [
            f"part {part.number}.{name}"
            for name in (LENGTH_MM, CAM_OFFSET_MM, THREAD_PITCH_MM)
            if part.number_of(name) is None
        ]
        if needs:
            yield unknown(tuple(needs), part.number)
        else:
            yield Verdict(
                "Leaf, case and cylinder contradict each other: no stack can be worked out.", about=part.number
            )
        return
    if stack.impossible:
        yield Verdict(f"No stack can be worked out: {stack.impossible}.", about=part.number)
        return
    allowed, off = limits["tolerance_mm"], stack_allowance(given, part, heights_in(given, fit))
    beyond = max(-stack.gap_mm, stack.gap_mm - allowed)
    if EQUAL_MM < beyond <= off.mm + EQUAL_MM:
        yield by_rounding(given, off, beyond, part.number)
    # A head sunk into its collar can be neither turned to its thread's end nor seen to be at it: level, or out of it.
    elif stack.gap_mm < -EQUAL_MM:
        yield Verdict(
            f"The cylinder's head would sink {length(given, -stack.gap_mm)} below the rim of its collar.",
            "Take a longer cylinder, a lower collar or fewer rings.",
            values={"gap_mm": stack.gap_mm, "allowed_mm": 0.0, "short_mm": -stack.gap_mm},
            about=part.number,
        )
    elif stack.gap_mm > allowed + EQUAL_MM:
        yield Verdict(
            f"The cylinder's head stands {length(given, stack.gap_mm)} off its collar; {length(given, allowed)} is the "
            f"most, {length(given, stack.gap_mm - allowed)} too much.",
            "Take a shorter cylinder, a higher collar or a blocking ring.",
            values={"gap_mm": stack.gap_mm, "allowed_mm": allowed, "short_mm": stack.gap_mm - allowed},
            about=part.number,
        )
    # On the case's centre plane or a little beyond: a turn is 1/32 in, and two are the most that common practice lets
    # the cam lie past it.
    if stack.turns > limits["turns_beyond"]:
        yield Verdict(
            f"The cam lies {stack.turns} turns beyond the case's centre; {limits['turns_beyond']:g} is the most.",
            values={"turns": float(stack.turns), "turns_allowed": limits["turns_beyond"]},
            about=part.number,
        )


RULE = Rule(
    id="cylinder-flush",
    title="Cylinder flush with its collar, cam on centre",
    discipline="lock-and-cylinder",
    severity="error",
    basis="common practice for threaded mortise cylinders",
    cure="Take another cylinder length, collar or rings.",
    judge=_judge,
    slot="lock",
    limits=LIMITS,
)
