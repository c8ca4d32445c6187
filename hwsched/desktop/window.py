"""The main window: rail of places at the left, the page of the place in the middle, the inspector at the right.

Here the subjects are put together: frame, menus, bars, and the connections where two subjects meet. What the commands
do stands with their subjects.
"""

import sys
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QCloseEvent
from PySide6.QtWidgets import (
    QHBoxLayout,
    QMainWindow,
    QSplitter,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from hwsched.desktop.find.find_field import FindField
from hwsched.desktop.findings.finding_actions import FindingActions
from hwsched.desktop.frame.centre import Centre
from hwsched.desktop.frame.drawer import Drawer
from hwsched.desktop.frame.dropping import Dropping
from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.frame.inspector import Inspector
from hwsched.desktop.frame.keyboard_kept import KeyboardKept
from hwsched.desktop.frame.layout_kept import LayoutKept
from hwsched.desktop.frame.leaving import Leaving
from hwsched.desktop.frame.loading_ahead import LoadingAhead
from hwsched.desktop.frame.menus import Menus
from hwsched.desktop.frame.places import PLACES
from hwsched.desktop.frame.rail import Rail
from hwsched.desktop.frame.status_line import StatusLine
from hwsched.desktop.frame.tool_window import Desk
from hwsched.desktop.frame.trail import Station
from hwsched.desktop.looks.plain_words import keep_words_plain
from hwsched.desktop.looks.text_size import put_icons
from hwsched.desktop.looks.tokens import wide
from hwsched.desktop.opening.fit_actions import FitActions
from hwsched.desktop.opening.inspected import Inspected
from hwsched.desktop.opening.opening_actions import OpeningActions
from hwsched.desktop.opening.opening_sheet import OpeningSheet
from hwsched.desktop.opening.past_actions import PastActions
from hwsched.desktop.opening.place_actions import PlaceActions
from hwsched.desktop.opening.several_actions import SeveralActions
from hwsched.desktop.parts.parts_actions import PartsActions
from hwsched.desktop.power.power_actions import PowerActions
from hwsched.desktop.project.help_way import offer_help
from hwsched.desktop.project.history_actions import HistoryActions
from hwsched.desktop.project.people_actions import PeopleActions
from hwsched.desktop.project.preferences import Preferences
from hwsched.desktop.project.project_actions import ProjectActions
from hwsched.desktop.project.recent_menu import RecentMenu
from hwsched.desktop.project.remains_line import RemainsLine
from hwsched.desktop.project.tour import Tour
from hwsched.desktop.project.typed_kept import TypedKept, TypedLine
from hwsched.desktop.project.welcome import Welcome
from hwsched.desktop.release.release_actions import ReleaseActions
from hwsched.desktop.survey.openings_place import OpeningsPlace
from hwsched.desktop.survey.survey_actions import SurveyActions
from hwsched.language import phrase, to_phrase
from hwsched.operations.collector import collector_paused

_FIRST = "today"
"""The place that is shown when a project was opened by who was in none before."""


_SWITCH_S: Final = 0.0005
"""How long a job beside may go on while the screen waits for its turn: each call into the toolkit gives the turn away,
and to build a page beside a job would wait for it a hundred times."""


class Window(QMainWindow):
    """The desktop of one project at a time.

    Parameters
    ----------
    who : str
        Person at work, for the journal.
    preferences : Preferences, optional
        What the person has chosen; the kept ones unless others are given.
    """

    def __init__(self, who: str, preferences: Preferences | None = None) -> None:
        super().__init__()
        keep_words_plain()
        sys.setswitchinterval(_SWITCH_S)
        # All that is made stays as long as the window: the collector would look through it for nothing.
        with collector_paused():
            self._build(who, preferences)

    def _build(self, who: str, preferences: Preferences | None) -> None:
        self.frame = Frame(who, self, preferences, PLACES)
        self.beside = self.frame
        self.welcome = Welcome(self.frame.preferences, who)
        place = self.frame.pages.page("openings")
        assert isinstance(place, OpeningsPlace)
        self.openings = place.view
        self.sheet = OpeningSheet()
        self.inspected = Inspected(self.sheet)
        self.leaving = Leaving(self.frame)
        self.ahead = LoadingAhead(self.frame)
        self.dropping = Dropping(self, self.frame.state, self.frame.jobs)
        self._build_subjects()
        self._build_views()
        self._build_ways()
        self._build_menus()
        self._build_status()
        self._connect()
        self.setWindowTitle("hwsched")
        self.kept = LayoutKept(
            self.frame.preferences, self, {"frame": self.split, "drawer": self.column, "openings": place}
        )
        self.kept.restore()
        self.frame.possible.emit()

    def _build_subjects(self) -> None:
        in_view = self.frame.in_view = self.openings.register.shown_ids
        self.frame.any_in_view = self.openings.register.any_shown
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
        self.power = PowerActions(self.frame)
        self.findings = FindingActions(self.frame, self.sheet.shown_point)
        self.release = ReleaseActions(self.frame, self.sheet.files_page, self.sheet.show_files, in_view)

    def _build_views(self) -> None:
        self.rail = Rail(self.frame)
        self.centre = Centre(self.frame)
        # Before the inspector: Tab goes from the list to what is chosen in it.
        self.centre.hold("openings")
        self.inspector = Inspector(self.inspected)
        self.drawer = Drawer(self.frame)
        self.drawer.hide()
        self.column = QSplitter(Qt.Orientation.Vertical)
        self.column.addWidget(self.centre)
        self.column.addWidget(self.drawer)
        self.column.setSizes([wide(70), wide(26)])
        self.column.setStretchFactor(0, 3)
        self.column.setStretchFactor(1, 1)
        self.column.setChildrenCollapsible(False)
        self.split = QSplitter(Qt.Orientation.Horizontal)
        self.split.addWidget(self.column)
        self.split.addWidget(self.inspector)
        self.split.setSizes([wide(100), wide(66)])
        self.split.setStretchFactor(0, 3)
        self.split.setStretchFactor(1, 2)
        self.split.setChildrenCollapsible(False)
        self.remains = RemainsLine()
        self.typed = TypedLine()
        self.typed_kept = TypedKept(self.frame)
        self.tour = Tour(self.frame)
        self.work = QWidget()
        beside = QHBoxLayout()
        beside.setSpacing(0)
        beside.addWidget(self.rail)
        beside.addWidget(self.split, 1)
        layout = QVBoxLayout(self.work)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        layout.addWidget(self.remains)
        layout.addWidget(self.typed)
        layout.addWidget(self.tour)
        layout.addLayout(beside, 1)
        self.stack = QStackedWidget()
        self.stack.addWidget(self.welcome)
        self.stack.addWidget(self.work)
        self.setCentralWidget(self.stack)
        self.centre.shown.connect(self.inspector.follow)
        self.keyboard = KeyboardKept(lambda: (self.centre.page, self.inspector, self.drawer), self.frame.jobs, self)
        # Of what acts on the page that is shown another one may now be possible.
        self.centre.shown.connect(lambda _place: self.frame.possible.emit())

    def _build_ways(self) -> None:
        """Add the commands of the window itself."""
        add, trail = self.frame.commands.add, self.frame.trail
        self.field = FindField(self.frame.finder, self, self.frame.jobs)
        add(
            "find",
            to_phrase("Find anything"),
            to_phrase("Openings, parts, rules, commands, help and places by a few words"),
            self.field.begin,
            menu=to_phrase("Go"),
            keys="Ctrl+K",
            icon="find",
        )
        self.act_back = add(
            "back",
            to_phrase("Back"),
            to_phrase("To the place before"),
            trail.back,
            menu=to_phrase("Go"),
            keys="Alt+Left",
            icon="back",
            at_present=lambda: self._leads_to(trail.before),
        ).act
        self.act_forward = add(
            "forward",
            to_phrase("Forward"),
            to_phrase("On to the place from which you went back"),
            trail.forward,
            menu=to_phrase("Go"),
            keys="Alt+Right",
            icon="forward",
            at_present=lambda: self._leads_to(trail.after),
        ).act
        add(
            "close-page",
            to_phrase("Close page"),
            to_phrase("Close the page that is shown and go back"),
            self.centre.close_page,
            menu=to_phrase("View"),
            keys="Ctrl+W",
            needs="project",
            at_present=lambda: (True, "") if self.centre.can_close else (False, phrase("places of the rail stay")),
        )
        add(
            "own-window",
            to_phrase("Page in its own window"),
            to_phrase("For a second screen; closing that window brings the page back"),
            self.centre.tear_off,
            menu=to_phrase("View"),
            keys="Ctrl+Shift+W",
            needs="project",
            at_present=lambda: (True, "") if self.centre.can_tear else (False, phrase("it stands in one already")),
        )
        self.act_inspector = add(
            "inspector",
            to_phrase("Inspector"),
            to_phrase("What is chosen, beside the list"),
            lambda: self.inspector.want(not self.inspector.wanted),
            menu=to_phrase("View"),
            keys="F8",
            needs="project",
            at_present=lambda: (True, "") if self.inspector.asked else (False, phrase("this page has none")),
        ).act
        add(
            "drawer",
            to_phrase("Jobs and problems"),
            to_phrase("What jobs came to, and what could not be done; it stays to be read"),
            self.drawer.turn,
            menu=to_phrase("View"),
            keys="F7",
        )
        offer_help(self.frame)
        add(
            "close-project",
            to_phrase("Close project"),
            to_phrase("Close it and go back to where one begins"),
            self.leaving.close_project,
            menu=to_phrase("Project"),
            keys="Ctrl+F4",
            needs="project",
        )
        add(
            "quit",
            to_phrase("Quit"),
            to_phrase("Close the desktop"),
            self.close,
            menu=to_phrase("Project"),
            keys="Ctrl+Q",
        )
        trail.moved.connect(self._on_moved)
        self.frame.possible.connect(self._on_moved)

    def _build_menus(self) -> None:
        # A right click on the register offers what acts on its openings.
        self.openings.table.addActions([each.act for each in self.frame.commands if each.acts_on])
        self.menus = Menus(self.menuBar(), self.frame.commands, self.frame.pages)
        self.recent = RecentMenu(self.menus, self.frame)
        self.recent.wanted.connect(self.project.open_project)
        bar = self.addToolBar(phrase("Work"))
        bar.setObjectName("work")
        bar.setMovable(False)
        bar.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        put_icons(bar)
        for group in (
            (self.act_back, self.act_forward),
            (self.fitting.act_fit, self.fitting.act_check, self.release.act_print),
            (self.history.act_undo, self.history.act_redo),
        ):
            if bar.actions():
                bar.addSeparator()
            bar.addActions(list(group))
        bar.insertWidget(self.fitting.act_fit, self.field)

    def _build_status(self) -> None:
        self.status = StatusLine(self.frame, self.statusBar())

    def _connect(self) -> None:
        state, sheet, findings = self.frame.state, self.sheet, self.findings
        state.opened.connect(self._on_opened)
        state.settled.connect(self._on_settled)
        self.leaving.left.connect(self._on_left)
        self.dropping.project.connect(self.project.open_project)
        self.dropping.survey.connect(self.survey.take_survey)
        self.dropping.catalogue.connect(self.parts.take_catalogue)
        self.dropping.said.connect(self.frame.said)
        self.remains.wants_saving.connect(self.project.ask_rescue)
        self.welcome.wants_new.connect(self.project.ask_new)
        self.welcome.wants_open.connect(self.project.ask_open)
        self.welcome.wants_sample.connect(self.project.ask_sample)
        self.welcome.wants_spreadsheet.connect(self.project.ask_spreadsheet)
        self.welcome.wants_server.connect(self.project.ask_server)
        self.welcome.wants_recent.connect(self.project.open_project)
        self.welcome.named.connect(lambda name: setattr(state, "who", name))
        self.project.made_for.connect(self.survey.take_survey)
        self.openings.edited.connect(self.survey.set_facts)
        self.survey.lost.connect(self.openings.grid.keep_drafts)
        self.survey.written.connect(self.openings.grid.forget_drafts)
        state.leaving.connect(lambda: self.openings.grid.forget_drafts())
        self.openings.said.connect(self.frame.say)
        self.openings.earlier.asked.connect(self.fitting.show_since_upgrade)
        self.openings.questions.asked.connect(lambda: self.frame.go("deliveries"))
        sheet.findings_page.wants_waiver.connect(findings.ask_waiver)
        sheet.findings_page.wants_back.connect(findings.take_waiver_back)
        sheet.findings_page.wants_why.connect(findings.show_why)
        sheet.findings_page.wants_rule.connect(findings.show_rule)
        sheet.refused_page.wants_rule.connect(findings.show_rule)
        sheet.parts_page.wants_why.connect(findings.show_why)
        sheet.holes_page.wants_why.connect(findings.show_why_hole)

    def _on_opened(self) -> None:
        """Show the project's views, and give the pages what they may see and do."""
        state, frame = self.frame.state, self.frame
        if state.workspace is None:
            return
        self.remains.show_remains(state.workspace.remains)
        self.typed.show_typed(frame.preferences.typed_left(state.workspace.project.place))
        self.stack.setCurrentWidget(self.work)
        frame.pages.desk = Desk(
            state.workspace,
            frame.jobs,
            state.workspace,
            edit=frame.edit,
            edit_seen=frame.edit_seen,
            chosen=lambda: list(state.ids),
            select=self.openings.select_openings,
            show_rule=self.findings.show_rule,
            reload=frame.following.reload,
            go=frame.go,
            show_fact=self.sheet.show_fact,
            open_project=self.project.open_project,
        )
        state.selected.connect(frame.pages.desk.selected)
        known = frame.preferences.place
        # Whoever opens a project works in its place, not on the rail beside it.
        focus = self.focusWidget()
        if focus is not None and self.rail.isAncestorOf(focus):
            focus.clearFocus()
        frame.go(known if known in frame.pages.places else _FIRST)
        self.tour.offer()

    def _on_left(self) -> None:
        """Show where one begins."""
        self.release.forget_files()
        self.stack.setCurrentWidget(self.welcome)
        self.setWindowTitle("hwsched")

    def _on_settled(self) -> None:
        workspace = self.frame.state.workspace
        if workspace is not None:
            damaged = phrase(" (damaged, to be read only)") if workspace.remains is not None else ""
            self.setWindowTitle(phrase("{title}{damaged} - hwsched", title=workspace.project.title, damaged=damaged))

    def _on_moved(self) -> None:
        """Show places as long as somebody is in one, and remember where."""
        trail, places = self.frame.trail, self.frame.pages.places
        self.stack.setCurrentWidget(self.welcome if trail.here is None else self.work)
        if trail.here is not None and places[trail.here.place].rail:
            self.frame.preferences.place = trail.here.place

    def _leads_to(self, station: Station | None) -> tuple[bool, str]:
        """Tell whether back or forward leads anywhere, and where."""
        if station is None:
            return False, phrase("there is none")
        return True, phrase(self.frame.pages.places[station.place].title)

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802
        """Stop what is running and close the project once it has; an edit that then fails is told before."""
        self.release.forget_files()
        if self.leaving.close(self.close):
            self.kept.keep()
            super().closeEvent(event)
        else:
            event.ignore()
