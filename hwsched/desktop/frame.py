"""The window's frame: the open project, the views that follow it, jobs, and telling what went wrong."""

from collections.abc import Callable, Collection
from typing import Any

from PySide6.QtCore import QItemSelection, Qt, QTimer
from PySide6.QtGui import QCloseEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QComboBox,
    QDialog,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QLineEdit,
    QMainWindow,
    QMessageBox,
    QProgressBar,
    QPushButton,
    QSplitter,
    QStackedWidget,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from hwsched.desktop.jobs import Cancelled, Failure, Jobs, Progress
from hwsched.desktop.opening.earlier_line import EarlierLine
from hwsched.desktop.opening.opening_sheet import OpeningSheet
from hwsched.desktop.plain_words import keep_words_plain
from hwsched.desktop.project.welcome import Welcome
from hwsched.desktop.survey.building_tree import BuildingTree
from hwsched.desktop.survey.register import STATES, Register
from hwsched.desktop.trouble import tell_failure
from hwsched.desktop.watching import Watcher
from hwsched.desktop.workspace import Workspace
from hwsched.model.errors import NeedsUpgradeError
from hwsched.model.project import Project, create_project, open_project
from hwsched.operations.changes import Changes
from hwsched.operations.findings.checking import Checker, check_openings
from hwsched.operations.outcome import CLOSED, REFUSED
from hwsched.operations.power.power_results import on_same_supplies, power_facts
from hwsched.operations.project.upgrading import Upgraded, upgrade
from hwsched.quantities import LENGTH_STYLES, LengthStyle

_HANDFUL = 20
"""So many openings are read anew here and now, more of them in the background."""
_TURNS = 3
"""So often what others wrote is read beside a person's own edits; then the next edit waits for it."""
_POWER_TABLES = {"supply", "circuit", "run", "route", "level"}
"""What feeds openings: it touches all that hang there, though no row of theirs changes."""


