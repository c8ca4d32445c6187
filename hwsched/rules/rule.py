"""What a rule is. Rules themselves stand one a file in a folder a discipline."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Final, Literal

from hwsched.values import Discipline, Fit, OpeningInput, Severity

Slot = Literal["lock", "unit", "power", "whole"]
"""When a rule can speak while a fit is built: once the lock or cylinder with its cam, collar and rings is chosen; once
the unit with place, cable and holes is; once the power source is; or only of the whole opening."""

DEFERS: Final = (
    "This is a planning note, not a code ruling: the label and the listings, the adopted code, the authority having "
    "jurisdiction and licensed practice decide."
)
"""Follows the cure of every rule that touches safety."""


@dataclass(frozen=True, slots=True)
class Limit:
    """A number of a rule that a project may change."""

    name: str
    """With its unit as suffix."""
    value: float
    text: str
    source: str
    """Publication, "common practice", or "from memory, unverified"."""


@dataclass(frozen=True, slots=True)
class Verdict:
    """One statement of a rule on one case."""

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


Limits = Mapping[str, float]
Judge = Callable[[OpeningInput, Fit, Limits], Iterable[Verdict]]


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule: checks a stored fit, and in its slot is a constraint while a fit is built."""

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
    judge: Judge
    slot: Slot = "whole"
    limits: tuple[Limit, ...] = ()
    defers: bool = False
    """Touches safety or a code: the cure ends with the sentence that says who decides."""

    sees_all: bool = False
    """Judges the facts as surveyed, those included that cannot be true and are put aside for all other rules."""
    declared: Mapping[str, float] = field(init=False, repr=False, compare=False)
    """The limits by name, as declared."""

    def __post_init__(self) -> None:
        object.__setattr__(self, "declared", MappingProxyType({limit.name: limit.value for limit in self.limits}))
