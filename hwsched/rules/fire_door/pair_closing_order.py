"""Rule: the leaves of a pair close in the order that astragal and bolts want, and something sees to it."""

from collections.abc import Iterable

from hwsched.rules.reading import rated, remains, stop_side
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, Item, OpeningInput

_ABOUT = "closing order"
_OTHER = {"active": "inactive", "inactive": "active"}


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if given.opening.form != "pair":
        return
    wanted: dict[str, str] = {}
    needs: list[str] = []
    for item in given.items:
        if not remains(item):
            continue
        if item.kind == "astragal" and item.face != "edge":
            missing = [f"existing_item.{name}" for name in ("leaf", "face") if getattr(item, name) is None]
            if given.opening.hand is None:
                missing.append("opening.hand")
            needs += missing
            if not missing and item.leaf in _OTHER and item.face in ("inside", "key"):
                wanted.setdefault(_first(given, item), "the astragal")
        elif item.kind == "flush-bolt" and item.bolt_form == "automatic":
            # The closing active leaf throws them: the inactive one has to stand in its place by then.
            wanted.setdefault("inactive", "the automatic bolts")
    if needs:
        yield unknown(tuple(needs), _ABOUT)
    if not wanted:
        return
    if len(wanted) > 1:
        yield Verdict("Astragal and bolts want the leaves closed in opposite orders.", about=_ABOUT)
        return
    ((leaf, why),) = wanted.items()
    order = given.opening.closes_first
    if order is None:
        yield unknown(("opening.closes_first",), _ABOUT)
    elif order != leaf:
        yield Verdict(
            f"By {why} the {leaf} leaf must close first; "
            f"{'in any order it may come last' if order == 'any' else f'the {order} leaf does'}.",
            about=_ABOUT,
        )
    # A pair that people close by hand can be closed in order; one that closes by itself needs something for it.
    if rated(given) and not any(i.kind == "coordinator" and remains(i) for i in given.items):
        yield Verdict(
            f"By {why} the {leaf} leaf must close first, and the survey shows no coordinator that sees to it.",
            about="coordinator",
            severity="warning",
        )


def _first(given: OpeningInput, astragal: Item) -> str:
    """Return the leaf that must close first.

    A leaf closes toward its stop. A lip on the stop side would strike the other leaf if that stood there already, so
    its own leaf goes first; a lip on the other face lies over the other leaf, so its own goes last.
    """
    own = astragal.leaf or ""
    return own if astragal.face == stop_side(given) else _OTHER[own]


RULE = Rule(
    id="pair-closing-order",
    title="Order in which a pair closes",
    discipline="fire-door",
    severity="error",
    basis="geometry of an overlapping astragal; NFPA 80, chapter 6: a coordinator where leaves must close in "
    "order, from "
    "memory, unverified",
    cure="Have a listed coordinator fitted or set, or the astragal moved to the other leaf or face.",
    judge=_judge,
    defers=True,
)
