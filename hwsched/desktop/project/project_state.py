"""What is open, and what of it is chosen: the one state that all subjects of the desktop share and observe.

Here belongs what more than one subject must know alike. No widgets, no work. Only two change it:
`following` says what is open, the register's view what is chosen; everybody else listens.
"""

from collections.abc import Sequence

from PySide6.QtCore import QObject, Signal

from hwsched.desktop.project.workspace import Workspace
from hwsched.operations.findings.checked import Checked
from hwsched.quantities import LENGTH_STYLES, LengthStyle


class ProjectState(QObject):
    """The open project and the openings that are chosen in it, by their identity.

    Parameters
    ----------
    who : str
        Person at work, for the journal.
    """

    opened = Signal()
    """Another project is open."""
    leaving = Signal()
    """The open project is about to be closed."""
    settled = Signal()
    """Title and writing of lengths were read anew."""
    ahead = Signal(object)
    """Openings of the project that was opened as they stand in the survey, before they are judged: their inputs."""
    reloaded = Signal()
    """All openings were read anew."""
    touched = Signal(object)
    """Identifiers of the openings that were read anew."""
    selected = Signal()
    """Other openings are selected."""
    shown = Signal()
    """Another opening is chosen, or the chosen one is to be shown anew."""

    def __init__(self, who: str, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.who = who
        self.workspace: Workspace | None = None
        self.style_of_lengths: LengthStyle = "fraction"
        self.chosen: str | None = None
        """The opening that is shown; it stays so while the register is narrowed."""
        self.ids: tuple[str, ...] = ()
        """The openings that are selected in the register, in its order."""
        self._showing = False

    @property
    def checked(self) -> Checked | None:
        """The chosen opening as last checked."""
        if self.workspace is None or self.chosen is None:
            return None
        return self.workspace.checked.get(self.chosen)

    @property
    def filled(self) -> bool:
        """Whether a project with openings is open."""
        return self.workspace is not None and bool(self.workspace.checked)

    def seen_of(self, opening: str | None) -> int | None:
        """Return the newest step when an opening was read as the views show it."""
        if self.workspace is None or opening is None:
            return None
        checked = self.workspace.checked.get(opening)
        return checked.base if checked is not None else None

    def take(self, workspace: Workspace) -> None:
        """Take over another open project; nothing of it is chosen yet."""
        self.workspace = workspace
        workspace.reloaded.connect(self.reloaded)
        workspace.touched.connect(self._on_touched)
        self.chosen, self.ids = None, ()
        self.settle()
        self.opened.emit()

    def give_up(self) -> Workspace | None:
        """Let go of the open project, for whoever closes it."""
        if self.workspace is not None:
            self.leaving.emit()
        workspace, self.workspace = self.workspace, None
        return workspace

    def settle(self) -> None:
        """Read anew what the project's settings say of how things are written."""
        if self.workspace is not None:
            style = self.workspace.project.length_style
            self.style_of_lengths = next((each for each in LENGTH_STYLES if each == style), "fraction")
            self.settled.emit()

    def select(self, ids: Sequence[str], chosen: str | None) -> None:
        """Take over what is selected, and which of it is shown."""
        self.ids, self.chosen = tuple(ids), chosen
        self.show_again()
        self.selected.emit()

    def reorder(self, ids: Sequence[str]) -> None:
        """Take over the same openings in another order, or fewer of them; what is shown stays."""
        self.ids = tuple(ids)
        self.selected.emit()

    def show_again(self) -> None:
        """Let the chosen opening be shown as it stands."""
        # What fails while it is shown is told, and what is told shows it again.
        if not self._showing:
            self._showing = True
            try:
                self.shown.emit()
            finally:
                self._showing = False

    def _on_touched(self, ids: frozenset[str]) -> None:
        self.touched.emit(ids)
        if self.chosen in ids:
            self.show_again()
