"""Rule: delayed egress is a special arrangement with conditions of its own."""

from collections.abc import Iterable

from hwsched.rules.reading import remains
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if not any(item.kind == "delayed-egress" and remains(item) for item in given.items):
        return
    if given.opening.egress is None:
        yield unknown(("opening.egress",), "delayed egress lock")
        return
    if given.opening.egress == "none":
        return
    yield Verdict(
        f"Delayed egress: it lets go within {limits['delay_s']:g} s of a push of {limits['force_n']:.0f} N (15 lbf) "
        f"held for at most {limits['push_s']:g} s, cannot be stopped, sounds at the door, is armed again by hand, and "
        f"lets go at once on the sprinkler, on detection and on loss of power; its sign says so in letters 25.4 mm "
        f"(1 in) high. Only in the occupancies that allow it, one such door a path.",
        values={"delay_s": limits["delay_s"], "force_n": limits["force_n"], "push_s": limits["push_s"]},
        about="delayed egress lock",
    )


RULE = Rule(
    id="delayed-egress",
    title="Delayed egress: release conditions",
    discipline="egress",
    severity="warning",
    basis="NFPA 101, 7.2.1.6.1; IBC 1010.2.13 (2021), secondary copies",
    cure="Check occupancy, sprinkler and detection, tie-in, sign and release, and get approval before ordering. The "
    "new lock or unit must not hold the opening when the delay is over.",
    judge=_judge,
    limits=(
        Limit(
            "delay_s",
            15.0,
            "Longest delay; 30 s only where the authority approves.",
            "NFPA 101, 7.2.1.6.1",
            unit="s",
            low=0.0,
            high=60.0,
        ),
        Limit("push_s", 3.0, "Longest push that starts it.", "NFPA 101, 7.2.1.6.1", unit="s", low=0.0, high=15.0),
        Limit(
            "force_n",
            66.7,
            "Greatest force that starts it: 15 lbf.",
            "NFPA 101, 7.2.1.6.1",
            unit="N",
            low=1.0,
            high=250.0,
        ),
    ),
    defers=True,
)
