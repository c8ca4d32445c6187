"""What if: openings worked out under another catalogue, limit, preference or choice, compared before it is accepted."""

from typing import Any

from PySide6.QtWidgets import QFormLayout, QLabel, QTreeWidgetItem, QWidget

from hwsched.desktop.frame.tool_window import CHANGED, Desk, ToolWindow
from hwsched.desktop.jobs.jobs import Cancelled, Progress
from hwsched.desktop.looks.text_size import in_figures
from hwsched.desktop.looks.tokens import FIELD
from hwsched.desktop.opening.differences import Differences, summary
from hwsched.desktop.opening.question_form import QuestionForm
from hwsched.desktop.opening.scope_box import ScopeBox
from hwsched.desktop.widgets.buttons import let_lead
from hwsched.desktop.widgets.labels import of_first_line
from hwsched.language import phrase, phrase_of_count
from hwsched.operations.opening.what_if import Answer, accept_answer, successors, what_if
from hwsched.operations.shown import ShownOtherwiseError


class WhatIfWindow(ToolWindow):
    """A question, its differences, and whether to make it so."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, phrase("What if?"), parent)
        self.resize(1080, 620)
        self.answer: Answer | None = None
        self.scope = ScopeBox(desk)
        self.question = QuestionForm(desk.workspace)
        self.question.changed.connect(self._forget)
        self.scope.currentIndexChanged.connect(self._forget)
        form = QFormLayout()
        form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.ExpandingFieldsGrow)
        in_figures(self.scope, maximumWidth=FIELD)
        form.addRow(phrase("For"), self.scope)
        form.addRow(of_first_line(phrase("What if"), self.question.kind), self.question)
        self.said = QLabel()
        self.said.setWordWrap(True)
        self.differences = Differences(
            phrase("Choose what would be otherwise, press Ask this too, then Work out: what changes stands here.")
        )
        self.differences.setAccessibleName(phrase("What would change"))
        self.differences.itemActivated.connect(self._show_opening)
        self.work = self.button(phrase("Work out"), self.compare, phrase("Nothing is changed by it"))
        self.last = self.button(
            phrase("Successors"), self.try_successors, phrase("Every superseded part with its successor instead")
        )
        self.take = self.button(phrase("Accept"), self.accept_it, phrase("Make it so, and fit the openings"))
        self.body.addLayout(form)
        self.body.addWidget(self.said)
        self.body.addWidget(self.differences, 1)
        for each in (self.last, self.work, self.take):
            self.foot.addWidget(each)
        self._forget()

    def follow(self) -> None:
        """Say that an answer may stand on what has changed: that is seen to when it is accepted."""
        self.scope.follow()
        self.question.follow()
        if self.answer is not None:
            self.said.setText(phrase(CHANGED))
        self.enable()

    def enable(self) -> None:
        """Something must be asked, and worked out, before it is accepted."""
        idle = self.idle
        self.work.setEnabled(idle and bool(self.question.asked) and bool(self.scope.ids()))
        self.last.setEnabled(idle and bool(self.desk.workspace.checked))
        self.take.setEnabled(idle and self.answer is not None)
        let_lead(*((self.work, self.take) if self.answer is None else (self.take, self.work)))

    def compare(self) -> None:
        """Compare the openings as they are and as they would be."""
        project, asked, ids = self.desk.workspace.project, self.question.question(), self.scope.ids()

        def work(progress: Progress, cancelled: Cancelled) -> Any:
            found = what_if(project, asked, ids, progress=progress, cancelled=cancelled)
            return None if cancelled() else found

        self.run(
            phrase_of_count("Working out {count} opening", "Working out {count} openings", len(ids)),
            work,
            self._on_answer,
        )

    def _on_answer(self, answer: Answer | None) -> None:
        if answer is None:
            self.said.setText(phrase("Stopped before all openings were compared. Nothing is changed."))
            return
        self.answer = answer
        self.differences.show_differences(answer.differences)
        self.said.setText(
            phrase("{summary}. Nothing is changed yet.", summary=summary(answer.differences, len(answer.asked)))
        )
        self.enable()

    def try_successors(self) -> None:
        """Look where the successors of superseded parts fit."""
        project = self.desk.workspace.project

        def work(progress: Progress, cancelled: Cancelled) -> Any:
            found = successors(project, progress=progress, cancelled=cancelled)
            return None if cancelled() else found

        self.run(phrase("Trying successors"), work, self._on_successors)

    def _on_successors(self, found: Any) -> None:
        self._forget()
        if found is None:
            self.said.setText(phrase("Stopped."))
            return
        self.differences.show_differences(found)
        lost = sum(each.after != "fits" or bool(each.why) for each in found)
        words = phrase_of_count(
            "{count} opening uses a superseded part; at {lost} of them the successor does not fit.",
            "{count} openings use a superseded part; at {lost} of them the successor does not fit.",
            len(found),
            lost=lost,
        )
        self.said.setText(words if found else phrase("No opening uses a superseded part."))

    def accept_it(self) -> None:
        """Make it so, catalogue, settings, choices and fits as one step; shown again where it would be otherwise."""
        answer, workspace = self.answer, self.desk.workspace
        if answer is None:
            return

        def work(progress: Progress, cancelled: Cancelled) -> Any:
            try:
                done = accept_answer(
                    workspace.project, answer, who=workspace.who, progress=progress, cancelled=cancelled
                )  # fmt: skip
            except ShownOtherwiseError as otherwise:
                return otherwise
            return None if cancelled() and done.number is None else done

        def then(done: Any) -> None:
            if isinstance(done, ShownOtherwiseError):
                self._on_answer(done.now if isinstance(done.now, Answer) else None)
                self.said.setText(phrase("Not done: {done}. This is what would be different now.", done=done))
                return
            if done is None:
                self.said.setText(phrase("Stopped. Nothing is changed."))
                return
            self.answer = None
            self.said.setText(phrase("Accepted. Undo takes all of it back."))
            self.enable()

        self.run(phrase("Making it so"), work, then)

    def _forget(self) -> None:
        self.answer = None
        self.differences.forget()
        self.said.setText(phrase("Put a question together; nothing is changed before you accept."))
        self.enable()

    def _show_opening(self, item: QTreeWidgetItem) -> None:
        opening = self.differences.opening_of(item)
        if opening:
            self.desk.show_openings([opening])
