"""A candidate: a partial fit, and what the rules of a slot say of it."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from math import inf
from typing import get_args

from hwsched.attributes.of_parts import TextName
from hwsched.fitting.order_units import lacking, price_told
from hwsched.language import to_phrase
from hwsched.quantities.money import ZERO, Exchange, exact_decimal, product, summed
from hwsched.rules import each_verdict, rules_in_slot, severity_of
from hwsched.rules.rule import OpeningRule, Slot
from hwsched.rules.wording import label_of
from hwsched.values import Fit, FitPart, Need, OpeningInput, Part, Refusal, Role, Source

_UNRANKED = 100
"""What a part without preference counts; ranks go up to 99."""
_UNITS = ("surface-unit", "edge-unit")
"""Kinds that serve alike; parts of any other kind serve alike only among themselves."""
BLOCKS = {
    "lock": to_phrase("the choice of cylinder or lock"),
    "unit": to_phrase("the control unit and its place"),
    "power": to_phrase("the power source"),
    "whole": to_phrase("the opening"),
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
        # What cannot be told in millimetres, such as a wrong form, is farther off than anything that can.
        short = [abs(refusal.values.get("short_mm", inf)) for refusal in self.refusals]
        return len(self.refusals), max(short, default=inf)


def judged(
    given: OpeningInput,
    fit: Fit,
    slot: Slot,
    part: str,
    role: Role,
    said: str = "",
    rules: Sequence[OpeningRule] | None = None,
) -> Judged:
    """Let the rules of a slot judge a partial fit: an error refuses, a missing fact leaves it unknown.

    Parameters
    ----------
    given, fit : OpeningInput, Fit
        The input, and what is chosen so far.
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
    for rule, verdict in each_verdict(rules_in_slot(slot) if rules is None else rules, given, given, fit):
        if verdict.needs:
            # A warning that cannot be judged yet keeps nobody from choosing the part.
            if rule.severity == "error":
                needs.update(dict.fromkeys(verdict.needs))
        elif severity_of(rule, verdict) == "error":
            about = "" if verdict.about in ("", part) else f"{_named(verdict.about)}: "
            reason = f"{said}{about}{verdict.message} {verdict.cure or rule.cure}"
            refusals.append(Refusal(part, role, rule.id, reason, verdict.values))
    return Judged(fit, tuple(refusals), tuple(needs))


def _named(about: str) -> str:
    """Name what a verdict is about to people: a role is no word of theirs with its hyphen."""
    return about.replace("-", " ") if about in get_args(Role) else about


def judged_on(
    given: OpeningInput, before: Judged, slot: Slot, part: str, role: Role, rest: Sequence[OpeningRule], said: str = ""
) -> Judged:
    """Let the rest of a slot's rules judge what the others judged before: equal to what `judged` says by all of them.

    Parameters
    ----------
    before : Judged
        By all rules of the slot but the rest.
    rest : sequence of Rule
        Those that did not speak yet.
    """
    now = judged(given, before.fit, slot, part, role, said, rules=rest)
    if not now.refusals and not now.needs:
        return before
    if now.needs and before.needs:
        # In which order facts are asked follows from the order of the rules, which needs do not name.
        return judged(given, before.fit, slot, part, role, said)
    refusals = now.refusals
    if before.refusals and refusals:
        place = {rule.id: at for at, rule in enumerate(rules_in_slot(slot))}
        refusals = tuple(sorted((*before.refusals, *refusals), key=lambda refusal: place[refusal.rule]))
    return Judged(before.fit, refusals or before.refusals, now.needs or before.needs)


def needs_of(facts: Iterable[str], slot: Slot) -> tuple[Need, ...]:
    """Put missing facts into needs."""
    return tuple(Need(fact, label_of(fact), BLOCKS[slot]) for fact in dict.fromkeys(facts))


def fit_part(given: OpeningInput, role: Role, part: Part, reason: str, quantity: float = 1.0) -> FitPart:
    """Return a part in a role; by hand or of the set where a person chose it so."""
    chosen = next((c for c in given.chosen if c.role == role and c.part == part.number), None)
    source: Source = "worked-out" if chosen is None else "set" if chosen.source == "set" else "by-hand"
    return FitPart(role, part.number, part.kind, quantity, reason, part.description, source)


def chosen_by(given: OpeningInput, role: Role) -> str:
    """Say who chose the part of a role: a person for this opening, or its hardware set."""
    of_set = any(choice.role == role and choice.source == "set" for choice in given.chosen)
    return "a line of its hardware set" if of_set else "chosen by hand"


def with_parts(fit: Fit, *parts: FitPart) -> Fit:
    """Add parts to a partial fit."""
    return replace(fit, parts=(*fit.parts, *parts))


def offered(given: OpeningInput, role: Role, *kinds: str) -> tuple[Part, ...]:
    """Return the parts that may take a role: those chosen by hand, else all of the kinds that are not superseded."""
    chosen = [choice.part for choice in given.chosen if choice.role == role]
    if chosen:
        return tuple(part for number in chosen if (part := given.catalogue.get(number)) is not None)
    # By hand also a superseded part: it may lie on the shelf, and a rule says that it is superseded.
    return tuple(part for part in given.catalogue.of_kind(*kinds) if not part.superseded_by)


def offered_of(given: OpeningInput, role: Role, name: TextName, value: str | None) -> list[Part]:
    """Return the parts of the kind that is called as its role which may take it and have an attribute of that value."""
    if any(choice.role == role for choice in given.chosen):
        return [part for part in offered(given, role, role) if part.text_of(name) == value]
    return [part for part in given.catalogue.of_value(role, name, value) if not part.superseded_by]


