"""Rule: one movement from inside releases everything that holds the leaf."""

from collections.abc import Iterable

from hwsched.rules.reading import LATCHING, lock_leaf, on_leaf, remains
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf = lock_leaf(given)
    if leaf is None or given.opening.egress == "none":
        return
    holds = [i for i in given.items if i.kind in LATCHING and remains(i) and on_leaf(i, leaf)]
    # An exit device with a rim cylinder may be surveyed as the device and as the lock that its cylinder works.
    device = sum(i.kind == "exit-device" for i in holds)
    count = len(holds) - (1 if device and any(i.kind == "lock" and i.lock_form == "rim" for i in holds) else 0)
    if count <= limits["holds"]:
        return
    if given.opening.egress is None:
        yield unknown(("opening.egress",), "egress")
        return
    kinds = ", ".join((i.kind or "").replace("-", " ") for i in holds)
    yield Verdict(
        f"{count} things hold this leaf ({kinds}); from inside one movement must release all of them.",
        values={"holds": float(count), "allowed": limits["holds"]},
        about="egress",
    )


RULE = Rule(
    id="one-motion",
    title="One motion opens from inside",
    discipline="egress",
    severity="warning",
    basis="IBC 1010.2.1 (2021), text; NFPA 101, 7.2.1.5.10, secondary copy (existing doors may differ)",
    cure="Show that one movement releases all, or remove the second bolt. Add none.",
    judge=_judge,
    limits=(
        Limit(
            "holds",
            1.0,
            "Things that may hold the leaf without a question.",
            "IBC 1010.2.1 (2021)",
            unit="",
            low=0.0,
            high=10.0,
        ),
    ),
    defers=True,
)
