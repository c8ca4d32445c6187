"""A candidate: a partial fit, and what the rules of a slot say of it."""

from dataclasses import dataclass, replace

from hwsched.cases import Case, Fit, FittedPart, Need, Part, Refusal
from hwsched.cases.fit import Role
from hwsched.rules import judge, rules_in_slot, severity_of
from hwsched.rules.rule import Slot
from hwsched.rules.wording import label_of

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


def judged(case: Case, fit: Fit, slot: Slot, part: str, role: Role) -> Judged:
    """Let the rules of a slot judge a partial fit: an error refuses, a missing fact leaves it unknown."""
    refusals: list[Refusal] = []
    needs: dict[str, None] = {}
    for rule in rules_in_slot(slot):
        if rule.id in case.settings.rules_off:
            continue
        for verdict in judge(rule, case, fit):
            if verdict.needs:
                if rule.severity == "error":
                    needs.update(dict.fromkeys(verdict.needs))
            elif severity_of(rule, verdict) == "error":
                reason = f"{verdict.message} {verdict.cure or rule.cure}"
                refusals.append(Refusal(part, role, rule.id, reason, verdict.values))
    return Judged(fit, tuple(refusals), tuple(needs))


def needs_of(facts: tuple[str, ...], slot: Slot) -> tuple[Need, ...]:
    """Put missing facts into needs."""
    return tuple(Need(fact, label_of(fact), _BLOCKS[slot]) for fact in facts)


def fitted(case: Case, role: Role, part: Part, reason: str, quantity: float = 1.0) -> FittedPart:
    """Return a part in a role; by hand where a person chose it."""
    by_hand = any(choice.role == role and choice.part == part.number for choice in case.chosen)
    return FittedPart(
        role, part.number, part.kind, quantity, reason, part.description, "by-hand" if by_hand else "fitted"
    )


def with_parts(fit: Fit, *parts: FittedPart) -> Fit:
    """Add parts to a partial fit."""
    return replace(fit, parts=(*fit.parts, *parts))


def offered(case: Case, role: Role, *kinds: str) -> tuple[Part, ...]:
    """Return the parts that may take a role: those chosen by hand, else all of the kinds that are not superseded."""
    by_hand = [choice.part for choice in case.chosen if choice.role == role]
    if by_hand:
        return tuple(part for number in by_hand if (part := case.catalogue.get(number)) is not None)
    return tuple(part for part in case.catalogue.of_kind(*kinds) if not part.superseded_by)


def by_hand(case: Case, role: Role) -> bool:
    """Tell whether a person chose the part of a role."""
    return any(choice.role == role for choice in case.chosen)


def cost_of(case: Case, fit: Fit) -> tuple[int, float]:
    """Return how many parts have no price, and the sum of the others, in catalogue currency."""
    unpriced, total = 0, 0.0
    for fitted_part in fit.parts:
        part = case.catalogue.get(fitted_part.part)
        if part is None or part.list_price is None:
            unpriced += 1
        else:
            total += part.list_price * fitted_part.quantity
    return unpriced, round(total, 6)
