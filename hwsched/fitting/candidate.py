"""A candidate: a partial fit, and what the rules of a slot say of it."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from math import inf

from hwsched.quantities.money import ZERO, Exchange, exact_decimal, product, summed
from hwsched.rules import judge, rules_in_slot, severity_of
from hwsched.rules.rule import Rule, Slot
from hwsched.rules.wording import label_of
from hwsched.values import Case, Fit, FittedPart, Need, Part, Refusal, Role, Source

_UNRANKED = 100
"""What a part without preference counts; ranks go up to 99."""
_UNITS = ("surface-unit", "edge-unit")
"""Kinds that serve alike; parts of any other kind serve alike only among themselves."""
_BLOCKS = {
    "lock": "the choice of cylinder or lock",
    "unit": "the control unit and its place",
    "power": "the power source",
    "whole": "the opening",
}


@dataclass(frozen=True, slots=True)
class Judged:
    """A candidate and what speaks against it."""

    fit: Fit
    refusals: tuple[Refusal, ...]
    needs: tuple[str, ...]
    """Facts without which its rules cannot judge."""

    @property
    def good(self) -> bool:
        """Whether nothing speaks against it and nothing is missing."""
        return not self.refusals and not self.needs

    @property
    def surveyable(self) -> tuple[str, ...]:
        """Missing facts of the survey, where it is only those that keep it from being good or bad."""
        return () if self.refusals else tuple(need for need in self.needs if not need.startswith("part "))

    def miss(self) -> tuple[int, float]:
        """Rank of a refused candidate: how many rules refuse it, and by how much at most it is short."""
        short = [abs(refusal.values.get("short_mm", inf)) for refusal in self.refusals]
        return len(self.refusals), max(short, default=inf)


def judged(
    case: Case, fit: Fit, slot: Slot, part: str, role: Role, said: str = "", rules: Sequence[Rule] | None = None
) -> Judged:
    """Let the rules of a slot judge a partial fit: an error refuses, a missing fact leaves it unknown.

    Parameters
    ----------
    case, fit : Case, Fit
        The case, and what is chosen so far.
    slot : Slot
        Whose rules speak.
    part, role : str
        The candidate that refusals name.
    said : str
        Put before every reason, such as the place that was tried.
    rules : sequence of Rule, optional
        Those that speak in place of the slot's.
    """
    refusals: list[Refusal] = []
    needs: dict[str, None] = {}
    for rule in rules_in_slot(slot) if rules is None else rules:
        if rule.id in case.settings.rules_off:
            continue
        for verdict in judge(rule, case, fit):
            if verdict.needs:
                if rule.severity == "error":
                    needs.update(dict.fromkeys(verdict.needs))
            elif severity_of(rule, verdict) == "error":
                about = "" if verdict.about in ("", part) else f"{verdict.about}: "
                reason = f"{said}{about}{verdict.message} {verdict.cure or rule.cure}"
                refusals.append(Refusal(part, role, rule.id, reason, verdict.values))
    return Judged(fit, tuple(refusals), tuple(needs))


def needs_of(facts: Iterable[str], slot: Slot) -> tuple[Need, ...]:
    """Put missing facts into needs."""
    return tuple(Need(fact, label_of(fact), _BLOCKS[slot]) for fact in dict.fromkeys(facts))


def fitted(case: Case, role: Role, part: Part, reason: str, quantity: float = 1.0) -> FittedPart:
    """Return a part in a role; by hand or of the set where a person chose it so."""
    chosen = next((c for c in case.chosen if c.role == role and c.part == part.number), None)
    source: Source = "fitted" if chosen is None else "set" if chosen.source == "set" else "by-hand"
    return FittedPart(role, part.number, part.kind, quantity, reason, part.description, source)


def chosen_by(case: Case, role: Role) -> str:
    """Say who chose the part of a role: a person for this opening, or its hardware set."""
    of_set = any(choice.role == role and choice.source == "set" for choice in case.chosen)
    return "a line of its hardware set" if of_set else "chosen by hand"


def with_parts(fit: Fit, *parts: FittedPart) -> Fit:
    """Add parts to a partial fit."""
    return replace(fit, parts=(*fit.parts, *parts))


def offered(case: Case, role: Role, *kinds: str) -> tuple[Part, ...]:
    """Return the parts that may take a role: those chosen by hand, else all of the kinds that are not superseded."""
    chosen = [choice.part for choice in case.chosen if choice.role == role]
    if chosen:
        return tuple(part for number in chosen if (part := case.catalogue.get(number)) is not None)
    return tuple(part for part in case.catalogue.of_kind(*kinds) if not part.superseded_by)


def by_hand(case: Case, role: Role) -> bool:
    """Tell whether a person chose the part of a role."""
    return any(choice.role == role for choice in case.chosen)


def cheapest(case: Case, parts: Iterable[Part]) -> Part | None:
    """Return the part of least price, of equals the one whose number comes first; those of unknown worth come last."""
    exchange = case.exchange
    return min(parts, key=lambda part: (worth(part, exchange), part.number), default=None)


def worth(part: Part, exchange: Exchange) -> tuple[bool, Decimal]:
    """Return what parts are ranked by: whether its price cannot be told, and the price in the exchange's currency."""
    if part.list_price is None:
        return True, ZERO
    if part.currency == exchange.currency:
        return False, part.list_price
    factor = exchange.factor(part.currency)
    return (True, ZERO) if factor is None else (False, product(part.list_price, factor))


