"""Rule: the new cylinder, lock or reader is of the form that the existing lock asks for."""

from collections.abc import Iterable

from hwsched.rules.reading import KIND_OF_FORM, lock_form, lock_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    part = lock_part(given, fit)
    if part is None:
        return
    form = lock_form(given)
    if form is None:
        yield unknown(("existing_item.lock_form",), part.number)
    elif KIND_OF_FORM.get(form) != part.kind:
        wanted, is_now = KIND_OF_FORM.get(form, form).replace("-", " "), part.kind.replace("-", " ")
        yield Verdict(
            f"The existing lock is of the form {form} and takes a {wanted}; this part is a {is_now}.",
            about=part.number,
        )


RULE = Rule(
    id="cylinder-form",
    title="Cylinder or lock of the existing lock's form",
    discipline="lock-and-cylinder",
    severity="error",
    basis="common practice: the existing lock decides the cylinder or lock that replaces it",
    cure="Choose a part of the kind that the existing lock takes.",
    judge=_judge,
    slot="lock",
)
