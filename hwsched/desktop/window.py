"""The main window: places on the left, the register in the middle, the chosen opening's sheet on the right.

Here belong menus and tool bar, and which action is possible when; what the actions do stands in `project_work`,
`hand_work`, `finding_work`, `specify_work` and `release_work`.
"""

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QKeySequence

from hwsched.desktop.power.power_window import PowerWindow
from hwsched.desktop.project.calculators import CalculatorsDialog
from hwsched.desktop.release.release_work import ReleaseWork
from hwsched.operations.changes import Changes


class Window(ReleaseWork):
    """The desktop of one project at a time.

    Parameters
    ----------
    who : str
        Person at work, for the journal.
    """

    def __init__(self, who: str) -> None:
        super().__init__(who)
        self._build_actions()
        self.welcome.wants_new.connect(self.ask_new)
        self.welcome.wants_open.connect(self.ask_open)
        self.welcome.wants_sample.connect(self.ask_sample)
        self.earlier.asked.connect(self.show_since_upgrade)
        self.sheet.edited.connect(self._on_edited)
        self.sheet.wants_part.connect(self.ask_part)
        self.sheet.unit_dragged.connect(self._on_unit_dragged)
        self.sheet.unit_dropped.connect(self.move_unit)
        self.sheet.wants_pieces.connect(self.show_pieces)
        self.sheet.pieces_page.wants_serial.connect(self.ask_serial)
        self.sheet.pieces_page.wants_lot.connect(self.ask_lot)
        self._enable()

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
        self.act_undo = action("Undo", "Take back your last step", self.undo, standard.Undo)
        self.act_redo = action("Redo", "Do again what you took back", self.redo, standard.Redo)
        self.act_form = action("Write survey form", "Write a blank workbook for the surveyor", self.ask_form)
        self.act_export = action("Write catalogue", "Write the catalogue as a workbook", self.ask_export)
        self.act_settings = action("Settings and rules", "Units, limits, rules switched off", self.ask_settings)
        self.act_field = action("New field of our own", "Define a field of the project's own", self.ask_field)
        self.act_history = action("History", "Who changed what, and when", self.show_history, "Ctrl+H")
        self.act_people = action("People", "Who works on the project, and in which role", self.show_people)
        self.act_revisions = action(
            "Revisions", "States of the project under a letter: freeze one, compare", self.show_revisions
        )
        self.act_add = action("Add opening", "Add an opening by hand", self.ask_opening)
        self.act_item = action("Add existing item", "Add an existing item to the chosen opening", self.ask_item)
        self.act_remove = action("Remove opening", "Remove the chosen opening with all its facts", self.remove_opening)
        self.act_sets = action("Hardware sets", "Make, propose, change and give hardware sets", self.show_sets)
        self.act_power = action(
            "Supplies and circuits", "Lay them, see volts, site supplies", self.show_power, "Ctrl+Shift+P"
        )
        self.act_what_if = action("What if?", "Compare before anything is changed", self.show_what_if)
        self.act_upgrade = action(
            "Since the upgrade", "What this version says otherwise than an earlier one", self.show_since_upgrade
        )
        self.act_fewest = action("Fewest different parts", "Few different parts, against cost", self.show_fewest)
        self.act_cost = action("Cost", "Totals, and the terms that the project pays", self.show_cost)
        self.act_rulebook = action("Rulebook", "Every rule, its limits in force, off or on", self.show_rulebook)
        self.act_waivers = action("Waivers", "Who accepted which finding, and why", self.show_waivers)
        self.act_missing = action("Missing facts", "Ranked by what they unblock; return visit", self.show_missing)
        quit_ = action("Quit", "Close the desktop", self.close, standard.Quit)
        project = self.menuBar().addMenu("&Project")
        project.addActions([self.act_new, self.act_open])
        project.addSeparator()
        project.addActions([self.act_survey, self.act_catalogue])
        project.addSeparator()
        project.addActions([self.act_form, self.act_export])
        project.addSeparator()
        project.addActions([self.act_settings, self.act_field, self.act_history, self.act_revisions, self.act_people])
        project.addSeparator()
        project.addAction(quit_)
        work = self.menuBar().addMenu("&Work")
        work.addActions([self.act_fit, self.act_check, self.act_print, self.act_upgrade])
        work.addSeparator()
        work.addActions([self.act_add, self.act_item, self.act_remove])
        work.addSeparator()
        work.addActions([self.act_undo, self.act_redo])
        work.addSeparator()
        work.addActions([self.act_release, self.act_calculators])
        specify = self.menuBar().addMenu("&Specify")
        specify.addActions([self.act_power, self.act_sets, self.act_what_if, self.act_fewest, self.act_cost])
        findings = self.menuBar().addMenu("&Findings")
        findings.addActions([self.act_rulebook, self.act_waivers, self.act_missing])
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

    def _enable(self) -> None:
        super()._enable()
        idle = not self.jobs.busy
        open_ = idle and self.workspace is not None
        filled = open_ and self.workspace is not None and bool(self.workspace.checked)
        for made in (self.act_new, self.act_open):
            made.setEnabled(idle)
        for made in (
            *(self.act_survey, self.act_catalogue, self.act_form, self.act_export),
            *(self.act_settings, self.act_field, self.act_history, self.act_people, self.act_add),
            *(self.act_undo, self.act_redo, self.act_revisions),
            *(self.act_power, self.act_sets, self.act_what_if, self.act_fewest, self.act_cost),
            *(self.act_rulebook, self.act_waivers, self.act_missing, self.act_upgrade),
        ):
            made.setEnabled(open_)
        for made in (self.act_fit, self.act_check, self.act_print, self.act_item, self.act_remove, self.act_release):
            made.setEnabled(filled)

    def show_power(self) -> None:
        """Show supplies and circuits; undo and redo work there too."""
        super().show_power()
        window = self.tools.get(PowerWindow)
        if window is not None:
            window.addActions([self.act_undo, self.act_redo])

    def _after(self, changes: Changes, *, beside: bool = False) -> None:
        """Tell of every edit, those too that touch no opening."""
        super()._after(changes, beside=beside)
        if self.workspace is not None:
            self.workspace.changed.emit(changes)

    def show_calculators(self) -> None:
        """Show the calculators; they need no project."""
        self.calculators = CalculatorsDialog(self)
        self.calculators.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.calculators.show()
