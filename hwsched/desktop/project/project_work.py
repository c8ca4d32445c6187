"""What a person does with the project as a whole: taking in, working out, printing, settings, history."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

from PySide6.QtWidgets import (
    QFileDialog,
    QInputDialog,
    QMessageBox,
)

from hwsched.desktop.jobs import Cancelled, Failure, Progress
from hwsched.desktop.opening.hand_work import HandWork
from hwsched.desktop.project.history_dialog import HistoryDialog
from hwsched.desktop.project.people_dialog import PeopleDialog
from hwsched.desktop.project.settings_dialog import SettingsDialog
from hwsched.desktop.release.print_dialog import PrintDialog
from hwsched.desktop.survey.preview_dialog import PreviewDialog
from hwsched.documents.release.packet import PACKET
from hwsched.documents.view import Format
from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model.errors import ChangeError, NotUndoableError
from hwsched.operations.changes import Changes
from hwsched.operations.opening.fitting_openings import FitOutcome, fit_openings
from hwsched.operations.parts.catalogue_export import export_catalogue
from hwsched.operations.parts.catalogue_import import import_catalogue
from hwsched.operations.project.demonstration import demonstrate
from hwsched.operations.project.history import history, newest, redo, redo_one, undo, undo_one
from hwsched.operations.project.people import add_person, people, remove_person
from hwsched.operations.project.reading_settings import settings_of
from hwsched.operations.project.settings import set_settings
from hwsched.operations.release.issued_documents import PRINTS, issue_by_name
from hwsched.operations.release.issued_packets import write_down_packets
from hwsched.operations.release.project_view import project_view
from hwsched.operations.shown import ShownOtherwiseError
from hwsched.operations.survey.own_fields import define_field
from hwsched.operations.survey.survey_forms import write_form
from hwsched.operations.survey.survey_import import PreviewResult, import_survey, preview_survey

SURVEYS = "Surveys (*.xlsx *.xls *.ods *.csv)"
WORKBOOKS = "Workbooks (*.xlsx)"
PROJECTS = "Projects (*.hwsched)"


class ProjectWork(HandWork):
    """Verbs of the project, the long ones off the screen's thread."""

    def ask_new(self) -> None:
        """Ask for a place and a title, and make a project there."""
        path, _ = QFileDialog.getSaveFileName(self, "New project", "", PROJECTS)
        if not path:
            return
        target = Path(path).with_suffix(".hwsched")
        name, stated = QInputDialog.getText(self, "New project", "Title of the project:", text=target.stem)
        if stated:
            self.new_project(str(target), name.strip() or target.stem, self.ask_new)

    def ask_open(self) -> None:
        """Ask for a project file and open it."""
        path, _ = QFileDialog.getOpenFileName(self, "Open project", "", PROJECTS)
        if path:
            self.open_project(path, self.ask_open)

    def ask_sample(self) -> None:
        """Ask for a folder and run the main job on the sample there."""
        folder = QFileDialog.getExistingDirectory(self, "Folder for the sample")
        if folder:
            self.run_sample(Path(folder))

    def run_sample(self, folder: Path) -> None:
        """Run the main job on the sample, then open its project."""

        def work(progress: Progress, _cancelled: Cancelled) -> Any:
            return demonstrate(folder, who=self.who, progress=progress)

        self.jobs.run(
            "Working out the sample",
            work,
            lambda shown: self.open_project(str(shown.project)),
            ask_again=self.ask_sample,
        )

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

    def _on_preview(self, path: Path, options: SurveyOptions, seen: PreviewResult, first: str = "") -> None:
        dialog = PreviewDialog(path.name, seen, self, first)
        self.preview = dialog
        dialog.accepted.connect(
            lambda: self._take_in(path, options, seen, dialog.accept_mode(), dialog.fit_too.isChecked())
        )
        dialog.open()

    def _take_in(self, path: Path, options: SurveyOptions, seen: PreviewResult, accept: str, fit_too: bool) -> None:
        workspace = self.workspace
        if workspace is None:
            return

        def work(progress: Progress, cancelled: Cancelled) -> Any:
            try:
                return import_survey(
                    workspace.project, path, options, who=workspace.who, accept=accept, seen=seen, fit_too=fit_too,
                    progress=progress, cancelled=cancelled,
                )  # fmt: skip
            except ShownOtherwiseError as otherwise:
                return otherwise

        def then(done: Any) -> None:
            if isinstance(done, ShownOtherwiseError) and isinstance(done.now, PreviewResult):
                self._on_preview(path, options, done.now, f"Not taken in: {done}. This is what it would change now.")

        self.jobs.run(f"Taking in {path.name}", work, then)

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

        self.jobs.run(
            f"Taking in {path.name}",
            lambda _progress, _cancelled: import_catalogue(workspace.project, path, who=workspace.who),
            then,
        )

    def fit(self) -> None:
        """Fit the openings that are shown; those whose fit is another one are read anew."""
        workspace = self.workspace
        if workspace is None:
            return
        ids = self.register.shown_ids()

        def work(progress: Progress, cancelled: Cancelled) -> Any:
            return fit_openings(workspace.project, ids, who=workspace.who, progress=progress, cancelled=cancelled)

        def then(done: tuple[Changes, list[FitOutcome]]) -> None:
            kept = sum(each.kept for each in done[1])
            if kept:
                self.statusBar().showMessage(f"{kept} released openings keep what an earlier version worked out", 15000)

        self.jobs.run(f"Fitting {len(ids)} openings", work, then)

    def check(self) -> None:
        """Read and check everything anew."""
        self._reload("Checking")

    def ask_print(self) -> None:
        """Ask what to print and where to."""
        dialog = PrintDialog(len(self.register.shown_ids()), len(self._chosen_ids()), self)
        dialog.accepted.connect(lambda: self.print_documents(*dialog.answer()))
        dialog.open()

    def print_documents(
        self,
        names: list[str],
        scope: str,
        folder: Path,
        paper: str,
        formats: frozenset[Format] | None = None,
        went_out: bool = False,
    ) -> None:
        """Issue documents of all, the shown or the chosen openings; on wish write down that the packets went out."""
        workspace = self.workspace
        if workspace is None:
            return
        ids = {"all": None, "shown": self.register.shown_ids(), "chosen": self._chosen_ids()}[scope]

        def work(progress: Progress, cancelled: Cancelled) -> list[Path]:
            view = project_view(workspace.project, ids, checker=workspace.checker)
            written: list[Path] = []
            for name, _, has in PRINTS:
                wanted = [each for each in has if formats is None or each in formats]
                if name in names and wanted:
                    written += issue_by_name(
                        view, name, folder, wanted, paper=paper, progress=progress, cancelled=cancelled
                    )  # fmt: skip
            if went_out and PACKET.name in names and not cancelled():
                write_down_packets(workspace.project, view, who=workspace.who)
            return written

        def then(written: list[Path]) -> None:
            self.statusBar().showMessage(f"{len(written)} files written into {folder}", 15000)

        self.jobs.run("Printing", work, then, ask_again=self.ask_print)

    def ask_form(self) -> None:
        """Ask for a file and write the survey form."""
        path, _ = QFileDialog.getSaveFileName(self, "Write survey form", "survey-form.xlsx", WORKBOOKS)
        workspace = self.workspace
        if path and workspace is not None:
            self._write(path, lambda: write_form(workspace.project, Path(path)), self.ask_form)

    def ask_export(self) -> None:
        """Ask for a file and write the catalogue."""
        path, _ = QFileDialog.getSaveFileName(self, "Write catalogue", "catalogue.xlsx", WORKBOOKS)
        workspace = self.workspace
        if path and workspace is not None:
            self._write(path, lambda: export_catalogue(workspace.project, Path(path)), self.ask_export)

    def _write(self, path: str, act: Callable[[], Any], again: Callable[[], None]) -> None:
        """Write a file; where that cannot be, another place is asked for on wish."""
        self.jobs.edit(
            f"Writing {Path(path).name}",
            act,
            lambda _count: self.statusBar().showMessage(f"Wrote {path}", 8000),
            ask_again=again,
        )

    def ask_settings(self) -> None:
        """Ask what the project decides."""
        if self.workspace is None:
            return
        project = self.workspace.project
        base = newest(project)
        self.settings = SettingsDialog(project.title, settings_of(project), self)
        self.settings.accepted.connect(lambda: self._on_settings(base))
        self.settings.open()

    def _on_settings(self, seen: int) -> None:
        workspace = self.workspace
        if workspace is None:
            return
        try:
            name, lengths, prefer, limits, off = self.settings.answer()
        except ValueError as error:
            self._tell(Failure("Settings", ChangeError(str(error)), ask_again=self.settings.open))
            return
        self.edit_seen(
            lambda base: set_settings(
                workspace.project, who=workspace.who, name=name, length_style=lengths, prefer=prefer,
                limits=limits or None, rules_off=off or None, base=base,
            ),
            seen,
        )  # fmt: skip

    def ask_field(self) -> None:
        """Ask for the name of a text field on openings, and define it."""
        label, stated = QInputDialog.getText(self, "New field", "Label of the field on openings:")
        if stated and label.strip():
            self.define_field(label.strip())

    def define_field(self, label: str) -> None:
        """Define a text field of the project's own on openings."""
        workspace = self.workspace
        if workspace is None:
            return
        name = "_".join("".join(c if c.isalnum() else " " for c in label.casefold()).split())

        self.edit(lambda: define_field(workspace.project, "opening", name, label, "text", who=workspace.who))

    def show_history(self) -> None:
        """Show the steps of the journal."""
        if self.workspace is None:
            return
        self.history = HistoryDialog(history(self.workspace.project), self)
        self.history.wants_back.connect(self.take_back)
        self.history.wants_again.connect(self.do_again)
        self.history.show()

    def take_back(self, number: int) -> None:
        """Take back one step, be it another person's; one on which later ones depend is refused, with their numbers."""
        self._step_of_history(undo_one, number)

    def do_again(self, number: int) -> None:
        """Do one step again that was taken back."""
        self._step_of_history(redo_one, number)

    def _step_of_history(self, verb: Callable[..., Changes], number: int) -> None:
        workspace = self.workspace
        if workspace is None or self.jobs.busy:
            return

        def then(_changes: Changes) -> None:
            self._guarded(lambda: self.history.show_steps(history(workspace.project)))

        self.edit(lambda: verb(workspace.project, number, who=workspace.who), then, asker=self.history)

    def undo(self) -> None:
        """Take back the person's last step."""
        self._step(undo)

    def redo(self) -> None:
        """Do again what the person took back last."""
        self._step(redo)

    def _step(self, verb: Callable[..., Changes]) -> None:
        workspace = self.workspace
        if workspace is not None:
            self.edit(lambda: verb(workspace.project, who=workspace.who))

    def _tell(self, failure: Failure) -> None:
        """Tell what went wrong; where steps of others stand in the way, offer the history in which they are chosen."""
        super()._tell(failure)
        box = self.told
        if isinstance(failure.error, NotUndoableError) and isinstance(box, QMessageBox) and failure.asker is None:
            show = box.addButton("Show history", QMessageBox.ButtonRole.ActionRole)
            show.clicked.connect(lambda _checked=False: self.show_history())

    def show_people(self) -> None:
        """Show who works on the project, and in which role."""
        workspace = self.workspace
        if workspace is None:
            return
        self.people = PeopleDialog(workspace.who, self)
        self.people.wants_person.connect(self.list_person)
        self.people.wants_gone.connect(self.take_off_person)
        self._show_people()
        self.people.open()

    def list_person(self, name: str, role: str) -> None:
        """List a person, or give another role."""
        workspace = self.workspace
        if workspace is not None:
            project, who = workspace.project, workspace.who
            self._edit_people(lambda base: add_person(project, name, role, who=who, base=base))

    def take_off_person(self, name: str) -> None:
        """Take a person off the list."""
        workspace = self.workspace
        if workspace is not None:
            project, who = workspace.project, workspace.who
            self._edit_people(lambda base: remove_person(project, name, who=who, base=base))

    def _edit_people(self, act: Callable[[int | None], Changes]) -> None:
        self.edit_seen(act, self.people.base, lambda _changes: self._show_people(), asker=self.people)

    def _show_people(self) -> None:
        if self.workspace is not None:
            base = newest(self.workspace.project)
            self.people.show_people(people(self.workspace.project), base)
