"""What a rule is, and what rules judge. Rules themselves stand one a file in a folder a discipline or a subject."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from math import isfinite
from types import MappingProxyType
from typing import Any, Final, Generic, Literal, TypeAlias, TypeVarTuple

from hwsched.language import english, phrase
from hwsched.values import Discipline, Fit, OpeningInput, Severity
from hwsched.values.power import SupplyResult
from hwsched.values.record import Record

Slot = Literal["lock", "unit", "power", "whole"]
"""When a rule can speak while a fit is built: once the lock or cylinder with its cam, collar and rings is chosen; once
the unit with place, cable and holes is; once the power source is; or only of the whole opening."""

DEFERS: Final = (
    "This is a planning note, not a code ruling: the label and the listings, the adopted code, the authority having "
    "jurisdiction and licensed practice decide."
)
"""Follows the cure of every rule that touches safety."""


def undeferred(cure: str) -> str:
    """Return a cure without what follows it of rules that touch safety, for where that is said once for all.

    Examples
    --------
    >>> undeferred(f"Keep a way out. {DEFERS}")
    'Keep a way out.'
    """
    return cure.removesuffix(DEFERS).rstrip()


@dataclass(frozen=True, slots=True)
class Limit:
    """A number of a rule that a project may change."""

    name: str
    """With its unit as suffix, where it is a quantity."""
    value: float
    text: str
    source: str
    """Publication, "common practice", or "from memory, unverified"."""
    unit: str = field(kw_only=True)
    """Empty: a mere number."""
    low: float = field(kw_only=True)
    """Least that can be meant: what lies below is a slip and would silence the rule, or let it cry at everything."""
    high: float = field(kw_only=True)
    """Most that can be meant."""

    def __post_init__(self) -> None:
        if not (isfinite(self.low) and isfinite(self.high) and self.low <= self.value <= self.high):
            raise ValueError(f"limit {self.name}: {self.value:g} does not lie in {self.low:g} to {self.high:g}")

    @property
    def bounds(self) -> str:
        """What a project may set, in English.

        Examples
        --------
        >>> Limit("days", 180.0, "Least time.", "common practice", unit="days", low=1.0, high=3650.0).bounds
        '1 to 3650 days'
        """
        return english(self.bounds_said)

    def bounds_said(self) -> str:
        """Return what a project may set, in the language in force."""
        if not self.unit:
            return phrase("{low:g} to {high:g}", low=self.low, high=self.high)
        return phrase("{low:g} to {high:g} {unit}", low=self.low, high=self.high, unit=phrase(self.unit))


@dataclass(frozen=True, slots=True)
class Verdict:
    """One statement of a rule on what it judged."""

    message: str
    """A sentence with its numbers; never the opening's mark."""
    cure: str = ""
    """Empty: the rule's own."""
    values: Mapping[str, float] = field(default_factory=dict)
    about: str = ""
    severity: Severity | None = None
    """None: the rule's own, one step milder where facts are missing."""
    needs: tuple[str, ...] = ()
    """Missing facts as ``entity.attribute``: the verdict is "unknown: needs X"."""
    circuit_id: str = ""
    """Of a supply: the circuit that it speaks of; empty: the whole supply."""
    opening_ids: tuple[str, ...] = ()
    """Of a supply: openings that it concerns; it stands among their findings."""


Limits = Mapping[str, float]
Inputs = Mapping[str, OpeningInput]
"""Openings that a supply feeds, by identifier."""
Judged = TypeVarTuple("Judged")
"""What is put before a rule, its limits left out."""


@dataclass(frozen=True, slots=True)
class Subject(Generic[*Judged]):
    """What a rule can judge."""

    name: str
    text: str
    """For people, after "Judges"."""
    told: Callable[[*Judged], str]
    """Says what was judged when a rule falls over."""


OPENINGS: Final[Subject[OpeningInput, Fit]] = Subject(
    "opening",
    "each opening and its fit",
    lambda given, fit: (
        f"facts: {(given.opening, given.leaves, given.items, fit.status, [part.part for part in fit.parts])}"
    ),
)
SUPPLIES: Final[Subject[SupplyResult, Inputs]] = Subject(
    "supply", "each supply with its circuits", lambda result, inputs: f"supply: {result.supply}"
)
RECORDS: Final[Subject[Record]] = Subject(
    "record", "what is on record", lambda record: f"opening {record.given.opening.mark}"
)
_UNSAID: Final[Any] = OPENINGS
"""Type variables have no defaults yet: what a rule judges that says nothing of it."""


@dataclass(frozen=True, slots=True)
class Rule(Generic[*Judged]):
    """One rule: judges its subject; a rule of openings is in its slot a constraint while a fit is built."""

    id: str
    """Kebab-case, ours; the name of its file with underscores."""
    title: str
    discipline: Discipline
    severity: Severity
    """An error in slot lock, unit or power refuses the candidate."""
    basis: str
    """Published source with section, or "common practice"."""
    cure: str
    """What helps when it speaks; a verdict may say it more exactly."""
    judge: Callable[[*Judged, Limits], Iterable[Verdict]]
    slot: Slot = "whole"
    limits: tuple[Limit, ...] = ()
    defers: bool = False
    """Touches safety or a code: the cure ends with the sentence that says who decides."""

    sees_all: bool = False
    """Judges the facts as surveyed, those included that cannot be true and are put aside for all other rules."""
    each_anew: bool = False
    """Reads how long the pack of a fit lasts, how busy the opening is or what its rooms have besides: asked for each
    opening. What the others say is remembered for openings alike but for that, so they must not read `Fit.battery`."""
    guards: tuple[str, ...] = ()
    """Kinds of existing item off which a unit stays by the limit ``clearance_mm``: no place is looked for nearer."""
    subject: Subject[*Judged] = _UNSAID
    declared: Mapping[str, float] = field(init=False, repr=False, compare=False)
    """The limits by name, as declared."""

    def __post_init__(self) -> None:
        object.__setattr__(self, "declared", MappingProxyType({limit.name: limit.value for limit in self.limits}))
        if self.guards and "clearance_mm" not in self.declared:
            raise ValueError(f"rule {self.id} guards {', '.join(self.guards)} without a limit clearance_mm")


AnyRule: TypeAlias = Rule[*tuple[Any, ...]]
"""A rule, whatever it judges."""
OpeningRule: TypeAlias = Rule[OpeningInput, Fit]


class UnknownRuleError(LookupError):
    """No rule has that identifier: a slip of who asks for it."""


def rules_of(subject: Subject[*Judged], rules: Iterable[AnyRule]) -> tuple[Rule[*Judged], ...]:
    """Return those of some rules that judge a subject, in their order."""
    return tuple(rule for rule in rules if rule.subject is subject)
