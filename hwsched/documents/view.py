"""What documents are built from: a project's openings with fits and findings, as plain values.

Operations assemble it; documents only read it.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Literal

from hwsched.language import phrase
from hwsched.quantities import LengthStyle
from hwsched.render.blocks import Document
from hwsched.rules.reading import lock_leaf
from hwsched.values import Catalogue, Finding, Fit, Leaf, OpeningInput, PointFit
from hwsched.values.office import Office
from hwsched.values.power import PowerResult
from hwsched.values.standing import WHY, Standing
from hwsched.values.terms import CostTerms
from hwsched.values.transmittal import Transmittal
from hwsched.wiring.goods import Bill, bill_of

Format = Literal["pdf", "xlsx", "ics"]


@dataclass(frozen=True, slots=True)
class Photo:
    """A photo of a door, as it is printed."""

    name: str
    """What it shows as somebody said, else the name of its file."""
    content: bytes = b""
    """One that `hwsched.render.pictures` took; empty where it cannot be printed."""
    refused: str = ""
    """Why it cannot be printed."""


@dataclass(frozen=True, slots=True)
class OpeningView:
    """One opening with all that is known of it."""

    given: OpeningInput
    """Of its first lock point."""
    fit: Fit | None
    """Of all its lock points together. None: none counts; its standing says why."""
    findings: tuple[Finding, ...]
    own: tuple[tuple[str, str], ...] = ()
    """Label and shown value of the project's own fields of the opening; empty text where nothing is known."""

    set_name: str = ""
    """Name of its hardware set; empty where it has none."""
    points: tuple[PointFit, ...] = ()
    """Its lock points in their order; an opening with one need not name it."""
    standing: Standing = "current"
    """How the stored fit stands."""
    code: str = ""
    """By which its sheet is known; empty where none is to be printed."""
    held: tuple[str, ...] = ()
    """What else keeps it from being picked for and installed: its circuit, what is unknown, what nobody decided."""
    bench: frozenset[tuple[str, str, str]] = frozenset()
    """What is on record as done at the bench: lock point, role of the piece, and built, programmed or tested."""
    unheld_by: str = ""
    """Letter of the revision that it is of, where that holds neither bench work nor photos; empty for all others."""
    photo: Photo | None = None
    """Of the door; None where none is attached, or none was asked for."""

    def __post_init__(self) -> None:
        if not self.points:
            object.__setattr__(self, "points", (PointFit(self.given, self.fit),))

    @property
    def mark(self) -> str:
        """The opening's mark."""
        return self.given.opening.mark

    @property
    def unfitted(self) -> str:
        """Why it has no fit that counts; empty where it has one."""
        return "" if self.fit is not None else WHY[self.standing] or phrase("none is stored")

    @property
    def blocking(self) -> tuple[Finding, ...]:
        """Errors that nobody has waived."""
        return tuple(f for f in self.findings if f.severity == "error" and not f.waived)

    @property
    def ready(self) -> bool:
        """Whether the opening is fitted and nothing forbids its installation."""
        return self.fit is not None and self.fit.status == "fits" and not self.blocking and not self.held

    @property
    def lock_leaf(self) -> Leaf | None:
        """The leaf of its first lock point, or the one that there is."""
        return lock_leaf(self.given) or next(iter(self.given.leaves), None)

    @property
    def several(self) -> bool:
        """Whether it has more than one lock point."""
        return len(self.points) > 1


# Without slots: the bill, which many pages read, is kept once it is added up.
@dataclass(frozen=True)
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
    power: PowerResult = field(default_factory=PowerResult)
    """What is laid, worked out."""
    terms: CostTerms = field(default_factory=CostTerms)
    level_heights: Mapping[tuple[str | None, str | None], float | None] = field(default_factory=dict)
    """Height of each level's floor [m], by building and level."""

    sent: tuple[Transmittal, ...] = ()
    """What went to whom, the oldest first."""
    template_pages: Mapping[str, int] = field(default_factory=dict)
    """Page on which each true-size template begins, by its name; empty where they are not printed along."""
    paper: str = "letter"
    """On which it will be set."""
    office: Office = field(default_factory=Office)
    """How the office's documents look."""

    @property
    def marks(self) -> Mapping[str, str]:
        """Return the mark of each opening by its identifier."""
        return {view.given.opening.id: view.mark for view in self.openings}

    @cached_property
    def bill(self) -> Bill:
        """All goods that feed its openings, and the licensed work."""
        return bill_of(self.power.supplies, [view.points for view in self.openings], self.catalogue)

    @cached_property
    def going(self) -> Bill:
        """What of them goes out: for openings that are ready, and for supplies that feed one and have no open error."""
        ready = [view for view in self.openings if view.ready]
        ids = {view.given.opening.id for view in ready}
        supplies = [
            each
            for each in self.power.supplies
            if not ids.isdisjoint(each.openings) and not self.errors_of(each.supply.id)
        ]
        return bill_of(supplies, [view.points for view in ready], self.catalogue)

    def errors_of(self, supply_id: str) -> tuple[Finding, ...]:
        """Return the errors of a supply itself that nobody has waived; those of its openings hold these."""
        return tuple(
            each.finding
            for each in self.power.findings
            if each.supply_id == supply_id
            and not each.opening_ids
            and each.finding.severity == "error"
            and not each.finding.waived
        )


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
    coded: bool = False
    """Whether a document of the project shows the codes of its openings' sheets."""
