"""Rule: where a reader at a lift or turnstile stands sideways is known, and neither it nor its unit is in the way."""

from collections.abc import Iterable
from dataclasses import replace

from hwsched.attributes.of_parts import FACE_WIDTH_MM
from hwsched.rules.reading import in_role, leafless, lock_item
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import READER_ASIDE, length, unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if not leafless(given) or lock_item(given) is None:
        return
    aside = given.opening.reader_aside_mm
    if aside is None:
        cure = "Have the owner show the place and measure it; drill nothing at this opening before."
        yield replace(unknown((READER_ASIDE,), "reader", cure), severity="warning")
        return
    reader, place = in_role(given, fit, "reader"), fit.placement
    face = reader.number_of(FACE_WIDTH_MM) if reader is not None else None
    halves = [face / 2] if face is not None else []
    if place is not None and place.face == "wall":
        halves.append(max(abs(place.x_mm), abs(place.x_mm + place.width_mm)))
    if halves and abs(aside) < max(halves):
        yield Verdict(
            f"The reader's centre is {length(given, abs(aside))} beside the entrance; reader and unit take "
            f"{length(given, max(halves))} to each side of it, and would stand in the entrance.",
            values={"aside_mm": aside, "taken_mm": max(halves)},
            about="reader",
        )


RULE = Rule(
    id="reader-beside-entrance",
    title="Reader beside the entrance",
    discipline="placement",
    severity="error",
    basis="common practice: nothing is mounted in the clear opening of an entrance",
    cure="Have the owner show the place, measure it from the entrance's edge, and move the reader clear of it.",
    judge=_judge,
)