class Frame(QMainWindow):
    """Shows one project at a time; what can be done with it is added by the classes above.

    Parameters
    ----------
    who : str
        Person at work, for the journal.
    """

    def __init__(self, who: str) -> None:
        super().__init__()
        keep_words_plain()
        self.who = who
        self.workspace: Workspace | None = None
        self.chosen: str | None = None
        self.told: QDialog | None = None
        self._told_on_closing = False
        self.style_of_lengths: LengthStyle = "fraction"
        self.jobs = Jobs(self)
        self.jobs.started.connect(self._on_job_started)
        self.jobs.progressed.connect(self._on_job_progress)
        self.jobs.ended.connect(self._on_job_ended)
        self.jobs.changed.connect(self._on_changed)
        self.jobs.failed.connect(self._tell)
        self.reading = Jobs(self)
        """Reads what others wrote, beside the work that a person waits for."""
        self.reading.failed.connect(self._tell_of_others)
        self._reader = Checker()
        self.watcher: Watcher | None = None
        self.register = Register(self)
        self.places = BuildingTree()
        self.sheet = OpeningSheet()
        self.welcome = Welcome()
        self._build_views()
        self._build_status()
        self._search_timer = QTimer(self)
        self._search_timer.setSingleShot(True)
        self._search_timer.setInterval(120)
        self._search_timer.timeout.connect(self._search_now)
        self.setWindowTitle("hwsched")
        self.resize(1360, 740)

    def _build_views(self) -> None:
        self.search = QLineEdit()
        self.search.setPlaceholderText("Find: mark, room, lock, hand ...")
        self.search.setClearButtonEnabled(True)
        self.search.textChanged.connect(lambda: self._search_timer.start())
        self.state = QComboBox()
        self.state.addItem("Any state", "")
        for state in STATES:
            self.state.addItem(state, state)
        self.state.currentIndexChanged.connect(self._on_state)
        self.count = QLabel()
        bar = QHBoxLayout()
        bar.addWidget(self.search, 1)
        bar.addWidget(self.state)
        bar.addWidget(self.count)

        self.table = QTableView()
        self.table.setModel(self.register)
        self.table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.table.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.table.setAlternatingRowColors(True)
        self.table.setShowGrid(False)
        self.table.setSortingEnabled(True)
        self.table.horizontalHeader().setSortIndicator(-1, Qt.SortOrder.AscendingOrder)
        self.table.verticalHeader().hide()
        self.table.verticalHeader().setDefaultSectionSize(24)
        self.table.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        for column, width in enumerate((70, 86, 140, 72, 190, 84, 48, 74, 116, 150, 96, 70)):
            self.table.setColumnWidth(column, width)
        self.table.horizontalHeader().setStretchLastSection(True)
        self.table.selectionModel().selectionChanged.connect(self._on_selection)
        self.places.chosen.connect(self._on_place)

        self.earlier = EarlierLine()
        middle = QWidget()
        layout = QVBoxLayout(middle)
        layout.setContentsMargins(4, 6, 4, 4)
        layout.addWidget(self.earlier)
        layout.addLayout(bar)
        layout.addWidget(self.table, 1)
        self.split = QSplitter(Qt.Orientation.Horizontal)
        self.split.addWidget(self.places)
        self.split.addWidget(middle)
        self.split.addWidget(self.sheet)
        self.split.setSizes([210, 560, 590])
        self.split.setStretchFactor(0, 0)
        self.split.setStretchFactor(1, 3)
        self.split.setStretchFactor(2, 3)
        self.stack = QStackedWidget()
        self.stack.addWidget(self.welcome)
        self.stack.addWidget(self.split)
        self.setCentralWidget(self.stack)

    def _build_status(self) -> None:
        self.bar = QProgressBar()
        self.bar.setMaximumWidth(220)
        self.stop = QPushButton("Cancel")
        self.stop.clicked.connect(self.jobs.cancel)
        self.statusBar().addPermanentWidget(self.bar)
        self.statusBar().addPermanentWidget(self.stop)
        self.bar.hide()
        self.stop.hide()

    def _enable(self) -> None:
        """Let what is possible at present be done; actions are added by the window."""
        self.sheet.facts.setEnabled(not self.jobs.busy and self.workspace is not None)

    def new_project(self, target: str, name: str, ask_again: Callable[[], None] | None = None) -> None:
        """Make a project and show it; where it cannot be made, another place is asked for on wish."""
        self.jobs.edit(
            "Making the project",
            lambda: create_project(target, name, length_style="fraction", bare_unit="in"),
            self._show,
            ask_again=ask_again,
        )

    def open_project(self, target: str, ask_again: Callable[[], None] | None = None) -> None:
        """Open a project and show it; one of an earlier version is upgraded only on the person's word.

        Where it cannot be opened, another one is asked for on wish.
        """

        def act() -> Project | NeedsUpgradeError:
            try:
                return open_project(target)
            except NeedsUpgradeError as error:
                return error

        def then(found: Project | NeedsUpgradeError) -> None:
            if isinstance(found, NeedsUpgradeError):
                self._ask_upgrade(target, found)
            else:
                self._show(found)

        self.jobs.edit("Opening the project", act, then, ask_again=ask_again)

    def _ask_upgrade(self, target: str, error: NeedsUpgradeError) -> None:
        box = QMessageBox(QMessageBox.Icon.Question, "An earlier version's project", error.consequence, parent=self)
        yes = box.addButton("Upgrade it", QMessageBox.ButtonRole.AcceptRole)
        no = box.addButton("Leave it as it is", QMessageBox.ButtonRole.RejectRole)
        box.setDefaultButton(no)
        box.setEscapeButton(no)
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        box.buttonClicked.connect(lambda pressed: self.upgrade_project(target) if pressed is yes else None)
        self.asked = box
        box.open()

    def upgrade_project(self, target: str) -> None:
        """Bring a project of an earlier version up to date, then open it and say where the copy is."""

        def then(done: Upgraded) -> None:
            self.open_project(target)
            if done.copy is not None:
                self.upgraded = QMessageBox(
                    QMessageBox.Icon.Information,
                    "Upgraded",
                    f"The project as it was is kept:\n{done.copy}",
                    parent=self,
                )
                self.upgraded.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
                self.upgraded.open()

        self.jobs.run("Upgrading the project", lambda _progress, _cancelled: upgrade(target), then)

    def _show(self, project: Project) -> None:
        self._leave()
        self.workspace = Workspace(project, self.who, self)
        self.workspace.reloaded.connect(self._on_reloaded)
        self.workspace.touched.connect(self._on_touched)
        self.watcher = Watcher(project, lambda: not self.jobs.busy, self)
        self.watcher.changed.connect(self._on_others)
        self.watcher.said.connect(lambda said: self.statusBar().showMessage(said, 8000))
        self.watcher.answers.connect(self._on_answers)
        self.watcher.failed.connect(self._tell_of_others)
        style = project.length_style
        self.style_of_lengths = next((s for s in LENGTH_STYLES if s == style), "fraction")
        self.chosen = None
        self.setWindowTitle(f"{project.title} - hwsched")
        self.stack.setCurrentWidget(self.split)
        self._reload("Reading the project")

    def _reload(self, title: str) -> None:
        workspace = self.workspace
        if workspace is None:
            return

        def work(progress: Progress, cancelled: Cancelled) -> Any:
            return check_openings(
                workspace.project, checker=workspace.checker, progress=progress, cancelled=cancelled
            )  # fmt: skip

        def take(checked: Any) -> None:
            if workspace is self.workspace:
                workspace.take(checked)

        self.jobs.run(title, work, take)

    def _reload_beside(self, turns: int = _TURNS) -> None:
        """Read all anew beside the work of the person, who may edit meanwhile: then once more, so that it is shown."""
        workspace = self.workspace
        if workspace is None:
            return
        if not turns:
            self._reload("Reading what others did")
            return
        turn = workspace.turn

        def work(progress: Progress, cancelled: Cancelled) -> Any:
            found = check_openings(workspace.project, checker=self._reader, progress=progress, cancelled=cancelled)
            return None if cancelled() else found

        def take(checked: Any) -> None:
            if workspace is not self.workspace or checked is None:
                return
            if workspace.turn == turn:
                workspace.take(checked)
            else:
                self._reload_beside(turns - 1)

        if not self.reading.run("", work, take):
            # What is being read is older than what is asked for.
            workspace.turn += 1

    def edit(
        self,
        act: Callable[[], Any],
        then: Callable[[Any], None] | None = None,
        *,
        asker: QWidget | None = None,
    ) -> None:
        """Make an edit; tell what went wrong; let all views follow.

        Parameters
        ----------
        act : callable
            Calls an operation; runs off the screen's thread, so it may not touch a widget.
        then : callable, optional
            Gets its result once the views have followed, unless the asker is gone.
        asker : QWidget, optional
            The window in which it was asked for.
        """
        if self.workspace is not None:
            self.jobs.edit("Writing", act, then, asker=asker)

    def _on_changed(self, changes: Changes) -> None:
        # Reading what was touched may fail as any reading may.
        self._guarded(lambda: self._after(changes))

    def _on_others(self, changes: Changes) -> None:
        self._guarded(lambda: self._after(changes, beside=True))

    def _on_answers(self, answers: bool) -> None:
        """Say when what others do cannot be seen, until it can again."""
        if answers:
            self.statusBar().clearMessage()
        else:
            self.statusBar().showMessage("The project does not answer: what others do is not seen until it does.")

    def _after(self, changes: Changes, *, beside: bool = False) -> None:
        """Read anew what an edit touched: a handful here and now, more in the background.

        Beside: the person goes on working meanwhile, since it was somebody else's.
        """
        if self.workspace is None:
            return
        if changes.entities & {"project", "own_field"}:
            self._after_settings(beside=beside)
            return
        touched: Collection[str] = changes.openings
        if changes.entities & _POWER_TABLES:
            project = self.workspace.project
            every = changes.entities & {"supply", "circuit", "level"}
            touched = on_same_supplies(project, power_facts(project).connected() if every else changes.openings)
        if len(touched) <= _HANDFUL and not changes.parts:
            self.workspace.refresh(touched)
        elif beside:
            self._reload_beside()
        else:
            self._reload("Checking")

    def _after_settings(self, *, beside: bool = False) -> None:
        if self.workspace is None:
            return
        style = self.workspace.project.length_style
        self.style_of_lengths = next((s for s in LENGTH_STYLES if s == style), "fraction")
        self.setWindowTitle(f"{self.workspace.project.title} - hwsched")
        if beside:
            self._reload_beside()
        else:
            self._reload("Checking")

    def _on_reloaded(self) -> None:
        if self.workspace is None:
            return
        checked = list(self.workspace.checked.values())
        self.register.load(checked)
        self._show_earlier()
        self.places.show_places(self.workspace.project.title, checked)
        self._show_count()
        self._select(self.chosen)
        self._enable()

    def _on_touched(self, ids: frozenset[str]) -> None:
        if self.workspace is None:
            return
        self.register.renew(self.workspace.checked[each] for each in ids)
        self._show_earlier()
        if self.chosen in ids:
            self._show_sheet()

    def _show_earlier(self) -> None:
        checked = self.workspace.checked.values() if self.workspace is not None else ()
        self.earlier.show_count(sum(each.standing == "earlier-version" for each in checked))

    def _on_place(self, place: object) -> None:
        self.register.narrow(place=place)
        self._show_count()

    def _on_state(self, _index: int) -> None:
        self.register.narrow(state=self.state.currentData())
        self._show_count()

    def _search_now(self) -> None:
        self.register.narrow(words=self.search.text())
        self._show_count()

    def _show_count(self) -> None:
        shown, total = self.register.rowCount(), self.register.total()
        text = f"{total} openings" if shown == total else f"{shown} of {total}"
        if total == 0:
            text = "No openings yet: take in a survey"
        self.count.setText(text)

    def _chosen_ids(self) -> list[str]:
        rows = sorted({index.row() for index in self.table.selectionModel().selectedRows()})
        return [found for found in (self.register.id_at(row) for row in rows) if found is not None]

    def _on_selection(self, _now: QItemSelection, _before: QItemSelection) -> None:
        rows = self.table.selectionModel().selectedRows()
        self.chosen = self.register.id_at(rows[0].row()) if rows else None
        self._show_sheet()

    def _select(self, opening_id: str | None) -> None:
        row = self.register.row_of_id(opening_id) if opening_id is not None else None
        if row is None and self.register.rowCount():
            row = 0
        if row is None:
            self.chosen = None
            self._show_sheet()
        else:
            self.table.selectRow(row)
            self.chosen = self.register.id_at(row)
            self._show_sheet()

    def _show_sheet(self) -> None:
        checked = self.workspace.checked.get(self.chosen) if self.workspace and self.chosen else None
        self.sheet.show_opening(checked, self.style_of_lengths)

    def _on_job_started(self, title: str) -> None:
        self.statusBar().showMessage(title + " ...")
        self.bar.setRange(0, 0)
        self.bar.show()
        self.stop.show()
        self._enable()

    def _on_job_progress(self, done: int, total: int) -> None:
        self.bar.setRange(0, max(total, 1))
        self.bar.setValue(done)

    def _on_job_ended(self) -> None:
        self.statusBar().clearMessage()
        self.bar.hide()
        self.stop.hide()
        self._enable()

    def _guarded(self, act: Callable[[], Any]) -> None:
        """Read on the screen's thread; what cannot be read is told."""
        try:
            act()
        except REFUSED + CLOSED as error:
            self._tell(Failure("Reading", error))

    def _tell(self, failure: Failure) -> None:
        """Say what went wrong, what was written all the same, and how to go on."""
        self.told = tell_failure(failure, self)
        self._told_on_closing = True
        self._show_sheet()

    def _tell_of_others(self, failure: Failure) -> None:
        """Tell a mistake of the program; a project that does not answer is tried again by itself."""
        if not isinstance(failure.error, CLOSED):
            self._tell(failure)

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802
        """Stop what is running and close the project; an edit that then fails is told before the window goes."""
        self._told_on_closing = False
        self.jobs.wait()
        if self._told_on_closing:
            event.ignore()
            return
        self._leave()
        super().closeEvent(event)

    def _leave(self) -> None:
        """Close the open project, and what watches it."""
        if self.watcher is not None:
            self.watcher.close()
            self.watcher.deleteLater()
            self.watcher = None
        workspace, self.workspace = self.workspace, None
        self.reading.wait()
        if workspace is not None:
            workspace.close()
            workspace.deleteLater()
