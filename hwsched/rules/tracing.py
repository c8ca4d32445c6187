"""Which facts a rule looks at: it is run over a case that writes down what is read of it.

What the rules say is theirs, the watching stands in `hwsched.values.watching`.
"""

from dataclasses import dataclass
from typing import Any

from hwsched.rules.impossible_facts import without_impossible
from hwsched.rules.rule import OpeningRule, Verdict
from hwsched.rules.speaking import judge
from hwsched.values import Fit, OpeningInput
from hwsched.values.watching import ITEM, LEAF, OPENING, Watch


@dataclass(frozen=True, slots=True)
class UsedFact:
    """A fact of the survey that a rule looked at."""

    entity: str
    """opening, leaf, existing_item."""
    row_id: str
    attribute: str
    value: Any


@dataclass(frozen=True, slots=True)
class Traced:
    """What a rule said, and what it looked at."""

    rule: OpeningRule
    verdicts: tuple[Verdict, ...]
    facts: tuple[UsedFact, ...]


def traced(rule: OpeningRule, given: OpeningInput, fit: Fit) -> Traced:
    """Let one rule speak and note the facts that it reads.

    Parameters
    ----------
    rule : Rule
        Any rule of openings.
    given, fit : OpeningInput, Fit
        As for `hwsched.rules.judge`.

    Raises
    ------
    RuleError
        When the rule falls over.
    """
    sound = given if rule.sees_all else without_impossible(given)
    watch = Watch(sound)
    verdicts = judge(rule, watch.given, fit, settings=watch.given.settings)
    rows: dict[tuple[str, str], Any] = {(OPENING, sound.opening.id): sound.opening}
    rows.update(((LEAF, leaf.id), leaf) for leaf in sound.leaves)
    rows.update(((ITEM, item.id), item) for item in sound.items)
    facts = tuple(
        UsedFact(entity, row_id, name, getattr(rows[entity, row_id], name)) for entity, row_id, name in watch.rows
    )
    return Traced(rule, verdicts, facts)
