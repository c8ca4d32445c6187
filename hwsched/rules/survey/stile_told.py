"""Rule: where a stile was measured, or a leaf is of aluminium, it is known how the leaf is built, and its stile."""

from collections.abc import Iterable

from hwsched.rules.reading import leafless, lock_leaf
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput

_WITH_STILE = ("narrow-stile", "stile-and-rail")


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf = lock_leaf(given)
    # A gate's stile is one whatever its construction is called.
    if leaf is None or leafless(given) or leaf.material == "steel-gate":
        return
    needs = []
    if leaf.construction is None and (leaf.stile_mm is not None or leaf.material == "aluminium"):
        needs.append("leaf.construction")
    # An aluminium leaf is built of stiles, but for one that is said to be flush.
    if leaf.material == "aluminium" and leaf.stile_mm is None and leaf.construction in (None, *_WITH_STILE):
        needs.append("leaf.stile_mm")
    if needs:
        yield unknown(tuple(needs), "leaf")


RULE = Rule(
    id="stile-told",
    title="Stile and construction of the leaf",
    discipline="survey",
    severity="error",
    basis="common practice: behind a stile lies glass or a panel; aluminium leaves are built of stiles",
    cure="Look how the leaf is built, and measure its lock stile.",
    judge=_judge,
)
