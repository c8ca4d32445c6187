"""Rule: an electric strike fits the latch that it holds, the cut-out that the frame has, and the frame's face."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import GUARD_LATCH, PLATE_HEIGHT_MM, PLATE_WIDTH_MM
from hwsched.rules.reading import entry, leafless, lock_item, part_fact
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.solid.clearances import TOUCH_MM
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput, Part

_HOLDS = ("latch", "deadlatch")


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if leafless(given) or given.opening.form == "cabinet":
        return
    for fit_part in fit.parts:
        part = entry(given, fit_part)
        if fit_part.role == "strike" and part is not None and part.kind == "electric-strike":
            yield from _latch(given, part)
            yield from _frame(given, part)


def _latch(given: OpeningInput, part: Part) -> Iterable[Verdict]:
    lock = lock_item(given)
    # An exit device has the latch that its strike is made for.
    if lock is None or lock.kind == "exit-device" or lock.function == "exit":
        return
    if lock.latch_form is None:
        yield unknown(("existing_item.latch_form",), part.number)
    elif lock.latch_form not in _HOLDS:
        yield Verdict("A strike lets go of a latch bolt; the lock here has none.", about=part.number)
    elif lock.latch_form == "deadlatch":
        takes = part.flag_of(GUARD_LATCH)
        if takes is None:
            yield unknown((part_fact(part, GUARD_LATCH),), part.number)
        elif not takes:
            yield Verdict(
                "The latch has a guard that must stay pressed by the strike, and this strike has no place for it.",
                about=part.number,
            )


def _frame(given: OpeningInput, part: Part) -> Iterable[Verdict]:
    strike = next((i for i in given.items if i.kind in ("strike", "electric-strike")), None)
    cutout = strike.cutout_height_mm if strike is not None else None
    face = given.opening.frame_face_mm
    high, wide = part.number_of(PLATE_HEIGHT_MM), part.number_of(PLATE_WIDTH_MM)
    needs = {
        "existing_item.cutout_height_mm": cutout,
        "opening.frame_face_mm": face,
        part_fact(part, PLATE_HEIGHT_MM): high,
        part_fact(part, PLATE_WIDTH_MM): wide,
    }
    if missing := tuple(fact for fact, value in needs.items() if value is None):
        yield unknown(missing, part.number)
    if cutout is not None and high is not None and high < cutout - TOUCH_MM:
        yield Verdict(
            f"The strike's plate of {length(given, high)} does not cover the cut-out of {length(given, cutout)}; "
            f"{length(given, cutout - high)} stay open.",
            values={"plate_mm": high, "cutout_mm": cutout, "short_mm": cutout - high},
            about=part.number,
        )
    if face is not None and wide is not None and wide > face + TOUCH_MM:
        yield Verdict(
            f"The strike's plate is {length(given, wide)} wide, the frame's face {length(given, face)}.",
            values={"plate_mm": wide, "face_mm": face},
            about=part.number,
        )


RULE = Rule(
    id="strike-fit",
    title="Electric strike fits latch, cut-out and frame",
    discipline="lock-and-cylinder",
    severity="error",
    basis="BHMA A156.31 and A156.115 for the forms, from memory, unverified; geometry",
    cure="Take the strike that is made for this latch and this preparation; a rated frame is not cut on site.",
    judge=_judge,
)
