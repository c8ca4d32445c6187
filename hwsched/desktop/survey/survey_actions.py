"""The survey in the main window: taken in after a preview, blank forms written, missing facts listed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QInputDialog, QMessageBox
from shiboken6 import isValid

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.frame.subject import Subject
from hwsched.desktop.jobs.jobs import Cancelled, Progress
from hwsched.desktop.jobs.trouble import why_of
from hwsched.desktop.widgets.asked_files import file_to_read, file_to_write
from hwsched.language import phrase, to_phrase

if TYPE_CHECKING:
    from hwsched.desktop.survey.preview_dialog import PreviewDialog
    from hwsched.exchange.survey.facts import AnswerKey, SurveyOptions
    from hwsched.operations.survey.fact_edit import FactEdit
    from hwsched.operations.survey.survey_import import LaidOpen, PreviewResult

_SURVEYS = to_phrase("Surveys (*.xlsx *.xlsm *.xlsb *.xls *.ods *.csv *.tsv *.txt)")
_FORMS = to_phrase("Workbooks (*.xlsx);;Sheets to print (*.pdf)")


@dataclass(frozen=True, slots=True)
class _Said:
    """What was said of a file, as it was then."""

    file: tuple[int, int] | None
    options: SurveyOptions
    answers: tuple[SurveyOptions, ...]


def _state_of(path: Path) -> tuple[int, int] | None:
    """Return by what it is seen that a file was changed: size and time."""
    try:
        state = path.stat()
    except OSError:
        return None
    return state.st_size, state.st_mtime_ns


class SurveyActions(Subject):
    """What comes from the building."""

    lost = Signal(object, str)
    """Edits that could not be written, and why."""
    written = Signal(object)
    """Edits that were."""

    def __init__(self, frame: Frame) -> None:
        super().__init__(frame)
        self.preview: PreviewDialog | None = None
        self._unfolded: list[AnswerKey] = []
        self._answers: list[SurveyOptions] = []
        """What was said before each answer, so that it can be taken back."""
        self._hand = ""
        """Which control had the keys when the last answer was given."""
        self._said: dict[tuple[str, Path], _Said] = {}
        """What was said of a file that was not taken in yet: the preview can be closed and shown again."""
        self.act_survey = self.action(
            to_phrase("Take in survey"),
            to_phrase("Read a survey workbook, with a preview"),
            self.ask_survey,
            "project",
            "Ctrl+I",
        )
        self.act_form = self.action(
            to_phrase("Write survey form"),
            to_phrase("Write a blank workbook or paper sheets for the surveyor"),
            self.ask_form,
            "project",
        )
        self.act_missing = self.way_to("missing")

    def set_facts(self, edits: Sequence[FactEdit], seen: int | None) -> None:
        """Set facts that were edited in a grid, as one step; where somebody changed one of them since, ask."""
        from hwsched.operations.survey.many_facts import edit_many

        workspace = self.state.workspace
        if workspace is not None and edits:
            self.frame.edit_seen(
                lambda base: edit_many(workspace.project, edits, who=workspace.who, base=base),
                seen,
                lambda _changes: self.written.emit(edits),
                lost=lambda error: self.lost.emit(edits, why_of(error)),
            )

    def ask_survey(self) -> None:
        """Ask for a survey and take it in after a preview."""
        path = file_to_read(self.frame.window, phrase("Take in survey"), phrase(_SURVEYS))
        if path:
            self.take_survey(Path(path))

    def take_survey(self, path: Path) -> None:
        """Preview a survey; on the person's word take it in."""
        from hwsched.exchange.survey.facts import SurveyOptions

        said = self._said.get(self._key(path))
        if said is None or said.file != _state_of(path):
            self._answers = []
            self._look(path, SurveyOptions())
            return
        self._answers = list(said.answers)
        first = phrase("What was said of this file before is kept.")
        self._look(path, said.options, first)

    def _key(self, path: Path) -> tuple[str, Path]:
        """Return under what it is kept what was said of a file: one project reads it so, another one otherwise."""
        workspace = self.state.workspace
        return (workspace.project.place if workspace is not None else ""), path

    def _look(
        self,
        path: Path,
        options: SurveyOptions,
        first: str = "",
        before: LaidOpen | None = None,
        at: str = "",
        instead: PreviewDialog | None = None,
    ) -> None:
        workspace = self.state.workspace
        if workspace is None:
            return

        def work(_progress: Progress, _cancelled: Cancelled) -> LaidOpen:
            # What reads spreadsheets is loaded beside the screen's thread, too.
            from hwsched.operations.survey.survey_import import lay_open

            return lay_open(workspace.project, path, options, before)

        self.jobs.run(
            phrase("Reading {name}", name=path.name),
            work,
            lambda opened: self._on_preview(path, options, opened, first, at, instead),
        )

    def ask_form(self) -> None:
        """Ask for a file and write the survey form: a workbook, or sheets to print by its ending."""
        from hwsched.operations.survey.survey_forms import write_form

        path = file_to_write(self.frame.window, phrase("Write survey form"), "survey-form.xlsx", phrase(_FORMS))
        workspace = self.state.workspace
        if path and workspace is not None:
            self.frame.write(path, lambda: write_form(workspace.project, Path(path)), self.ask_form)

    def _on_preview(
        self,
        path: Path,
        options: SurveyOptions,
        opened: LaidOpen,
        first: str = "",
        at: str = "",
        instead: PreviewDialog | None = None,
    ) -> None:
        from hwsched.desktop.survey.preview_dialog import PreviewDialog
        from hwsched.exchange.survey.facts import Decisions

        if instead is not None and not isValid(instead):
            # It was closed while the file was read anew.
            return
        column = instead.sheet.column if instead is not None else 0
        dialog = PreviewDialog(
            path.name,
            opened,
            options,
            self.frame.window,
            first,
            self.state.style_of_lengths,
            len(self._answers),
            column,
        )
        if instead is not None:
            # At the same place, and only then the one before goes: to a person it is one window.
            dialog.setGeometry(instead.geometry())
            dialog.pages.setCurrentWidget(
                dialog.sheet if instead.pages.currentWidget() is instead.sheet else dialog.reading
            )
        dialog.show_page(at)
        if at:
            dialog.deciding.unfold(self._unfolded)
        dialog.take_hand(self._hand if instead is not None else "")
        self.preview = dialog
        if self._answers or options.decisions != Decisions():
            self._said[self._key(path)] = _Said(_state_of(path), options, tuple(self._answers))
        else:
            self._said.pop(self._key(path), None)
        seen = opened.seen
        if seen is not None:
            dialog.accepted.connect(
                lambda: self._take_in(path, options, seen, dialog.accept_mode(), dialog.fit_too.isChecked())
            )
        dialog.again.connect(lambda said: self._again(path, said, dialog, options))
        dialog.back.connect(lambda: self._take_back(path, dialog))
        dialog.use_plan.connect(lambda: self._use_plan(path, options, dialog))
        dialog.keep_plan.connect(lambda: self._keep_plan(path, options))
        dialog.decided.connect(lambda said: self._decide(path, said, dialog, opened))
        dialog.finished.connect(lambda _result: self._let_go(dialog))
        dialog.open()
        if instead is not None:
            instead.reject()

    def _let_go(self, dialog: PreviewDialog) -> None:
        """Let a closed preview go: it holds all cells of the file, and what they were read as."""
        if self.preview is dialog:
            self.preview = None
        dialog.deleteLater()

    def _again(self, path: Path, options: SurveyOptions, dialog: PreviewDialog, before: SurveyOptions) -> None:
        self._answers.append(before)
        self._reread(path, options, dialog)

    def _take_back(self, path: Path, dialog: PreviewDialog) -> None:
        if self._answers:
            self._reread(path, self._answers.pop(), dialog)

    def _reread(self, path: Path, options: SurveyOptions, dialog: PreviewDialog) -> None:
        # No second answer to what is being read anew.
        self._hand = dialog.hand()
        dialog.pages.setEnabled(False)
        self._look(path, options, instead=dialog)

    def _use_plan(self, path: Path, options: SurveyOptions, dialog: PreviewDialog) -> None:
        from hwsched.operations.survey.plans import find_plan, list_plans

        names = [name for name, _, plan in list_plans() if plan is not None]
        if not names:
            QMessageBox.information(
                dialog, phrase("Column plans"), phrase("No plan is kept yet. Keep as a plan… keeps one.")
            )
            return
        name, chosen = QInputDialog.getItem(dialog, phrase("Read by a plan"), phrase("Plan"), names, 0, False)
        if chosen:
            self._again(path, find_plan(name).onto(options), dialog, options)

    def _keep_plan(self, path: Path, options: SurveyOptions) -> None:
        from hwsched.operations.survey.survey_import import save_plan

        workspace = self.state.workspace
        name, chosen = QInputDialog.getText(
            self.frame.window, phrase("Keep as a plan"), phrase("Name, or a file ending in .toml")
        )
        if chosen and name.strip() and workspace is not None:
            self.jobs.run(
                phrase("Keeping the column plan {name}", name=name),
                lambda _progress, _cancelled: save_plan(workspace.project, path, options, name.strip()),
                lambda _kept: None,
            )

    def _decide(self, path: Path, options: SurveyOptions, dialog: PreviewDialog, opened: LaidOpen) -> None:
        from hwsched.desktop.survey.preview_dialog import DECIDING

        # As it was unfolded, so that the next word can be said.
        self._unfolded = dialog.deciding.unfolded()
        dialog.reject()
        self._look(path, options, before=opened, at=DECIDING)

    def _take_in(self, path: Path, options: SurveyOptions, seen: PreviewResult, accept: str, fit_too: bool) -> None:
        from hwsched.operations.shown import ShownOtherwiseError
        from hwsched.operations.survey.survey_import import PreviewResult, import_survey

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
                self._look(path, options, phrase("Not taken in: {done}. This is what it would change now.", done=done))
            else:
                self._said.pop(self._key(path), None)

        self.jobs.run(phrase("Taking in {name}", name=path.name), work, then)
