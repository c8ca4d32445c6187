"""Rule: cam or tailpiece has the form that the lock's case needs, and fits the cylinder that carries it."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import CAM_FIXING, CAM_FORM, FITS, TAIL_FORM
from hwsched.rules.reading import in_role, lock_item, lock_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput, Part


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    part, lock = lock_part(given, fit), lock_item(given)
    if part is None or part.kind not in ("mortise-cylinder", "rim-cylinder", "euro-cylinder"):
        return
    wanted = lock.cam_form if lock is not None else None
    if part.kind == "euro-cylinder":
        # A euro-profile cylinder has its cam as part of itself: there is only the one form.
        wanted = wanted or "euro"
    if wanted is None:
        yield unknown(("existing_item.cam_form",), part.number)
        return
    carried = in_role(given, fit, "cam", "tailpiece")
    form = _form(carried) or _form(part)
    if form is None:
        fixing = part.text_of(CAM_FIXING)
        what = f"for the cam fixing {fixing}" if fixing else "for this cylinder"
        yield Verdict(
            f"The lock's case needs a {wanted.replace('-', ' ')} cam or tailpiece; there is none {what}.",
            "Add the cam or tailpiece to the catalogue, or take a cylinder that has it.",
            about=part.number,
        )
    elif form != wanted:
        yield Verdict(
            f"The lock's case needs {wanted.replace('-', ' ')}, the cylinder carries {form.replace('-', ' ')}.",
            about=part.number,
        )
    if carried is None:
        return
    if part.kind == "euro-cylinder":
        # Its cam is part of itself: whatever the other fixes to, it does not fix to this one.
        yield Verdict("A euro-profile cylinder carries its own cam; this does not go on it.", about=carried.number)
    else:
        yield from _fixing(part, carried)


def _form(part: Part | None) -> str | None:
    return None if part is None else part.text_of(CAM_FORM) or part.text_of(TAIL_FORM)


def _fixing(part: Part, carried: Part) -> Iterable[Verdict]:
    fixing = "rim" if part.kind == "rim-cylinder" else part.text_of(CAM_FIXING)
    fits = carried.text_of(FITS)
    if fixing is None or fits is None:
        missing = (part.number, "cam_fixing") if fixing is None else (carried.number, "fits")
        yield unknown((f"part {missing[0]}.{missing[1]}",), carried.number)
    elif fixing != fits:
        yield Verdict(f"It is made for the fixing {fits}; the cylinder has {fixing}.", about=carried.number)


RULE = Rule(
    id="cam-match",
    title="Cam or tailpiece matches case and cylinder",
    discipline="lock-and-cylinder",
    severity="error",
    basis="common practice",
    cure="Take the cam or tailpiece that the lock's case needs and the cylinder carries.",
    judge=_judge,
    slot="lock",
)