def by_hand(given: OpeningInput, role: Role) -> bool:
    """Tell whether a person chose the part of a role."""
    return any(choice.role == role for choice in given.chosen)


def cheapest(given: OpeningInput, parts: Iterable[Part]) -> Part | None:
    """Return the part of least price, of equals the one whose number comes first; those of unknown worth come last."""
    exchange = given.exchange
    # Without a price it comes last, not first: unknown is not free of charge.
    return min(parts, key=lambda part: (worth(part, exchange), part.number), default=None)


def worth(part: Part, exchange: Exchange) -> tuple[bool, Decimal]:
    """Return what parts are ranked by: whether its price cannot be told, and that of one in the exchange's currency.

    Of one piece or metre: the price of a box is no price of a screw.
    """
    price = price_told(part)
    if price is None:
        return True, ZERO
    if part.currency == exchange.currency:
        return False, price
    factor = exchange.factor(part.currency)
    return (True, ZERO) if factor is None else (False, product(price, factor))


def cost_of(given: OpeningInput, fit: Fit) -> tuple[int, Decimal]:
    """Return how many parts have no price that can be told, and the exact sum of the others; tools are not used up.

    Told in the currency of `OpeningInput.exchange`: prices in another one are converted by the project's rates, never
    added.
    """
    exchange = given.exchange
    unknown, amounts = 0, []
    for fit_part in fit.parts:
        # A jig serves many openings: charged to each, it would decide which lock is cheapest.
        if fit_part.role == "tool":
            continue
        part = given.catalogue.get(fit_part.part)
        untold, amount = (True, ZERO) if part is None else worth(part, exchange)
        if untold:
            unknown += 1
        else:
            quantity = fit_part.quantity
            # Nearly all quantities are one, and exact products are what ranking spends its time on.
            amounts.append(amount if quantity == 1.0 else product(amount, exact_decimal(quantity)))
    return unknown, summed(amounts)


def priced(given: OpeningInput, fit: Fit) -> Fit:
    """Write into a fit what it costs, in which currency, and what is missing to know the whole."""
    return replace(
        fit, cost=cost_of(given, fit)[1], currency=given.exchange.currency or "", cost_needs=cost_needs(given, fit)
    )


def cost_needs(given: OpeningInput, fit: Fit) -> tuple[str, ...]:
    """Name what is missing to tell the price of every part, each need once, in the order of the parts."""
    exchange = given.exchange
    needs: dict[str, None] = {}
    for fit_part in fit.parts:
        if fit_part.role == "tool":
            continue
        part = given.catalogue.get(fit_part.part)
        if part is None or part.list_price is None:
            needs[f"list price ({fit_part.part})"] = None
        elif price_told(part) is None:
            needs[lacking(part)] = None
        elif missing := exchange.missing(part.currency):
            needs[missing if part.currency else f"{missing} ({part.number})"] = None
    return tuple(needs)


def holes_in(fit: Fit) -> int:
    """Return how many holes are made, fixing screws left out."""
    return sum(hole.count for hole in fit.holes if hole.purpose != "fixing")


def rank_of(given: OpeningInput, fit: Fit) -> tuple[float | Decimal, ...]:
    """Return what a project's preference compares first, then cost and holes.

    A cost that cannot be told whole comes after every one that can: what is missing is said in the fit's cost.
    """
    unpriced, cost = cost_of(given, fit)
    holes = float(holes_in(fit))
    if given.settings.prefer == "holes":
        # Unpriced parts before the cost: a sum that leaves out the dearest part looks cheapest.
        return holes, float(unpriced), cost
    if given.settings.prefer == "stock":
        return *_out_of_stock(given, fit), float(unpriced), cost, holes
    if given.settings.prefer == "preferred":
        return _liking(given, fit), float(unpriced), cost, holes
    return float(unpriced), cost, holes


def _out_of_stock(given: OpeningInput, fit: Fit) -> tuple[float, float]:
    """Count the parts of which too few are on hand, then those that nobody has counted."""
    short = uncounted = 0
    for fit_part in fit.parts:
        part = given.catalogue.get(fit_part.part)
        if fit_part.role == "tool" or part is None:
            continue
        # Never counted is not the same as none on hand: it is told apart, and ranks behind what is known to be there.
        short += part.stock is not None and part.stock < fit_part.quantity
        uncounted += part.stock is None
    return float(short), float(uncounted)


def _liking(given: OpeningInput, fit: Fit) -> float:
    """Sum the ranks of the parts; one without a rank counts as the last, where any that serves alike has one.

    Among parts of which nobody prefers any none counts: what goes with a preferred part must not outweigh it.
    """
    total = 0
    for part in (given.catalogue.get(each.part) for each in fit.parts if each.role != "tool"):
        if part is not None and not given.catalogue.ranked.isdisjoint(_UNITS if part.kind in _UNITS else (part.kind,)):
            total += part.preferred or _UNRANKED
    return float(total)


def numbers_in(fit: Fit) -> tuple[str, ...]:
    """Return the parts of a fit, which tell equals apart."""
    return tuple(part.part for part in fit.parts)


def missing_for_better(given: OpeningInput, good: Sequence[Judged], others: Iterable[Judged]) -> tuple[str, ...]:
    """Name what the survey lacks to know whether a candidate would serve better than the best that is known to serve.

    Without a good candidate nothing is named: then the search itself says what is missing.
    """
    lacking = [each for each in others if each.surveyable] if good else []
    if not lacking:
        return ()
    best = rank_of(given, good[0].fit)
    # Only where it would win: a fact that can change nothing is not worth a second visit.
    better = [each.surveyable for each in lacking if rank_of(given, each.fit) < best]
    return min(better, key=lambda needs: (len(needs), needs), default=())
