"""Rule: where the catalogue is silent on a part's template, it is said that the practice of the trade is taken."""

from collections.abc import Iterable

from hwsched.catalogue import kind_of
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.solid.templates import taken
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    for part, names in taken(given, fit):
        kind = kind_of(part.kind)
        labels = [kind.attribute(name).label if kind is not None else name for name in names]
        said = ", ".join(f"{label[:1].lower()}{label[1:]}" for label in labels)
        yield Verdict(
            f"The catalogue does not give of {part.number}: {said}; common practice is taken, unverified for it.",
            f"Take them from the template of {part.number} into the catalogue before anything is drilled.",
            about=part.number,
        )


RULE = Rule(
    id="template-known",
    title="Template of the parts in the catalogue",
    discipline="catalogue-and-stock",
    severity="note",
    basis="a part is drilled for by its own template; common practice where that is not known",
    cure="Take sizes and places from the part's template into the catalogue.",
    judge=_judge,
)
