"""The main window: places on the left, the register in the middle, the chosen opening's sheet on the right.

Here the subjects are put together: views beside one another, menus, tool bar, status bar, and the connections where two
subjects meet. What the actions do stands with their subjects.
"""

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QCloseEvent, QKeySequence
from PySide6.QtWidgets import QMainWindow, QProgressBar, QPushButton, QSplitter, QStackedWidget, QVBoxLayout, QWidget

from hwsched.desktop.beside import BesideActions
from hwsched.desktop.findings.finding_actions import FindingActions
from hwsched.desktop.frame import Frame
from hwsched.desktop.opening.fit_actions import FitActions
from hwsched.desktop.opening.inspected import Inspected
from hwsched.desktop.opening.opening_actions import OpeningActions
from hwsched.desktop.opening.opening_sheet import OpeningSheet
from hwsched.desktop.opening.past_actions import PastActions
from hwsched.desktop.opening.place_actions import PlaceActions
from hwsched.desktop.opening.several_actions import SeveralActions
from hwsched.desktop.parts.parts_actions import PartsActions
from hwsched.desktop.plain_words import keep_words_plain
from hwsched.desktop.power.power_actions import PowerActions
from hwsched.desktop.project.history_actions import HistoryActions
from hwsched.desktop.project.people_actions import PeopleActions
from hwsched.desktop.project.project_actions import ProjectActions
from hwsched.desktop.project.remains_line import RemainsLine
from hwsched.desktop.project.welcome import Welcome
from hwsched.desktop.release.release_actions import ReleaseActions
from hwsched.desktop.survey.openings_view import OpeningsView
from hwsched.desktop.survey.survey_actions import SurveyActions
from hwsched.desktop.tool_window import Desk
from hwsched.operations.findings.why import HOLES