def cost_of(case: Case, fit: Fit) -> tuple[int, Decimal]:
    """Return how many parts have no price that can be told, and the exact sum of the others; tools are not used up.

    Told in the currency of `Case.exchange`: prices in another one are converted by the project's rates, never added.
    """
    exchange = case.exchange
    unknown, amounts = 0, []
    for fitted_part in fit.parts:
        if fitted_part.role == "tool":
            continue
        part = case.catalogue.get(fitted_part.part)
        lacking, amount = (True, ZERO) if part is None else worth(part, exchange)
        if lacking:
            unknown += 1
        else:
            quantity = fitted_part.quantity
            amounts.append(amount if quantity == 1.0 else product(amount, exact_decimal(quantity)))
    return unknown, summed(amounts)


def priced(case: Case, fit: Fit) -> Fit:
    """Write into a fit what it costs, in which currency, and what is missing to know the whole."""
    return replace(
        fit, cost=cost_of(case, fit)[1], currency=case.exchange.currency or "", cost_needs=cost_needs(case, fit)
    )


def cost_needs(case: Case, fit: Fit) -> tuple[str, ...]:
    """Name what is missing to tell the price of every part, each need once, in the order of the parts."""
    exchange = case.exchange
    needs: dict[str, None] = {}
    for fitted_part in fit.parts:
        if fitted_part.role == "tool":
            continue
        part = case.catalogue.get(fitted_part.part)
        if part is None or part.list_price is None:
            needs[f"list price ({fitted_part.part})"] = None
        elif missing := exchange.missing(part.currency):
            needs[missing if part.currency else f"{missing} ({part.number})"] = None
    return tuple(needs)


def holes_in(fit: Fit) -> int:
    """Return how many holes are made, fixing screws left out."""
    return sum(hole.count for hole in fit.holes if hole.purpose != "fixing")


def rank_of(case: Case, fit: Fit) -> tuple[float | Decimal, ...]:
    """Return what a project's preference compares first, then cost and holes.

    A cost that cannot be told whole comes after every one that can: what is missing is said in the fit's cost.
    """
    unpriced, cost = cost_of(case, fit)
    holes = float(holes_in(fit))
    if case.settings.prefer == "holes":
        return holes, float(unpriced), cost
    if case.settings.prefer == "stock":
        return *_out_of_stock(case, fit), float(unpriced), cost, holes
    if case.settings.prefer == "preferred":
        return _liking(case, fit), float(unpriced), cost, holes
    return float(unpriced), cost, holes


def _out_of_stock(case: Case, fit: Fit) -> tuple[float, float]:
    """Count the parts of which too few are on hand, then those that nobody has counted."""
    short = uncounted = 0
    for fitted_part in fit.parts:
        part = case.catalogue.get(fitted_part.part)
        if fitted_part.role == "tool" or part is None:
            continue
        short += part.stock is not None and part.stock < fitted_part.quantity
        uncounted += part.stock is None
    return float(short), float(uncounted)


def _liking(case: Case, fit: Fit) -> float:
    """Sum the ranks of the parts; one without a rank counts as the last, where any that serves alike has one.

    Among parts of which nobody prefers any none counts: what goes with a preferred part must not outweigh it.
    """
    total = 0
    for part in (case.catalogue.get(each.part) for each in fit.parts if each.role != "tool"):
        if part is not None and not case.catalogue.ranked.isdisjoint(_UNITS if part.kind in _UNITS else (part.kind,)):
            total += part.preferred or _UNRANKED
    return float(total)


def numbers_in(fit: Fit) -> tuple[str, ...]:
    """Return the parts of a fit, which tell equals apart."""
    return tuple(part.part for part in fit.parts)


def missing_for_better(case: Case, good: Sequence[Judged], others: Iterable[Judged]) -> tuple[str, ...]:
    """Name what the survey lacks to know whether a candidate would serve better than the best that is known to serve.

    Without a good candidate nothing is named: then the search itself says what is missing.
    """
    if not good:
        return ()
    best = rank_of(case, good[0].fit)
    better = [each.surveyable for each in others if each.surveyable and rank_of(case, each.fit) < best]
    return min(better, key=lambda needs: (len(needs), needs), default=())
