"""Rule: an electric strike on a rated opening is fail-secure, so that the leaf stays latched."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import FAIL
from hwsched.rules.reading import entry, rated, remains
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    carries = rated(given)
    if carries is False:
        return
    for fit_part in fit.parts:
        if fit_part.role != "strike":
            continue
        part = entry(given, fit_part)
        # An electromagnetic lock holds the leaf and leaves the latch alone, whatever becomes of its power.
        if part is not None and part.kind == "electromagnetic-lock":
            continue
        fail = part.text_of(FAIL) if part is not None else None
        if carries is None or fail is None:
            yield unknown(("opening.rating" if carries is None else f"part {fit_part.part}.fail",), fit_part.part)
        # Without power a fail-safe strike no longer holds the latch, and a fire door must stay latched (NFPA 80
        # commentary).
        elif fail != "fail-secure":
            yield Verdict("A fail-safe electric strike on a rated opening lets go of the latch.", about=fit_part.part)
    for item in given.items:
        if not carries or item.kind != "electric-strike" or not remains(item) or item.fail == "fail-secure":
            continue
        if item.fail == "fail-safe":
            yield Verdict(
                "The fail-safe electric strike that stays on this rated opening lets go of the latch.",
                about="electric strike",
            )
            continue
        yield Verdict(
            "An electric strike that stays on this rated opening must be fail-secure; the survey does not record it.",
            "Read the strike's label: fail-secure stays latched without power.",
            about="electric strike",
            severity="warning",
            needs=("existing_item.fail",),
        )


RULE = Rule(
    id="rated-strike",
    title="Electric strike on a rated opening fail-secure",
    discipline="fire-door",
    severity="error",
    basis="NFPA 80 commentary: positive latching; fail-safe strikes are not listed for it (secondary copies)",
    cure="Take a fail-secure strike that is listed for the rating.",
    judge=_judge,
    slot="power",
    defers=True,
)
