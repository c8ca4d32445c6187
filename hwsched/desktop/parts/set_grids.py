"""The lists of the place of hardware sets: the sets, the openings of one, and what changed lines would do to them."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, Final

from PySide6.QtWidgets import QWidget

from hwsched.desktop.grid.column import Column
from hwsched.desktop.grid.contents import Contents
from hwsched.desktop.grid.grid import Grid
from hwsched.desktop.grid.model import GridModel
from hwsched.desktop.survey.states import status_word
from hwsched.language import phrase, to_phrase
from hwsched.operations.parts.hardware_sets import HardwareSet, SetEffect


@dataclass(frozen=True, slots=True)
class Member:
    """An opening of a set, with the roles that it decides for itself."""

    id: str
    mark: str
    roles: tuple[str, ...]


def _several(names: tuple[str, ...]) -> str:
    return ", ".join(names)


def _count(number: int) -> str:
    return str(number or "")


def _fit(states: tuple[str, str]) -> str:
    before, after = map(status_word, states)
    return after if before == after else f"{before} → {after}"


SETS: Final[tuple[Column[HardwareSet], ...]] = (
    Column("name", to_phrase("Set"), lambda held: held.name, width=16),
    Column("openings", to_phrase("Openings"), lambda held: len(held.openings), right=True, width=11),
    Column("overridden", to_phrase("By hand instead"), lambda held: len(held.overridden), _count, right=True, width=15),
    Column("notes", to_phrase("Notes"), lambda held: held.notes, width=30),
)
MEMBERS: Final[tuple[Column[Member], ...]] = (
    Column("mark", to_phrase("Opening"), lambda member: member.mark, width=16),
    Column("roles", to_phrase("By hand instead of the set"), lambda member: member.roles, _several, _several, width=40),
)
EFFECTS: Final[tuple[Column[SetEffect], ...]] = (
    Column("mark", to_phrase("Opening"), lambda effect: effect.mark, width=12),
    Column("fit", to_phrase("Fit"), lambda effect: (effect.before, effect.after), _fit, _fit, width=18),
    Column("gone", to_phrase("Parts gone"), lambda effect: effect.gone, _several, _several, width=24),
    Column("new", to_phrase("Parts new"), lambda effect: effect.new, _several, _several, width=24),
    Column("why", to_phrase("Why not"), lambda effect: effect.why, width=40),
)


class SetGrid(Grid):
    """The sets; the chosen one is the row of the cursor."""

    def __init__(self, parent: QWidget | None = None) -> None:
        model: GridModel[Any] = GridModel(Contents(SETS, lambda held: held.id))
        words = phrase("No set yet. Make one of what the selected openings have alike, or have some proposed.")
        super().__init__(model, "sets", phrase("Hardware sets"), self._name_of, parent, opens=True, empty=words)
        model.setParent(self)

    def show_sets(self, sets: Sequence[HardwareSet]) -> None:
        """Show these; the chosen one stays chosen, and where it is gone the first one is."""
        before = self.current
        self.model.load(sets)
        here = before if before in self.model.contents.ids else next(iter(self.model.shown_ids()), None)
        self.select((here,) if here is not None else (), here)

    def chosen(self) -> HardwareSet | None:
        """Return the chosen set, be it in view or not."""
        held: HardwareSet | None = self.model.contents.row_of(self.current) if self.current is not None else None
        return held

    def _name_of(self, identity: str) -> str:
        held = self.model.contents.row_of(identity)
        return held.name if held is not None else ""


class MemberGrid(Grid):
    """The openings of the chosen set; Return or a double click shows one."""

    def __init__(self, parent: QWidget | None = None) -> None:
        model: GridModel[Any] = GridModel(Contents(MEMBERS, lambda member: member.id))
        super().__init__(model, "set-openings", phrase("Openings of the set"), str, parent, opens=True,
                         empty=phrase("Openings that have the chosen set stand here."))  # fmt: skip
        model.setParent(self)

    def show_members(self, held: HardwareSet | None) -> None:
        """Show the openings of a set."""
        openings = zip(held.openings, held.marks, strict=True) if held is not None else ()
        own = held.overridden if held is not None else {}
        self.model.load([Member(id_, mark, tuple(own.get(mark, ()))) for id_, mark in openings])


class EffectGrid(Grid):
    """What changed lines would do to openings of the set; Return or a double click shows one."""

    def __init__(self, parent: QWidget | None = None) -> None:
        model: GridModel[Any] = GridModel(Contents(EFFECTS, lambda effect: effect.mark))
        super().__init__(model, "set-effects", phrase("What the lines would change"), str, parent, opens=True,
                         empty=phrase("Change the lines, then press What changes?"))  # fmt: skip
        model.setParent(self)
