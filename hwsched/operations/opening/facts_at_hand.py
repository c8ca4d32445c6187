"""Facts of openings that are at hand as they were checked, as the columns that a query is judged by.

Nothing is read here, and nothing judged: what only looks at openings needs no rules. What a query asks of a project is
read by `asked_facts`.
"""

from collections.abc import Callable, Iterable, Sequence
from typing import Any, Final

from hwsched.attributes import AttributeKind
from hwsched.operations.findings.checked import Checked, holds_back
from hwsched.quantities.money import exact_decimal
from hwsched.query import FINDING, PLACE, STATUS, USES, WAIVED, Fact
from hwsched.query.facts import HOLDING, PLACES
from hwsched.survey import ITEM, LEAF, OPENING
from hwsched.values import Finding, Fit, OpeningInput
from hwsched.values.standing import Standing

_STALE: Final = frozenset({"facts-changed", "earlier-version"})
NOT_READ: Final = (None,)
"""What is worked out, before it is read: nobody knows."""
Values = Sequence[Any]


class CheckedFacts:
    """Columns of facts of openings that are at hand as they were checked: nothing is read from the project.

    Parameters
    ----------
    checked : sequence of Checked
        The openings; the sequence is not copied, so that a changed one can be put in its place.
    """

    def __init__(self, checked: Sequence[Checked]) -> None:
        self._checked = checked
        self._columns: dict[Fact, list[Any]] = {}

    def __len__(self) -> int:
        """Return the number of openings."""
        return len(self._checked)

    def column(self, fact: Fact) -> Values:
        """Return the values of a fact; they are kept until somebody says that an opening is another."""
        found = self._columns.get(fact)
        if found is None:
            found = self._columns[fact] = [fact_of(each, fact) for each in self._checked]
        return found

    def renew(self, places: Iterable[int]) -> None:
        """Read the openings at some places anew."""
        for place in places:
            for fact, column in self._columns.items():
                column[place] = fact_of(self._checked[place], fact)


def fact_of(checked: Checked, fact: Fact) -> Any:
    """Return what an opening as it was checked holds of a fact; of leaves and items all that they hold."""
    given, name = checked.given, fact.attribute.name
    if fact.source != "survey":
        return of_checked(checked)[fact]
    if fact == PLACE:
        return tuple(getattr(given.opening, each) for each in PLACES)
    things: Sequence[Any] = {LEAF.name: given.leaves, ITEM.name: given.items}.get(fact.entity, (given.opening,))
    declared = {OPENING.name: OPENING, LEAF.name: LEAF, ITEM.name: ITEM}[fact.entity]
    if any(each.name == name for each in declared.attributes):
        held = tuple(getattr(each, name) for each in things)
    else:
        own = {each.row_id: each.value for each in checked.own if each.attribute.name == name}
        held = tuple(exact(fact.attribute.kind)(own.get(each.id)) for each in things)
    return held if fact.of_rows else held[0]


def of_checked(each: Checked) -> dict[Fact, tuple[Any, ...]]:
    """Return what was worked out of an opening, with what is found at it."""
    return {
        **of_fit(each.fit, each.standing, each.inputs),
        FINDING: (
            *_spoken((f for f in each.findings if not f.waived), judged=each.fit is not None),
            *((HOLDING,) if each.waits or any(map(holds_back, each.findings)) else ()),
        ),
        WAIVED: _spoken((f for f in each.findings if f.waived), judged=each.fit is not None),
    }


def of_fit(fit: Fit | None, standing: Standing, inputs: Sequence[OpeningInput]) -> dict[Fact, tuple[Any, ...]]:
    """Return what an opening's fit is, by its standing, and which parts it uses."""
    words: tuple[str, ...] = (fit.status,) if fit is not None else ("not-judged", standing)
    if fit is None and standing in _STALE:
        words = (*words, "stale")
    used = {part.part for part in fit.parts} if fit is not None else set()
    used |= {choice.part for given in inputs for choice in given.chosen}
    # Of an opening that has no whole fit nobody knows what else it will use.
    whole = fit is not None and fit.status != "to-measure"
    return {STATUS: words, USES: (*sorted(used), *(() if whole else NOT_READ))}


def _spoken(findings: Iterable[Finding], *, judged: bool) -> tuple[Any, ...]:
    """Return rules and severities of findings; without a fit that counts nobody knows what other rules would say."""
    words = dict.fromkeys(word for finding in findings for word in (finding.rule, finding.severity))
    return (*words, *(() if judged else NOT_READ))


def exact(kind: AttributeKind) -> Callable[[Any], Any]:
    """Return what makes a value of the project's own field what its kind holds: money is kept as text."""
    if kind == "money":
        return lambda value: None if value is None else exact_decimal(str(value))
    return lambda value: value
