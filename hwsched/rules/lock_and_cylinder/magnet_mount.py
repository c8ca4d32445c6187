"""Rule: an electromagnetic lock has room under the frame's head, and its armature stands on the leaf that it holds."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import HEADER_MM
from hwsched.rules.reading import entry, leafless, lock_leaf, on_leaf, part_fact, remains
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.solid.clearances import TOUCH_MM
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if leafless(given) or given.opening.form == "cabinet":
        return
    for fit_part in fit.parts:
        part = entry(given, fit_part)
        if part is None or part.kind != "electromagnetic-lock":
            continue
        needed, deep = part.number_of(HEADER_MM), given.opening.header_depth_mm
        if needed is None or deep is None:
            needs = (*(("opening.header_depth_mm",) if deep is None else ()),
                     *((part_fact(part, HEADER_MM),) if needed is None else ()))  # fmt: skip
            yield unknown(needs, part.number)
        elif deep < needed - TOUCH_MM:
            yield Verdict(
                f"The magnet wants {length(given, needed)} under the frame's head; there are {length(given, deep)}, "
                f"{length(given, needed - deep)} short.",
                values={"depth_mm": deep, "needed_mm": needed, "short_mm": needed - deep},
                about=part.number,
            )
    leaf = lock_leaf(given)
    magnets = [item for item in given.items if item.kind == "electromagnetic-lock" and remains(item)]
    if not magnets or leaf is None or given.opening.form != "pair":
        return
    if any(item.leaf is None for item in magnets):
        yield unknown(("existing_item.leaf",), "electromagnetic lock")
    elif not any(on_leaf(item, leaf) for item in magnets):
        yield Verdict(
            "The armature stands on the other leaf: the magnet does not hold the leaf that is converted.",
            about="electromagnetic lock",
        )


RULE = Rule(
    id="magnet-mount",
    title="Electromagnetic lock under the head, armature on its leaf",
    discipline="lock-and-cylinder",
    severity="error",
    basis="geometry; a magnet holds only the leaf that bears its armature",
    cure="Take a filler or bracket that is listed with the magnet, a narrower magnet, or one for each leaf.",
    judge=_judge,
)
