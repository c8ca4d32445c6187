"""Rule: collar and rings pass over the cylinder's thread, and its head does not pass through them."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import HEAD_DIAMETER_MM, INNER_DIAMETER_MM, THREAD_DIAMETER_MM
from hwsched.rules.reading import entry, lock_part
from hwsched.rules.rounding import EQUAL_MM
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    part = lock_part(given, fit)
    if part is None or part.kind != "mortise-cylinder":
        return
    thread, head = part.number_of(THREAD_DIAMETER_MM), part.number_of(HEAD_DIAMETER_MM)
    for fit_part in fit.parts:
        if fit_part.role not in ("collar", "ring"):
            continue
        collar = entry(given, fit_part)
        bore = collar.number_of(INNER_DIAMETER_MM) if collar is not None else None
        if bore is None or thread is None:
            missing = f"{fit_part.part}.inner_diameter_mm" if bore is None else f"{part.number}.thread_diameter_mm"
            yield unknown((f"part {missing}",), fit_part.part)
        elif bore < thread - EQUAL_MM:
            yield Verdict(
                f"Its bore of {length(given, bore)} does not pass over the thread of {length(given, thread)}.",
                values={"bore_mm": bore, "thread_mm": thread, "short_mm": thread - bore},
                about=fit_part.part,
            )
        elif head is not None and bore > head - EQUAL_MM:
            yield Verdict(
                f"The cylinder's head of {length(given, head)} slips through its bore of {length(given, bore)}.",
                values={"bore_mm": bore, "head_mm": head, "short_mm": bore - head},
                about=fit_part.part,
            )
        elif bore - thread > limits["play_mm"] + EQUAL_MM:
            yield Verdict(
                f"Its bore of {length(given, bore)} hangs {length(given, bore - thread)} loose on the thread; "
                f"{length(given, limits['play_mm'])} is the most.",
                values={"bore_mm": bore, "thread_mm": thread, "play_mm": bore - thread},
                about=fit_part.part,
                severity="warning",
            )


RULE = Rule(
    id="collar-bore",
    title="Collar and rings between thread and head",
    discipline="lock-and-cylinder",
    severity="error",
    basis="common practice",
    cure="Take a collar or ring made for the cylinder's thread.",
    judge=_judge,
    slot="lock",
    limits=(
        Limit(
            "play_mm",
            3.0,
            "How loose a collar or ring may sit on the thread.",
            "from memory, unverified",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)
