"""The survey in the main window: taken in after a preview, blank forms written, missing facts listed."""

from pathlib import Path
from typing import Any

from PySide6.QtWidgets import QFileDialog

from hwsched.desktop.frame import Frame
from hwsched.desktop.jobs import Cancelled, Progress
from hwsched.desktop.subject import Subject
from hwsched.desktop.survey.missing_window import MissingWindow
from hwsched.desktop.survey.preview_dialog import DECIDING, PreviewDialog
from hwsched.exchange.survey.book import SurveyOptions
from hwsched.exchange.survey.facts import AnswerKey
from hwsched.operations.shown import ShownOtherwiseError
from hwsched.operations.survey.survey_forms import write_form
from hwsched.operations.survey.survey_import import LaidOpen, PreviewResult, import_survey, lay_open

_SURVEYS = "Surveys (*.xlsx *.xlsm *.xlsb *.xls *.ods *.csv *.tsv *.txt)"
_FORMS = "Workbooks (*.xlsx);;Sheets to print (*.pdf)"


class SurveyActions(Subject):
    """What comes from the building."""

    def __init__(self, frame: Frame) -> None:
        super().__init__(frame)
        self.preview: PreviewDialog | None = None
        self._unfolded: list[AnswerKey] = []
        self.act_survey = self.action(
            "Take in survey", "Read a survey workbook, with a preview", self.ask_survey, "project", "Ctrl+I"
        )
        self.act_form = self.action(
            "Write survey form", "Write a blank workbook or paper sheets for the surveyor", self.ask_form, "project"
        )
        self.act_missing = self.action(
            "Missing facts", "Ranked by what they unblock; return visit", self.show_missing, "project"
        )

    def ask_survey(self) -> None:
        """Ask for a survey and take it in after a preview."""
        path, _ = QFileDialog.getOpenFileName(self.frame.window, "Take in survey", "", _SURVEYS)
        if path:
            self.take_survey(Path(path))

    def take_survey(self, path: Path) -> None:
        """Preview a survey; on the person's word take it in."""
        self._look(path, SurveyOptions())

    def _look(
        self, path: Path, options: SurveyOptions, first: str = "", before: LaidOpen | None = None, at: str = ""
    ) -> None:
        workspace = self.state.workspace
        if workspace is None:
            return
        self.jobs.run(
            f"Reading {path.name}",
            lambda _progress, _cancelled: lay_open(workspace.project, path, options, before),
            lambda opened: self._on_preview(path, options, opened, first, at),
        )

    def ask_form(self) -> None:
        """Ask for a file and write the survey form: a workbook, or sheets to print by its ending."""
        path, _ = QFileDialog.getSaveFileName(self.frame.window, "Write survey form", "survey-form.xlsx", _FORMS)
        workspace = self.state.workspace
        if path and workspace is not None:
            self.frame.write(path, lambda: write_form(workspace.project, Path(path)), self.ask_form)

    def show_missing(self) -> None:
        """Show the facts that are missing."""
        self.frame.side.show(MissingWindow, lambda desk: MissingWindow(desk, self.frame.window))

    def _on_preview(self, path: Path, options: SurveyOptions, opened: LaidOpen, first: str = "", at: str = "") -> None:
        dialog = PreviewDialog(path.name, opened, options, self.frame.window, first, self.state.style_of_lengths)
        dialog.show_page(at)
        if at:
            dialog.deciding.unfold(self._unfolded)
        self.preview = dialog
        seen = opened.seen
        if seen is not None:
            dialog.accepted.connect(
                lambda: self._take_in(path, options, seen, dialog.accept_mode(), dialog.fit_too.isChecked())
            )
        dialog.again.connect(lambda said: self._again(path, said, dialog))
        dialog.decided.connect(lambda said: self._decide(path, said, dialog, opened))
        dialog.open()

    def _again(self, path: Path, options: SurveyOptions, dialog: PreviewDialog) -> None:
        dialog.reject()
        self._look(path, options)

    def _decide(self, path: Path, options: SurveyOptions, dialog: PreviewDialog, opened: LaidOpen) -> None:
        # As it was unfolded, so that the next word can be said.
        self._unfolded = dialog.deciding.unfolded()
        dialog.reject()
        self._look(path, options, before=opened, at=DECIDING)

    def _take_in(self, path: Path, options: SurveyOptions, seen: PreviewResult, accept: str, fit_too: bool) -> None:
        workspace = self.state.workspace
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
                self._look(path, options, f"Not taken in: {done}. This is what it would change now.")

        self.jobs.run(f"Taking in {path.name}", work, then)
