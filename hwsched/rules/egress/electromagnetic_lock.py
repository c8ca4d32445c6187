"""Rule: an electromagnetic lock is a special arrangement with conditions of its own."""

from collections.abc import Iterable

from hwsched.rules.reading import entry, remains
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    stays = any(i.kind == "electromagnetic-lock" and remains(i) for i in given.items)
    fit_part = any(part.kind == "electromagnetic-lock" for f in fit.parts if (part := entry(given, f)))
    # Unknown counts as an egress path: the arrangement has to be approved before anybody finds out otherwise.
    if (stays or fit_part) and given.opening.egress != "none":
        yield Verdict(
            "An electromagnetic lock holds this opening. It is fail-safe by nature and needs a release of its own: "
            "sensor or switch in the hardware, a manual release 40 to 48 in high within 5 ft, release on loss of power "
            "and on the fire alarm.",
            about="electromagnetic lock",
        )


RULE = Rule(
    id="electromagnetic-lock",
    title="Electromagnetic lock: release conditions",
    discipline="egress",
    severity="warning",
    basis="IBC 1010.1.9.8 and 1010.1.9.9 (2015), 1010.2.11 and 1010.2.12 (2021); NFPA 101, 7.2.1.6.2, secondary copies",
    cure="Check occupancy, alarm tie-in, signs and release devices, and get approval before ordering. A battery does "
    "not make it fail-secure; for its suppression use a varistor, a plain diode delays release.",
    judge=_judge,
    defers=True,
)
