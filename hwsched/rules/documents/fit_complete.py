"""Rule: a packet is issued only for an opening whose fit is complete."""

from collections.abc import Iterable

from hwsched.rules.reading import SURVEY
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if fit.status == "does-not-fit":
        miss = fit.nearest_miss
        near = f" Nearest: {miss.part}. {miss.reason}" if miss is not None else ""
        said = f"No combination of parts fits.{near}"
        if miss is not None and miss.part == SURVEY:
            said = f"Nothing is fitted to a survey that contradicts itself. {miss.reason}"
        yield Verdict(
            said,
            values={"refused": float(len(fit.refused))},
            about=miss.part if miss is not None else "",
        )
    elif fit.status == "to-measure":
        needs = tuple(need.fact for need in fit.needs)
        named = "; ".join(need.label for need in fit.needs)
        yield Verdict(
            f"The fit is unknown: needs {named}." if named else "The fit is unknown.",
            "Complete the survey and fit again.",
            needs=needs,
            severity="warning",
        )


RULE = Rule(
    id="fit-complete",
    title="Fit complete before a packet is issued",
    discipline="documents",
    severity="error",
    basis="job description: nothing is guessed, every refusal says its number",
    cure="Add a part that fits to the catalogue, or change what stands in the way.",
    judge=_judge,
)