class Window(QMainWindow):
    """The desktop of one project at a time.

    Parameters
    ----------
    who : str
        Person at work, for the journal.
    """

    def __init__(self, who: str) -> None:
        super().__init__()
        keep_words_plain()
        self.frame = Frame(who, self)
        self.welcome = Welcome()
        self.openings = OpeningsView(self.frame.state)
        self.sheet = OpeningSheet()
        self.inspected = Inspected(self.sheet)
        self._build_subjects()
        self._build_views()
        self._build_menus()
        self._build_status()
        self._connect()
        self.setWindowTitle("hwsched")
        self.resize(1360, 740)
        self.frame.possible.emit()

    def _build_subjects(self) -> None:
        in_view = self.openings.register.shown_ids
        self.project = ProjectActions(self.frame)
        self.history = HistoryActions(self.frame)
        self.people = PeopleActions(self.frame)
        self.survey = SurveyActions(self.frame)
        self.opening = OpeningActions(self.frame, self.sheet, self.openings.select_one)
        self.places = PlaceActions(self.frame, self.sheet)
        self.past = PastActions(self.frame, self.sheet)
        self.several = SeveralActions(self.frame, self.inspected)
        self.fitting = FitActions(self.frame, in_view)
        self.parts = PartsActions(self.frame)
        self.beside = BesideActions(self.frame)
        self.power = PowerActions(self.frame, (self.history.act_undo, self.history.act_redo))
        self.findings = FindingActions(self.frame, self.sheet.shown_point)
        self.release = ReleaseActions(self.frame, self.sheet.files_page, self.sheet.show_files, in_view)

    def _build_views(self) -> None:
        self.split = QSplitter(Qt.Orientation.Horizontal)
        self.split.addWidget(self.openings.places)
        self.split.addWidget(self.openings)
        self.split.addWidget(self.inspected)
        self.split.setSizes([200, 595, 565])
        self.split.setStretchFactor(0, 0)
        self.split.setStretchFactor(1, 3)
        self.split.setStretchFactor(2, 3)
        self.remains = RemainsLine()
        self.work = QWidget()
        layout = QVBoxLayout(self.work)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self.remains)
        layout.addWidget(self.split, 1)
        self.stack = QStackedWidget()
        self.stack.addWidget(self.welcome)
        self.stack.addWidget(self.work)
        self.setCentralWidget(self.stack)

    def _build_menus(self) -> None:
        project, history, survey, opening = self.project, self.history, self.survey, self.opening
        fitting, parts, findings, release = self.fitting, self.parts, self.findings, self.release
        leave = QAction("Quit", self)
        leave.setToolTip("Close the desktop")
        leave.setStatusTip("Close the desktop")
        leave.setShortcut(QKeySequence(QKeySequence.StandardKey.Quit))
        leave.triggered.connect(lambda _checked=False: self.close())
        decided = [project.act_settings, project.act_field, history.act_history, release.act_revisions]
        self._add_menu(
            "&Project",
            [project.act_new, project.act_open, project.act_rescue],
            [survey.act_survey, parts.act_catalogue],
            [survey.act_form, parts.act_export],
            [*decided, self.people.act_people],
            [leave],
        )
        self._add_menu(
            "&Work",
            [fitting.act_fit, fitting.act_check, release.act_print, release.act_labels, fitting.act_upgrade],
            [opening.act_add, opening.act_item, opening.act_retire, opening.act_remove],
            [history.act_undo, history.act_redo],
            [self.places.act_release, project.act_calculators],
        )
        self._add_menu(
            "&Specify",
            [self.power.act_power, fitting.act_what_if, *self.beside.acts.values()],
        )
        self._add_menu("&Findings", [findings.act_rulebook, findings.act_waivers, survey.act_missing])
        bar = self.addToolBar("Work")
        bar.setObjectName("work")
        bar.setMovable(False)
        bar.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextOnly)
        for group in (
            (project.act_new, project.act_open),
            (survey.act_survey, parts.act_catalogue),
            (fitting.act_fit, fitting.act_check, release.act_print),
            (history.act_undo, history.act_redo),
        ):
            bar.addActions(list(group))
            bar.addSeparator()

    def _add_menu(self, title: str, *groups: Sequence[QAction]) -> None:
        menu = self.menuBar().addMenu(title)
        for place, group in enumerate(groups):
            if place:
                menu.addSeparator()
            menu.addActions(list(group))

    def _build_status(self) -> None:
        self.bar = QProgressBar()
        self.bar.setMaximumWidth(220)
        self.stop = QPushButton("Cancel")
        self.stop.clicked.connect(self.frame.jobs.cancel)
        self.statusBar().addPermanentWidget(self.bar)
        self.statusBar().addPermanentWidget(self.stop)
        self.bar.hide()
        self.stop.hide()
        self.frame.said.connect(self.statusBar().showMessage)
        self.frame.jobs.started.connect(self._on_job_started)
        self.frame.jobs.progressed.connect(self._on_job_progress)
        self.frame.jobs.ended.connect(self._on_job_ended)

    def _connect(self) -> None:
        state, sheet, findings = self.frame.state, self.sheet, self.findings
        state.opened.connect(self._on_opened)
        state.settled.connect(self._on_settled)
        self.remains.wants_saving.connect(self.project.ask_rescue)
        self.welcome.wants_new.connect(self.project.ask_new)
        self.welcome.wants_open.connect(self.project.ask_open)
        self.welcome.wants_sample.connect(self.project.ask_sample)
        self.openings.earlier.asked.connect(self.fitting.show_since_upgrade)
        self.openings.questions.asked.connect(self.beside.acts["deliveries"].trigger)
        sheet.findings_page.wants_waiver.connect(findings.ask_waiver)
        sheet.findings_page.wants_back.connect(findings.take_waiver_back)
        sheet.findings_page.wants_why.connect(findings.show_why)
        sheet.findings_page.wants_rule.connect(findings.show_rule)
        sheet.refused_page.wants_rule.connect(findings.show_rule)
        sheet.parts_page.wants_why.connect(findings.show_why)
        sheet.holes_page.wants_why.connect(lambda order: findings.show_why(HOLES, f"{order}. "))

    def _on_opened(self) -> None:
        """Show the project's views, and give the windows beside this one what they may see and do."""
        state, frame = self.frame.state, self.frame
        if state.workspace is None:
            return
        self.remains.show_remains(state.workspace.remains)
        self.stack.setCurrentWidget(self.work)
        frame.side.desk = Desk(
            state.workspace,
            frame.jobs,
            state.workspace,
            edit=frame.edit,
            edit_seen=frame.edit_seen,
            chosen=lambda: list(state.ids),
            select=self.openings.select_openings,
            show_rule=self.findings.show_rule,
            reload=frame.following.reload,
        )
        state.selected.connect(frame.side.desk.selected)

    def _on_settled(self) -> None:
        workspace = self.frame.state.workspace
        if workspace is not None:
            damaged = " (damaged, to be read only)" if workspace.remains is not None else ""
            self.setWindowTitle(f"{workspace.project.title}{damaged} - hwsched")

    def _on_job_started(self, title: str) -> None:
        self.statusBar().showMessage(title + " ...")
        self.bar.setRange(0, 0)
        self.bar.show()
        self.stop.show()

    def _on_job_progress(self, done: int, total: int) -> None:
        self.bar.setRange(0, max(total, 1))
        self.bar.setValue(done)

    def _on_job_ended(self) -> None:
        self.statusBar().clearMessage()
        self.bar.hide()
        self.stop.hide()

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802
        """Stop what is running and close the project; an edit that then fails is told before the window goes."""
        self.release.forget_files()
        if self.frame.close():
            super().closeEvent(event)
        else:
            event.ignore()
