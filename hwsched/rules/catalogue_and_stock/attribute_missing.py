"""Rule: the parts of the fit have the attributes that their kind requires."""

from collections.abc import Iterable

from hwsched.catalogue import kind_of
from hwsched.rules.reading import entry
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    for fit_part in fit.parts:
        part = entry(given, fit_part)
        kind = kind_of(part.kind) if part is not None else None
        if part is None:
            continue
        if kind is None:
            yield Verdict(f"Its kind {part.kind} is not declared.", about=part.number)
            continue
        lacking = [a.name for a in kind.attributes if a.required and part.attributes.get(a.name) is None]
        if lacking:
            yield unknown(tuple(f"part {part.number}.{name}" for name in lacking), part.number)


RULE = Rule(
    id="attribute-missing",
    title="Required attributes of the parts",
    discipline="catalogue-and-stock",
    severity="warning",
    basis="the declaration of the part kinds",
    cure="Complete the part's line in the catalogue.",
    judge=_judge,
)
