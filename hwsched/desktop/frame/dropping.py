"""Files that are dragged into the window: a project is opened, a survey or a catalogue taken in."""

from pathlib import Path
from typing import Final, Literal

from PySide6.QtCore import QEvent, QMimeData, QObject, Signal
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QMessageBox, QWidget

from hwsched.desktop.jobs.jobs import Jobs
from hwsched.desktop.project.project_state import ProjectState
from hwsched.language import phrase

_PROJECT: Final = ".hwsched"
_BOOK: Final = ".xlsx"
_SURVEYS: Final = (_BOOK, ".xlsm", ".xlsb", ".xls", ".ods", ".csv", ".tsv", ".txt")
_READ_MS: Final = 8000
"""How long it stands what is said of what is dragged."""
Kind = Literal["project", "book", "survey"]


def dropped(data: QMimeData) -> tuple[Kind, Path] | None:
    """Return which file is dragged and what it may be; None for several, and for what nothing can be done with."""
    paths = [Path(url.toLocalFile()) for url in data.urls() if url.isLocalFile()]
    if len(paths) != 1:
        return None
    (path,) = paths
    if path.is_dir():
        return None
    ending = path.suffix.casefold()
    if ending == _PROJECT:
        return "project", path
    if ending in _SURVEYS:
        return ("book" if ending == _BOOK else "survey"), path
    return None


def refused(data: QMimeData) -> str:
    """Return why nothing can be done with the files that are dragged, for people; empty where no files are dragged."""
    urls = data.urls()
    if not urls:
        return ""
    if len(urls) > 1:
        return phrase("Several files are dragged: drop one at a time, since each is looked at by itself.")
    (url,) = urls
    if not url.isLocalFile():
        return phrase("What is dragged is no file of this machine. Save it first, then drop the file.")
    path = Path(url.toLocalFile())
    if path.is_dir():
        return phrase("{name} is a folder: drop one file of it.", name=path.name)
    return phrase(
        "{name} can be no project and no list. A project ends in {project}, a list in {lists}; a photograph is dropped "
        "on the page Files of its opening.",
        name=path.name,
        project=_PROJECT,
        lists=", ".join(_SURVEYS),
    )


class Dropping(QObject):
    """Takes what is dropped on a window, and says of other files why not, before they are let go.

    Parameters
    ----------
    window : QWidget
        On which files are dropped.
    state : ProjectState
        Whether a project is open into which something can be taken.
    jobs : Jobs
        Whether something is running, beside which nothing is taken in.
    """

    project = Signal(str)
    survey = Signal(object)
    """A Path."""
    catalogue = Signal(object)
    said = Signal(str, int)

    def __init__(self, window: QWidget, state: ProjectState, jobs: Jobs) -> None:
        super().__init__(window)
        self._window, self._state, self._jobs = window, state, jobs
        self.asked: QMessageBox | None = None
        window.setAcceptDrops(True)
        window.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802
        """Take what can be taken; every other event passes."""
        if isinstance(event, QDragEnterEvent) and event.type() == QEvent.Type.DragEnter:
            if dropped(event.mimeData()) is not None:
                event.acceptProposedAction()
                return True
            if why := refused(event.mimeData()):
                self.said.emit(why, _READ_MS)
        elif isinstance(event, QDropEvent) and event.type() == QEvent.Type.Drop:
            found = dropped(event.mimeData())
            if found is not None:
                event.acceptProposedAction()
                self.take(*found)
                return True
        return super().eventFilter(watched, event)

    def take(self, kind: Kind, path: Path) -> None:
        """Open a project, or take in a file; of a workbook it is asked which of both it is."""
        running = self._jobs.log.running
        if self._jobs.busy:
            what = running.title if running is not None else phrase("Writing")
            self.said.emit(
                phrase("{job} is not done yet: drop {name} again once it is.", job=what, name=path.name), _READ_MS
            )
        elif kind == "project":
            self.project.emit(str(path))
        elif self._state.workspace is None:
            self.said.emit(
                phrase("Open a project first, or make one, into which {name} can be taken.", name=path.name), _READ_MS
            )
        elif kind == "survey":
            self.survey.emit(path)
        else:
            self._ask(path)

    def _ask(self, path: Path) -> None:
        box = QMessageBox(
            QMessageBox.Icon.Question,
            phrase("Take in a workbook"),
            phrase("What is {name}?", name=path.name),
            parent=self._window,
        )
        survey = box.addButton(phrase("A survey"), QMessageBox.ButtonRole.AcceptRole)
        catalogue = box.addButton(phrase("A catalogue"), QMessageBox.ButtonRole.AcceptRole)
        neither = box.addButton(phrase("Leave it"), QMessageBox.ButtonRole.RejectRole)
        box.setDefaultButton(survey)
        box.setEscapeButton(neither)

        def answered(pressed: object) -> None:
            if pressed is survey:
                self.survey.emit(path)
            elif pressed is catalogue:
                self.catalogue.emit(path)

        box.buttonClicked.connect(answered)
        self.asked = box
        box.open()
