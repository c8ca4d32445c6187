"""The open project as the views see it: its openings as last checked, and which of them an edit touched."""

from collections.abc import Iterable, Mapping
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, NamedTuple

from PySide6.QtCore import QObject, Signal

from hwsched.desktop.parts.set_book import OpeningSet, sets_by_opening
from hwsched.desktop.project.remains import Remains
from hwsched.model.project import Project
from hwsched.operations.changes import Changes
from hwsched.operations.collector import set_aside, take_back
from hwsched.operations.findings.checked import Checked
from hwsched.operations.survey.open_counts import open_counts
from hwsched.operations.survey.places import levels_upward

if TYPE_CHECKING:
    from hwsched.operations.findings.checking import Checker
    from hwsched.operations.findings.waiver_book import WaiverBook

_ASIDE: Final = {"person", "attachment"}
"""Tables of which nothing that is worked out hangs."""


class Beside(NamedTuple):
    """What is shown beside openings, by what it is kept as in a `Workspace`."""

    sets: Mapping[str, OpeningSet]
    levels: Mapping[tuple[str | None, str | None], tuple[bool, float, int]]
    questions: Mapping[int, int]


class Workspace(QObject):
    """One open project.

    Parameters
    ----------
    project : Project
        Open; closed with the workspace.
    who : str
        Person at work, for the journal.
    remains : Remains, optional
        Where the project is what can be read of a damaged one.
    """

    changed = Signal(object)
    """An edit was made, and what it touched was read anew: its Changes."""
    reloaded = Signal()
    """All openings were read anew."""
    touched = Signal(object)
    """Identifiers of the openings that were read anew."""

    def __init__(
        self, project: Project, who: str, parent: QObject | None = None, remains: Remains | None = None
    ) -> None:
        super().__init__(parent)
        self.project = project
        self.who = who
        self.remains = remains
        self.checked: dict[str, Checked] = {}
        self.sets: Mapping[str, OpeningSet] = {}
        """Hardware set of each opening that has one."""
        self.levels: Mapping[tuple[str | None, str | None], tuple[bool, float, int]] = {}
        """By building and level, by what levels are put in order."""
        self.questions: Mapping[int, int] = {}
        """How many questions are left by the number of their delivery."""
        self._waivers: tuple[int, WaiverBook | None] | None = None
        self.turn = 0
        """How often something was read anew: what was begun in an earlier turn may be older than what is shown."""
        self.version = 0
        """Another one after every change of what amounts and lists of the whole project are worked out from."""
        self.kept: dict[str, tuple[int, Any]] = {}
        """What a page worked out of the whole project, by the page's name, and the version it was worked out at."""
        self.changed.connect(self._on_changed)

    @cached_property
    def checker(self) -> "Checker":
        """Remembers what was said of openings; made with the first of them that is judged."""
        from hwsched.operations.findings.checking import Checker

        return Checker()

    def read_beside(self) -> Beside:
        """Read what is shown beside the openings, off the screen's thread."""
        from hwsched.operations.parts.hardware_sets import hardware_sets

        return Beside(
            sets_by_opening(hardware_sets(self.project)), levels_upward(self.project), open_counts(self.project)
        )

    def take(self, checked: Iterable[Checked], beside: Beside | None = None) -> None:
        """Take over what a background job has read of the whole project; what it did not read is read here."""
        self.turn += 1
        self.version += 1
        self.checked = self.checker.before = {each.given.opening.id: each for each in checked}
        self.sets, self.levels, self.questions = beside or self.read_beside()
        set_aside()
        self.reloaded.emit()

    def refresh(self, ids: Iterable[str]) -> None:
        """Read some openings anew, here and now; those that are gone leave the views."""
        from hwsched.operations.findings.checking import look_again

        wanted = list(ids)
        if not wanted:
            return
        self.turn += 1
        self.version += 1
        self.questions = open_counts(self.project)
        self.levels = levels_upward(self.project)
        looked = look_again(self.project, wanted, checker=self.checker, earlier=False)
        found = {each.given.opening.id: each for each in looked}
        fresh = set(found) - set(self.checked)
        gone = [each for each in wanted if each not in found and each in self.checked]
        self.checked.update(found)
        for each in gone:
            del self.checked[each]
        if fresh or gone:
            self.read_sets()
            self.reloaded.emit()
        else:
            self.touched.emit(frozenset(found))

    def keep(self, name: str, version: int, found: Any) -> None:
        """Keep what a page has worked out, for the next time that it is asked for."""
        self.kept[name] = version, found
        set_aside()

    def kept_for(self, name: str) -> Any:
        """Return what a page had worked out; None where it never did, or something it reads has changed since."""
        version, found = self.kept.get(name, (-1, None))
        return found if version == self.version else None

    def _on_changed(self, changes: Changes) -> None:
        if not changes.entities <= _ASIDE:
            self.version += 1

    def waiver_book(self) -> "WaiverBook | None":
        """Return the project's waivers; read once a turn, since a unit that is dragged asks at every step."""
        from hwsched.operations.findings.checking import waiver_book

        if self._waivers is None or self._waivers[0] != self.turn:
            self._waivers = self.turn, waiver_book(self.project, self.project.today())
        return self._waivers[1]

    def read_sets(self) -> None:
        """Read which hardware set each opening has."""
        from hwsched.operations.parts.hardware_sets import hardware_sets

        self.sets = sets_by_opening(hardware_sets(self.project))

    @property
    def place(self) -> Path | None:
        """The project's file, though it is damaged; None for a database on a server."""
        return self.project.path if self.remains is None else self.remains.place

    def close(self) -> None:
        """Close the project."""
        take_back()
        if self.remains is None:
            self.project.close()
        else:
            self.remains.close()
