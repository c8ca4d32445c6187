"""Rule: a lock on the stair side of a stair door needs re-entry, and the leaf stays latched."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import FAIL
from hwsched.rules.reading import entry, leafless, remains
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if leafless(given) or given.opening.form in ("cabinet", "gate") or given.opening.stair is False:
        return
    if given.opening.stair is None:
        yield unknown(("opening.stair",), "stair")
        return
    yield Verdict(
        "Stair door: a lock on the stair side needs a re-entry release that unlocks without unlatching, on the fire "
        "alarm or from one place.",
        about="stair",
    )
    for fit_part in fit.parts:
        part = entry(given, fit_part)
        # Re-entry unlocks without unlatching; a strike without power lets go of the latch, and the leaf no longer
        # holds shut.
        if fit_part.role == "strike" and part is not None and part.text_of(FAIL) == "fail-safe":
            yield Verdict(
                "A fail-safe strike unlatches the stair door and is no answer to re-entry.",
                "Take a fail-safe lock or fail-safe trim that stays latched.",
                about=fit_part.part,
                severity="error",
            )
    for item in given.items:
        if item.kind == "electric-strike" and remains(item) and item.fail == "fail-safe":
            yield Verdict(
                "The fail-safe strike that stays unlatches the stair door and is no answer to re-entry.",
                "Take a fail-safe lock or fail-safe trim that stays latched.",
                about="electric strike",
                severity="error",
            )


RULE = Rule(
    id="stair-re-entry",
    title="Stair re-entry",
    discipline="egress",
    severity="warning",
    basis="IBC 1010.2.7 (2021); NFPA 101, 7.2.1.5.8 (exceptions: four storeys or fewer, selected re-entry), secondary "
    "copies",
    cure="Have the release and its tie-in decided by the authority before ordering.",
    judge=_judge,
    defers=True,
)
