"""Rule: no pocket, cut-out or bored-lock bore is made on site in a rated leaf."""

from collections.abc import Iterable

from hwsched.rules.reading import rated
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    carries = rated(given)
    if carries is False:
        return
    for hole in fit.holes:
        # NFPA 80's job-site preparations are round holes for surface hardware and function holes; pockets and lock
        # bores are shop work (secondary copies).
        if hole.purpose not in ("pocket", "bore"):
            continue
        if carries is None:
            yield unknown(("opening.rating",), hole.name)
        else:
            what = "pocket, not a round hole" if hole.purpose == "pocket" else "lock bore"
            yield Verdict(
                f"The {hole.name} is a {what}: stop, this is not a job-site preparation of a rated leaf.",
                about=hole.name,
            )


RULE = Rule(
    id="rated-cut",
    title="No pocket or lock bore on site in a rated leaf",
    discipline="fire-door",
    severity="error",
    basis="NFPA 80, 4.1.3.1 and 5.1.5: mortise pockets, edge cut-outs and lock bores are shop work under label service",
    cure="Choose a unit that needs round holes only, or have a field modification approved in advance by the "
    "listing laboratory.",
    judge=_judge,
    slot="unit",
    defers=True,
)
