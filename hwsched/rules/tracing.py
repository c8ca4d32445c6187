"""Which facts a rule looks at: it is run over a case that writes down what is read of it.

Here belongs the watching only; what the rules say is theirs.
"""

from dataclasses import dataclass, fields, replace
from functools import cache
from typing import Any

from hwsched.cases import Case, Fit, Item, Leaf, Opening
from hwsched.rules.judging import judge
from hwsched.rules.rule import Rule, Verdict
from hwsched.rules.trusted import trusted

_QUIET = frozenset({"id", "mark"})


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

    rule: Rule
    verdicts: tuple[Verdict, ...]
    facts: tuple[UsedFact, ...]


def traced(rule: Rule, case: Case, fit: Fit) -> Traced:
    """Let one rule speak and note the facts that it reads.

    Parameters
    ----------
    rule : Rule
        Any rule of openings.
    case, fit : Case, Fit
        As for `hwsched.rules.judge`.

    Raises
    ------
    RuleError
        When the rule falls over.
    """
    read: dict[tuple[str, str, str], None] = {}
    sound = case if rule.sees_all else trusted(case)
    watched = replace(
        sound,
        opening=_watched(Opening, "opening", sound.opening, read),
        leaves=tuple(_watched(Leaf, "leaf", leaf, read) for leaf in sound.leaves),
        items=tuple(_watched(Item, "existing_item", item, read) for item in sound.items),
    )
    # Making the watched case must not count.
    read.clear()
    verdicts = judge(rule, watched, fit)
    rows: dict[tuple[str, str], Any] = {("opening", sound.opening.id): sound.opening}
    rows.update((("leaf", leaf.id), leaf) for leaf in sound.leaves)
    rows.update((("existing_item", item.id), item) for item in sound.items)
    facts = tuple(UsedFact(entity, row_id, name, getattr(rows[entity, row_id], name)) for entity, row_id, name in read)
    return Traced(rule, verdicts, facts)


def _watched(kind: Any, entity: str, value: Any, read: dict[tuple[str, str, str], None]) -> Any:
    made = _watcher(kind)(**{field.name: getattr(value, field.name) for field in fields(kind)})
    object.__setattr__(made, "_read", read)
    object.__setattr__(made, "_row", (entity, value.id))
    return made


@cache
def _watcher(kind: Any) -> Any:
    names = frozenset(field.name for field in fields(kind)) - _QUIET

    class Watched(kind):  # type: ignore[misc]
        __slots__ = ("_read", "_row")

        def __getattribute__(self, name: str) -> Any:
            if name in names:
                try:
                    read = object.__getattribute__(self, "_read")
                except AttributeError:
                    return super().__getattribute__(name)
                read[(*object.__getattribute__(self, "_row"), name)] = None
            return super().__getattribute__(name)

    return Watched
