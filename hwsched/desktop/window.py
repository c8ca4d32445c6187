"""The main window: places on the left, the register in the middle, the chosen opening's sheet on the right."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

from PySide6.QtCore import QItemSelection, Qt, QTimer, Slot
from PySide6.QtGui import QAction, QCloseEvent, QKeySequence
from PySide6.QtWidgets import (
    QAbstractItemView,
    QComboBox,
    QFileDialog,
    QHBoxLayout,
    QHeaderView,
    QInputDialog,
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

from hwsched.desktop.calculators import CalculatorsDialog
from hwsched.desktop.history_dialog import HistoryDialog
from hwsched.desktop.jobs import Cancelled, Jobs, Progress
from hwsched.desktop.opening_sheet import OpeningSheet
from hwsched.desktop.places import Places
from hwsched.desktop.preview_dialog import PreviewDialog
from hwsched.desktop.print_dialog import PrintDialog
from hwsched.desktop.register import STATES, Register
from hwsched.desktop.settings_dialog import SettingsDialog
from hwsched.desktop.welcome import Welcome
from hwsched.desktop.workspace import Workspace
from hwsched.exchange.problems import InputRejected
from hwsched.exchange.survey_book import SurveyOptions
from hwsched.model.errors import ChangeError, ProjectError
from hwsched.model.project import Project, create_project, open_project
from hwsched.operations.by_hand import choose_part, place_unit, release_part, release_unit
from hwsched.operations.catalogue_export import export_catalogue
from hwsched.operations.catalogue_import import import_catalogue
from hwsched.operations.changes import Changes
from hwsched.operations.checking import Checked, check_openings
from hwsched.operations.choosing import parts_like
from hwsched.operations.demonstration import demonstrate
from hwsched.operations.editing import add_item, add_opening, remove
from hwsched.operations.fitting_openings import fit_openings
from hwsched.operations.issuing import issue_by_name
from hwsched.operations.own_fields import define_field
from hwsched.operations.reading_settings import settings_of
from hwsched.operations.settings import set_settings
from hwsched.operations.survey_forms import write_form
from hwsched.operations.survey_import import import_survey, preview_survey
from hwsched.operations.trying import against_place, with_unit_at
from hwsched.operations.typing_in import type_in
from hwsched.operations.undoing import history, redo, undo, undo_one
from hwsched.operations.viewing import project_view
from hwsched.quantities import LENGTH_STYLES, LengthStyle, format_length
from hwsched.survey import ITEM

LEAVE_TO_FIT = "(leave it to the fit)"
SURVEYS = "Surveys (*.xlsx *.xls *.ods *.csv)"
WORKBOOKS = "Workbooks (*.xlsx)"
PROJECTS = "Projects (*.hwsched)"


class Window(QMainWindow):
    """The desktop of one project at a time.

    Parameters
    ----------
    who : str
        Person at work, for the journal.
    """

    def __init__(self, who: str) -> None:
        super().__init__()
        self.who = who
        self.workspace: Workspace | None = None
        self.chosen: str | None = None
        self.style_of_lengths: LengthStyle = "fraction"
        self.jobs = Jobs(self)
        self.jobs.started.connect(self._on_job_started)
        self.jobs.progressed.connect(self._on_job_progress)
        self.jobs.ended.connect(self._on_job_ended)
        self.jobs.failed.connect(self._tell)
        self.register = Register(self)
        self.places = Places()
        self.sheet = OpeningSheet()
        self.welcome = Welcome()
        self._build_views()
        self._build_actions()
        self._build_status()
        self._search_timer = QTimer(self)
        self._search_timer.setSingleShot(True)
        self._search_timer.setInterval(120)
        self._search_timer.timeout.connect(self._search_now)
        self.setWindowTitle("hwsched")
        self.resize(1360, 740)
        self._enable()

    # --- building -----------------------------------------------------------------------------------------------

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
        for column, width in enumerate((70, 86, 124, 190, 84, 48, 74, 116, 150, 96, 70)):
            self.table.setColumnWidth(column, width)
        self.table.horizontalHeader().setStretchLastSection(True)
        self.table.selectionModel().selectionChanged.connect(self._on_selection)
        self.places.chosen.connect(self._on_place)
        self.sheet.edited.connect(self._on_edited)
        self.sheet.wants_part.connect(self.ask_part)
        self.sheet.unit_dragged.connect(self._on_unit_dragged)
        self.sheet.unit_dropped.connect(self.move_unit)

        middle = QWidget()
        layout = QVBoxLayout(middle)
        layout.setContentsMargins(4, 6, 4, 4)
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
        self.welcome.wants_new.connect(self.ask_new)
        self.welcome.wants_open.connect(self.ask_open)
        self.welcome.wants_sample.connect(self.ask_sample)

    def _build_actions(self) -> None:
        def action(text: str, tip: str, slot: Callable[[], Any], keys: Any = None) -> QAction:
            made = QAction(text, self)
            made.setToolTip(tip)
            made.setStatusTip(tip)
            if keys is not None:
                made.setShortcut(QKeySequence(keys))
            made.triggered.connect(lambda _checked=False: slot())
            return made

        standard = QKeySequence.StandardKey
        self.act_new = action("New project", "Make a project file", self.ask_new, standard.New)
        self.act_open = action("Open project", "Open a project file", self.ask_open, standard.Open)
        self.act_survey = action("Take in survey", "Read a survey workbook, with a preview", self.ask_survey, "Ctrl+I")
        self.act_catalogue = action("Take in catalogue", "Read a catalogue workbook", self.ask_catalogue)
        self.act_fit = action("Fit", "Work out parts, place, cable, power and holes", self.fit, "F5")
        self.act_check = action("Check", "Let every rule speak again", self.check, "F6")
        self.act_print = action("Print", "Schedule, pick list, install packets", self.ask_print, standard.Print)
        self.act_calculators = action("Calculators", "Work out one number by itself", self.show_calculators, "F9")
        self.act_release = action(
            "Release unit", "Leave the place of the chosen opening's unit to the fit again", self.release_unit
        )
        self.act_undo = action("Undo", "Take back the last step", self.undo, standard.Undo)
        self.act_redo = action("Redo", "Do again what was taken back", self.redo, standard.Redo)
        self.act_form = action("Write survey form", "Write a blank workbook for the surveyor", self.ask_form)
        self.act_export = action("Write catalogue", "Write the catalogue as a workbook", self.ask_export)
        self.act_settings = action("Settings and rules", "Units, limits, rules switched off", self.ask_settings)
        self.act_field = action("New field of our own", "Define a field of the project's own", self.ask_field)
        self.act_history = action("History", "Who changed what, and when", self.show_history, "Ctrl+H")
        self.act_add = action("Add opening", "Add an opening by hand", self.ask_opening)
        self.act_item = action("Add existing item", "Add an existing item to the chosen opening", self.ask_item)
        self.act_remove = action("Remove opening", "Remove the chosen opening with all its facts", self.remove_opening)
        quit_ = action("Quit", "Close the desktop", self.close, standard.Quit)
        project = self.menuBar().addMenu("&Project")
        project.addActions([self.act_new, self.act_open])
        project.addSeparator()
        project.addActions([self.act_survey, self.act_catalogue])
        project.addSeparator()
        project.addActions([self.act_form, self.act_export])
        project.addSeparator()
        project.addActions([self.act_settings, self.act_field, self.act_history])
        project.addSeparator()
        project.addAction(quit_)
        work = self.menuBar().addMenu("&Work")
        work.addActions([self.act_fit, self.act_check, self.act_print])
        work.addSeparator()
        work.addActions([self.act_add, self.act_item, self.act_remove])
        work.addSeparator()
        work.addActions([self.act_undo, self.act_redo])
        work.addSeparator()
        work.addActions([self.act_release, self.act_calculators])
        bar = self.addToolBar("Work")
        bar.setObjectName("work")
        bar.setMovable(False)
        bar.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextOnly)
        for group in (
            (self.act_new, self.act_open),
            (self.act_survey, self.act_catalogue),
            (self.act_fit, self.act_check, self.act_print),
            (self.act_undo, self.act_redo),
        ):
            bar.addActions(list(group))
            bar.addSeparator()

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
        idle = not self.jobs.busy
        open_ = idle and self.workspace is not None
        filled = open_ and self.workspace is not None and bool(self.workspace.checked)
        for made in (self.act_new, self.act_open):
            made.setEnabled(idle)
        for made in (
            *(self.act_survey, self.act_catalogue, self.act_form, self.act_export),
            *(self.act_settings, self.act_field, self.act_history, self.act_add),
            *(self.act_undo, self.act_redo),
        ):
            made.setEnabled(open_)
        for made in (self.act_fit, self.act_check, self.act_print, self.act_item, self.act_remove, self.act_release):
            made.setEnabled(filled)
        self.sheet.facts.setEnabled(open_)

    # --- projects -----------------------------------------------------------------------------------------------

    def ask_new(self) -> None:
        """Ask for a place and a title, and make a project there."""
        path, _ = QFileDialog.getSaveFileName(self, "New project", "", PROJECTS)
        if not path:
            return
        target = Path(path).with_suffix(".hwsched")
        name, given = QInputDialog.getText(self, "New project", "Title of the project:", text=target.stem)
        if given:
            self.new_project(str(target), name.strip() or target.stem)

    def new_project(self, target: str, name: str) -> None:
        """Make a project and show it."""
        self._guarded(lambda: self._show(create_project(target, name, length_style="fraction", bare_unit="in")))

    def ask_open(self) -> None:
        """Ask for a project file and open it."""
        path, _ = QFileDialog.getOpenFileName(self, "Open project", "", PROJECTS)
        if path:
            self.open_project(path)

    def open_project(self, target: str) -> None:
        """Open a project and show it."""
        self._guarded(lambda: self._show(open_project(target)))

    def ask_sample(self) -> None:
        """Ask for a folder and run the main job on the sample there."""
        folder = QFileDialog.getExistingDirectory(self, "Folder for the sample")
        if folder:
            self.run_sample(Path(folder))

    def run_sample(self, folder: Path) -> None:
        """Run the main job on the sample, then open its project."""

        def work(progress: Progress, _cancelled: Cancelled) -> Any:
            return demonstrate(folder, who=self.who, progress=progress)

        self.jobs.run("Working out the sample", work, lambda shown: self.open_project(str(shown.project)))

    def _show(self, project: Project) -> None:
        if self.workspace is not None:
            self.workspace.close()
            self.workspace.deleteLater()
        self.workspace = Workspace(project, self.who, self)
        self.workspace.reloaded.connect(self._on_reloaded)
        self.workspace.touched.connect(self._on_touched)
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

        self.jobs.run(title, work, workspace.take)

    # --- verbs --------------------------------------------------------------------------------------------------

    def ask_survey(self) -> None:
        """Ask for a survey and take it in after a preview."""
        path, _ = QFileDialog.getOpenFileName(self, "Take in survey", "", SURVEYS)
        if path:
            self.take_survey(Path(path))

    def take_survey(self, path: Path) -> None:
        """Preview a survey; on the person's word take it in."""
        workspace = self.workspace
        if workspace is None:
            return
        options = SurveyOptions()
        self.jobs.run(
            f"Reading {path.name}",
            lambda _progress, _cancelled: preview_survey(workspace.project, path, options),
            lambda seen: self._on_preview(path, options, seen),
        )

    def _on_preview(self, path: Path, options: SurveyOptions, seen: Any) -> None:
        dialog = PreviewDialog(path.name, seen, self)
        self.preview = dialog
        dialog.accepted.connect(lambda: self._take_in(path, options, dialog.accept_mode()))
        dialog.open()

    def _take_in(self, path: Path, options: SurveyOptions, accept: str) -> None:
        workspace = self.workspace
        if workspace is None:
            return

        def work(progress: Progress, _cancelled: Cancelled) -> Any:
            return import_survey(
                workspace.project, path, options, who=workspace.who, accept=accept, progress=progress
            )  # fmt: skip

        self.jobs.run(f"Taking in {path.name}", work, lambda _done: self._reload("Checking"))

    def ask_catalogue(self) -> None:
        """Ask for a catalogue and take it in."""
        path, _ = QFileDialog.getOpenFileName(self, "Take in catalogue", "", WORKBOOKS)
        if path:
            self.take_catalogue(Path(path))

    def take_catalogue(self, path: Path) -> None:
        """Take in a catalogue."""
        workspace = self.workspace
        if workspace is None:
            return

        def then(done: Any) -> None:
            self.statusBar().showMessage(f"{done.parts} parts read: {done.added} new, {done.changed} changed", 8000)
            self._reload("Checking")

        self.jobs.run(
            f"Taking in {path.name}",
            lambda _progress, _cancelled: import_catalogue(workspace.project, path, who=workspace.who),
            then,
        )

    def fit(self) -> None:
        """Fit the openings that are shown, and read them anew."""
        workspace = self.workspace
        if workspace is None:
            return
        ids = self.register.shown_ids()

        def work(progress: Progress, cancelled: Cancelled) -> Any:
            fit_openings(workspace.project, ids, who=workspace.who, progress=progress, cancelled=cancelled)
            return check_openings(workspace.project, checker=workspace.checker, progress=progress)

        self.jobs.run(f"Fitting {len(ids)} openings", work, workspace.take)

    def check(self) -> None:
        """Read and check everything anew."""
        self._reload("Checking")

    def ask_print(self) -> None:
        """Ask what to print and where to."""
        dialog = PrintDialog(len(self.register.shown_ids()), len(self._chosen_ids()), self)
        dialog.accepted.connect(lambda: self.print_documents(*dialog.answer()))
        dialog.open()

    def print_documents(self, names: list[str], scope: str, folder: Path, paper: str) -> None:
        """Issue documents of all, the shown or the chosen openings."""
        workspace = self.workspace
        if workspace is None:
            return
        ids = {"all": None, "shown": self.register.shown_ids(), "chosen": self._chosen_ids()}[scope]

        def work(progress: Progress, cancelled: Cancelled) -> Any:
            view = project_view(workspace.project, ids, checker=workspace.checker)
            written: list[Path] = []
            for name in names:
                written += issue_by_name(view, name, folder, paper=paper, progress=progress, cancelled=cancelled)
            return written

        def then(written: list[Path]) -> None:
            self.statusBar().showMessage(f"{len(written)} files written into {folder}", 15000)

        self.jobs.run("Printing", work, then)

    def ask_form(self) -> None:
        """Ask for a file and write the survey form."""
        path, _ = QFileDialog.getSaveFileName(self, "Write survey form", "survey-form.xlsx", WORKBOOKS)
        workspace = self.workspace
        if path and workspace is not None:
            self._guarded(lambda: self._wrote(path, write_form(workspace.project, Path(path))))

    def ask_export(self) -> None:
        """Ask for a file and write the catalogue."""
        path, _ = QFileDialog.getSaveFileName(self, "Write catalogue", "catalogue.xlsx", WORKBOOKS)
        workspace = self.workspace
        if path and workspace is not None:
            self._guarded(lambda: self._wrote(path, export_catalogue(workspace.project, Path(path))))

    def _wrote(self, path: str, _count: int) -> None:
        self.statusBar().showMessage(f"Wrote {path}", 8000)

    def ask_settings(self) -> None:
        """Ask what the project decides."""
        if self.workspace is None:
            return
        project = self.workspace.project
        self.settings = SettingsDialog(project.title, settings_of(project), self)
        self.settings.accepted.connect(self._on_settings)
        self.settings.open()

    def _on_settings(self) -> None:
        workspace = self.workspace
        if workspace is None:
            return
        try:
            name, lengths, prefer, limits, off = self.settings.answer()
        except ValueError as error:
            self._tell(ChangeError(str(error)))
            return

        def act() -> None:
            set_settings(
                workspace.project, who=workspace.who, name=name, length_style=lengths, prefer=prefer,
                limits=limits or None, rules_off=off or None,
            )  # fmt: skip
            self._after_settings()

        self._guarded(act)

    def _after_settings(self) -> None:
        if self.workspace is None:
            return
        style = self.workspace.project.length_style
        self.style_of_lengths = next((s for s in LENGTH_STYLES if s == style), "fraction")
        self.setWindowTitle(f"{self.workspace.project.title} - hwsched")
        self._reload("Checking")

    def ask_field(self) -> None:
        """Ask for the name of a text field on openings, and define it."""
        label, given = QInputDialog.getText(self, "New field", "Label of the field on openings:")
        if given and label.strip():
            self.define_field(label.strip())

    def define_field(self, label: str) -> None:
        """Define a text field of the project's own on openings."""
        workspace = self.workspace
        if workspace is None:
            return
        name = "_".join("".join(c if c.isalnum() else " " for c in label.casefold()).split())

        def act() -> None:
            define_field(workspace.project, "opening", name, label, "text", who=workspace.who)
            self._reload("Reading the project")

        self._guarded(act)

    def show_history(self) -> None:
        """Show the steps of the journal."""
        if self.workspace is None:
            return
        self.history = HistoryDialog(history(self.workspace.project), self)
        self.history.wants_back.connect(self.take_back)
        self.history.show()

    def take_back(self, number: int) -> None:
        """Take back one older step; one on which later ones depend is refused, with their numbers."""
        workspace = self.workspace
        if workspace is None or self.jobs.busy:
            return

        def act() -> None:
            self._after(undo_one(workspace.project, number, who=workspace.who))
            self.history.show_steps(history(workspace.project))

        self._guarded(act)

    def ask_opening(self) -> None:
        """Ask for a mark and add an opening."""
        mark, given = QInputDialog.getText(self, "Add opening", "Mark of the new opening:")
        if given and mark.strip():
            self.add_opening(mark.strip())

    def add_opening(self, mark: str) -> None:
        """Add an opening with one leaf; its facts are then typed into the sheet."""
        workspace = self.workspace
        if workspace is None or self.jobs.busy:
            return

        def act() -> None:
            changes, self.chosen = add_opening(workspace.project, {"mark": mark}, who=workspace.who)
            self._after(changes)

        self._guarded(act)

    def ask_item(self) -> None:
        """Ask what was found and add it to the chosen opening."""
        kinds = {choice.label: choice.value for choice in ITEM.attribute("kind").choices}
        label, given = QInputDialog.getItem(self, "Add existing item", "What was found:", list(kinds), 0, False)
        if given:
            self.add_item(kinds[label])

    def add_item(self, kind: str) -> None:
        """Add an existing item of a kind to the chosen opening."""
        workspace, opening = self.workspace, self.chosen
        if workspace is None or opening is None or self.jobs.busy:
            return
        self._guarded(lambda: self._after(add_item(workspace.project, opening, {"kind": kind}, who=workspace.who)[0]))

    def remove_opening(self) -> None:
        """Remove the chosen opening; undo brings it back."""
        workspace, opening = self.workspace, self.chosen
        if workspace is None or opening is None or self.jobs.busy:
            return
        self._guarded(lambda: self._after(remove(workspace.project, "opening", opening, who=workspace.who)))

    def show_calculators(self) -> None:
        """Show the calculators; they need no project."""
        self.calculators = CalculatorsDialog(self)
        self.calculators.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.calculators.show()

    def undo(self) -> None:
        """Take back the last step."""
        self._step(undo)

    def redo(self) -> None:
        """Do again what was taken back."""
        self._step(redo)

    def _step(self, verb: Callable[..., Changes]) -> None:
        workspace = self.workspace
        if workspace is None or self.jobs.busy:
            return
        self._guarded(lambda: self._after(verb(workspace.project, who=workspace.who)))

    def _after(self, changes: Changes) -> None:
        """Read anew what an edit touched: a handful here and now, more in the background."""
        if self.workspace is None:
            return
        if changes.entities & {"project", "own_field"}:
            self._after_settings()
        elif len(changes.openings) > 20 or changes.parts:
            self._reload("Checking")
        else:
            self.workspace.refresh(changes.openings)

    @Slot(str, str, str, str)
    def _on_edited(self, entity: str, row: str, attribute: str, text: str) -> None:
        workspace = self.workspace
        if workspace is None or self.jobs.busy:
            return
        self._guarded(lambda: self._after(type_in(workspace.project, entity, row, attribute, text, who=workspace.who)))

    def ask_part(self, role: str, number: str) -> None:
        """Ask which part of the same kind shall take a role of the chosen opening, or leave it to the fit."""
        workspace, opening = self.workspace, self.chosen
        if workspace is None or opening is None or self.jobs.busy:
            return
        offered = {f"{each}  {text}": each for each, text in parts_like(workspace.project, number)}
        words = [LEAVE_TO_FIT, *offered]
        at = next((place for place, word in enumerate(words) if offered.get(word) == number), 0)
        word, given = QInputDialog.getItem(self, "Choose by hand", f"Part for the role {role}:", words, at, False)
        if given:
            self.choose_part(opening, role, offered.get(word))

    def choose_part(self, opening: str, role: str, part: str | None) -> None:
        """Choose a part by hand for a role, or leave it to the fit; the opening is looked at anew at once."""
        workspace = self.workspace
        if workspace is None:
            return
        if part is None:
            self._guarded(lambda: self._after(release_part(workspace.project, opening, role, who=workspace.who)))
        else:
            self._guarded(lambda: self._after(choose_part(workspace.project, opening, role, part, who=workspace.who)))

    def _on_unit_dragged(self, x_mm: float, y_mm: float) -> None:
        workspace = self.workspace
        checked = workspace.checked.get(self.chosen) if workspace is not None and self.chosen else None
        if workspace is None or checked is None or self.jobs.busy:
            return
        tried = with_unit_at(checked, x_mm, y_mm, workspace.checker)
        self.sheet.show_tried(tried, self.style_of_lengths, self._said_of(tried))

    def _said_of(self, tried: Checked) -> str:
        style, fit_ = self.style_of_lengths, tried.fit
        against = against_place(tried)
        words = ["Does not fit here: " + against[0].message if against else "Fits here"]
        if fit_ is not None and fit_.cable is not None:
            words.append(f"lead {format_length(fit_.cable.available_mm - fit_.cable.length_mm, style)} to spare")
        if fit_ is not None and fit_.placement is not None and fit_.placement.clearances:
            name, free = fit_.placement.clearances[0]
            words.append(f"{format_length(free, style)} to {name}" if free >= 0 else f"overlaps {name}")
        return " · ".join(words)

    def move_unit(self, x_mm: float, y_mm: float) -> None:
        """Place the unit of the chosen opening by hand; a place that does not fit is refused with its reason."""
        workspace = self.workspace
        checked = workspace.checked.get(self.chosen) if workspace is not None and self.chosen else None
        if workspace is None or checked is None or self.jobs.busy:
            return
        tried = with_unit_at(checked, x_mm, y_mm, workspace.checker)
        against = against_place(tried)
        place = tried.fit.placement if tried.fit is not None else None
        if against or place is None:
            self._show_sheet()
            reason = against[0].message if against else "There is no place for the unit here."
            self.sheet.state.setText(f"Refused, the unit stays where it was: {reason}")
            return
        self._guarded(
            lambda: self._after(
                place_unit(
                    workspace.project,
                    checked.case.opening.id,
                    leaf=place.leaf,
                    face=place.face,
                    pattern=place.pattern,
                    x_mm=round(x_mm, 2),
                    y_mm=round(y_mm, 2),
                    who=workspace.who,
                )
            )
        )

    def release_unit(self) -> None:
        """Leave the place of the chosen opening's unit to the fit again."""
        workspace, opening = self.workspace, self.chosen
        if workspace is not None and opening is not None and not self.jobs.busy:
            self._guarded(lambda: self._after(release_unit(workspace.project, opening, who=workspace.who)))

    # --- following ----------------------------------------------------------------------------------------------

    def _on_reloaded(self) -> None:
        if self.workspace is None:
            return
        checked = list(self.workspace.checked.values())
        self.register.load(checked)
        self.places.show_places(self.workspace.project.title, checked)
        self._show_count()
        self._select(self.chosen)
        self._enable()

    def _on_touched(self, ids: frozenset[str]) -> None:
        if self.workspace is None:
            return
        self.register.renew(self.workspace.checked[each] for each in ids)
        if self.chosen in ids:
            self._show_sheet()

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

    # --- telling ------------------------------------------------------------------------------------------------

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
        try:
            act()
        except (ProjectError, ChangeError, InputRejected) as error:
            self._tell(error)

    def _tell(self, error: Exception) -> None:
        """Say in words what went wrong; nothing was changed. A bug is shown with its kind, not swallowed."""
        known = isinstance(error, ProjectError | ChangeError | InputRejected)
        text = str(error) if known else f"{type(error).__name__}: {error}"
        lines = text.splitlines() or [text]
        box = QMessageBox(QMessageBox.Icon.Warning, "Not done", "\n".join(lines[:12]), parent=self)
        box.setInformativeText("Nothing was changed.")
        if len(lines) > 12:
            box.setDetailedText(text)
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.told = box
        box.open()
        self._show_sheet()

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802
        """Stop what is running and close the project."""
        self.jobs.wait()
        if self.workspace is not None:
            self.workspace.close()
            self.workspace = None
        super().closeEvent(event)
