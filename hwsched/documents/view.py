"""What documents are built from: a project's openings with fits and findings, as plain values.

Operations assemble it; documents only read it.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Literal

from hwsched.cases import Case, Catalogue, Finding, Fit, Item, Leaf
from hwsched.cases.power import PowerWork
from hwsched.cases.terms import CostTerms
from hwsched.quantities import LengthStyle
from hwsched.render.blocks import Document

Format = Literal["pdf", "xlsx", "ics"]


@dataclass(frozen=True, slots=True)
class OpeningView:
    """One opening with all that is known of it."""

    case: Case
    fit: Fit | None
    """None: not fitted yet, or the survey has changed since."""
    findings: tuple[Finding, ...]
    own: tuple[tuple[str, str], ...] = ()
    """Label and shown value of the project's own fields of the opening; empty text where nothing is known."""

    set_name: str = ""
    """Name of its hardware set; empty where it has none."""

    @property
    def mark(self) -> str:
        """The opening's mark."""
        return self.case.opening.mark

    @property
    def blocking(self) -> tuple[Finding, ...]:
        """Errors that nobody has waived."""
        return tuple(f for f in self.findings if f.severity == "error" and not f.waived)

    @property
    def ready(self) -> bool:
        """Whether the opening is fitted and nothing forbids its installation."""
        return self.fit is not None and self.fit.status == "fitted" and not self.blocking

    @property
    def lock_leaf(self) -> Leaf | None:
        """The leaf that carries the lock: the single or the active one."""
        leaves = self.case.leaves
        return next((leaf for leaf in leaves if leaf.position != "inactive"), leaves[0] if leaves else None)

    @property
    def lock(self) -> Item | None:
        """The existing lock."""
        return next((item for item in self.case.items if item.kind == "lock"), None)


@dataclass(frozen=True, slots=True)
class ProjectView:
    """A project as documents see it."""

    title: str
    revision: str
    date: str
    length_style: LengthStyle
    openings: tuple[OpeningView, ...]
    catalogue: Catalogue
    rules_off: tuple[str, ...] = ()
    rules_run: int = 0
    power: PowerWork = field(default_factory=PowerWork)
    """What is laid, worked out."""
    terms: CostTerms = field(default_factory=CostTerms)
    level_heights: Mapping[tuple[str | None, str | None], float | None] = field(default_factory=dict)
    """Height of each level's floor [m], by building and level."""

    @property
    def marks(self) -> Mapping[str, str]:
        """Return the mark of each opening by its identifier."""
        return {view.case.opening.id: view.mark for view in self.openings}


@dataclass(frozen=True, slots=True)
class DocumentKind:
    """One document that the program issues."""

    name: str
    title: str
    formats: tuple[Format, ...]
    per_opening: bool
    """One file an opening instead of one for the project."""
    build: Callable[[ProjectView, OpeningView | None], Document]
    """Gets the opening when there is one document an opening."""
