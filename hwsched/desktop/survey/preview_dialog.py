"""Shows what a survey would change before anything is written."""

from dataclasses import replace
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QCheckBox,
    QDialog,
    QDialogButtonBox,
    QHeaderView,
    QLabel,
    QPushButton,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from hwsched.desktop.survey.deciding_page import DecidingPage
from hwsched.desktop.survey.reading_page import ReadingPage, shown_sheet
from hwsched.desktop.survey.sheet_page import SheetPage
from hwsched.desktop.widgets.tabs import TabbedPages
from hwsched.desktop.widgets.wrapping import WrappingTree
from hwsched.exchange.problems import CellProblem, FileProblem, causes
from hwsched.exchange.survey.deciding import differences_of
from hwsched.exchange.survey.difference import Preview
from hwsched.exchange.survey.facts import Decisions, SurveyOptions
from hwsched.exchange.survey.outline import SheetOutline
from hwsched.kept_sentences import kept_error
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.quantities import LengthStyle

if TYPE_CHECKING:
    from hwsched.operations.survey.survey_import import LaidOpen

DECIDING: Final = to_phrase("Decide")
"""Title of the page of decisions."""
_HANDS: Final = ("table", "fact", "unit", "dash", "cell", "is_mark", "joins_mark", "header_here", "ends_here")
"""Controls of the sheet's page to which the keys come back once an answer was taken."""
_USUAL: Final = QSize(1240, 800)
_EDGE: Final = 40
_FEWEST_WIDE, _FEWEST_HIGH, _MOST_WIDE, _MOST_HIGH = 980, 640, 1640, 1000
"""Pixels of the preview: within the window, and no wider than a list is."""
_MOST: Final = 2000
"""Lines shown in a list; the rest is counted."""


class PreviewDialog(QDialog):
    """How it is read; new, changed, missing, assumed, refused; take it in or leave it.

    Parameters
    ----------
    file : str
        Its name.
    opened : LaidOpen
        Its sheets, and what it would change.
    options : SurveyOptions
        What was said so far of how it is to be read.
    first : str
        What a person must know before, such as why it is shown again.
    style : {"fraction", "decimal-inch", "mm"}
        How lengths are shown.
    answers : int
        Answers so far, which can be taken back one by one.
    column : int
        The column of the sheet that was in hand before.
    """

    again = Signal(object)
    """SurveyOptions with which it is to be read again."""
    back = Signal()
    """The last answer is to be taken back."""
    keep_plan = Signal()
    """How the file is read is to be kept as a column plan."""
    use_plan = Signal()
    """The file is to be read by a column plan."""
    decided = Signal(object)
    """SurveyOptions with other decisions on the differences, on which it is looked at again without being read."""

    def __init__(
        self,
        file: str,
        opened: "LaidOpen",
        options: SurveyOptions,
        parent: QWidget | None = None,
        first: str = "",
        style: LengthStyle = "mm",
        answers: int = 0,
        column: int = 0,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(phrase("Take in {file}", file=file))
        self.resize(_size_in(parent))
        preview = opened.seen.preview if opened.seen else Preview((), (), (), ())
        problems = opened.problems
        counts = phrase(
            "{count} new, {count_2} changed, {count_3} unchanged, {count_4} in the project but not in "
            "the file, {refused}.",
            count=len(preview.new),
            count_2=len(preview.changed),
            count_3=len(preview.unchanged),
            count_4=len(preview.missing),
            refused=phrase_of_count("{count} cell refused", "{count} cells refused", len(problems)),
        )
        head = QLabel(f"{first}\n\n{counts}" if first else counts)
        head.setWordWrap(True)
        self.pages = pages = TabbedPages()
        changed: list[tuple[str, ...]] = [
            (opening.mark, fact.title(), fact.said(fact.before, style), fact.said(fact.after, style))
            for opening in preview.changed
            for fact in opening.facts
        ]
        refused: list[tuple[str, ...]] = [(cause.said(),) for cause in causes(problems)]
        asked: list[tuple[str, ...]] = [(question.said(),) for question in preview.questions]
        asked += [(proposal.said(),) for proposal in preview.undecided]
        asked += [(oddity.said(),) for oddity in preview.oddities]
        blank: list[tuple[str, ...]] = [
            (mark, fact.title(), fact.said(fact.before, style)) for mark, fact in preview.blank
        ]
        by_hand: list[tuple[str, ...]] = [
            (
                mark,
                fact.title(),
                fact.said(fact.before, style),
                fact.said(fact.after, style),
                fact.source,
            )
            for mark, fact in preview.by_hand
        ]
        lists: tuple[tuple[str, tuple[str, ...], list[tuple[str, ...]]], ...] = (
            (phrase("Refused"), (phrase("Cell and cure"),), refused),
            (phrase("Asked"), (phrase("What only a person can say"),), asked),
            (phrase("Blank, kept"), (phrase("Mark"), phrase("Fact"), phrase("Held")), blank),
            (
                phrase("Set by hand, kept"),
                (phrase("Mark"), phrase("Fact"), phrase("Held"), phrase("In the file"), phrase("Set by")),
                by_hand,
            ),
            (phrase("New"), (phrase("Mark"),), [(opening.mark,) for opening in preview.new]),
            (phrase("Changed"), (phrase("Mark"), phrase("Fact"), phrase("Before"), phrase("After")), changed),
            (phrase("Not in the file"), (phrase("Mark"),), [(mark,) for mark in preview.missing]),
            (phrase("Read as"), (phrase("How the file was read"),), [(each.said(),) for each in preview.assumptions]),
            (
                phrase("Not read"),
                (phrase("Columns, rows and sheets that are not read"),),
                [(kept_error(text),) for text in preview.unmapped],
            ),
        )
        for title, columns, rows in lists:
            if rows:
                pages.addTab(_list(columns, rows), f"{title} {len(rows)}")
        unknown = [cause for cause in causes(problems) if isinstance(cause.problem, CellProblem)]
        self.reading = ReadingPage(opened.sheets, options, unknown, preview.undecided)
        self.reading.said.connect(self.again)
        shown = shown_sheet(opened.sheets, options)
        # What a question or a column asks already is not said again as a refusal of the file as a whole.
        refused_here = [cause for cause in causes(problems) if _is_of(cause.problem, shown)]
        self.sheet = SheetPage(shown, options, preview.questions, refused_here, preview.oddities, column, style)
        self.sheet.said.connect(self.again)
        pages.insertTab(0, self.sheet, phrase("The sheet"))
        pages.setCurrentIndex(0)
        pages.addTab(self.reading, phrase("How it is read"))
        found = differences_of(preview, options.decisions)
        self.deciding = DecidingPage(found, options.decisions, style=style)
        self.deciding.said.connect(lambda said: self.decided.emit(replace(options, decisions=said)))
        known = bool(preview.changed or preview.unchanged or preview.missing or preview.left)
        if known and found:
            left = phrase(", {count} left", count=len(preview.left)) if preview.left else ""
            pages.insertTab(0, self.deciding, f"{phrase(DECIDING)} {len(found)}{left}")
            pages.setCurrentIndex(0)
        else:
            self.deciding.setParent(self)
            self.deciding.hide()
        if opened.seen is None or replace(options, decisions=Decisions()) != SurveyOptions():
            pages.setCurrentWidget(self.sheet)
        self.good_rows = QCheckBox(phrase("Leave out the openings with refused cells and take in the rest"))
        self.good_rows.setVisible(bool(problems) and opened.seen is not None)
        self.fit_too = QCheckBox(phrase("Fit the openings that it touches, in the same step"))
        self.buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel)
        self.take = self.buttons.button(QDialogButtonBox.StandardButton.Ok)
        self.take.setText(phrase("Take in"))
        # A file that changes nothing is taken in too where something was said of it: that is remembered.
        worth = any((preview.new, preview.changed, preview.left, preview.retired, preview.restored)) or (
            opened.seen is not None and options != SurveyOptions()
        )
        self.take.setEnabled(not problems and worth)
        self.good_rows.toggled.connect(lambda on: self.take.setEnabled(on and worth))
        self.buttons.accepted.connect(self.accept)
        self.buttons.rejected.connect(self.reject)
        self.take_back = QPushButton(
            phrase("Take &back the last of {answers} answers", answers=answers)
            if answers > 1
            else phrase("Take &back the answer")
        )
        self.take_back.setEnabled(answers > 0)
        # Beside the letter that is underlined, which a shortcut of the button itself would take the place of.
        QShortcut(QKeySequence(QKeySequence.StandardKey.Undo), self, self.take_back.click)
        self.by_plan = QPushButton(phrase("Read by a &plan…"))
        self.to_plan = QPushButton(phrase("&Keep as a plan…"))
        self.to_plan.setEnabled(opened.seen is not None)
        for button, told in (
            (self.take_back, self.back),
            (self.by_plan, self.use_plan),
            (self.to_plan, self.keep_plan),
        ):
            button.setAutoDefault(False)
            button.clicked.connect(told)
            self.buttons.addButton(button, QDialogButtonBox.ButtonRole.ActionRole)
        layout = QVBoxLayout(self)
        layout.addWidget(head)
        layout.addWidget(pages, 1)
        layout.addWidget(self.good_rows)
        layout.addWidget(self.fit_too)
        layout.addWidget(self.buttons)

    def show_page(self, title: str) -> None:
        """Show the page whose title begins so; nothing where there is none."""
        for place in range(self.pages.count()):
            if title and self.pages.tabText(place).startswith(title):
                self.pages.setCurrentIndex(place)

    def hand(self) -> str:
        """Return which control of the sheet's page has the keys; empty for another one."""
        return next((name for name in _HANDS if getattr(self.sheet, name).hasFocus()), "")

    def take_hand(self, name: str) -> None:
        """Give the keys to a control of the sheet's page; to the page that is shown where none is named."""
        shown = getattr(self.sheet, name) if name else self.pages.currentWidget()
        (self.sheet.table if shown is self.sheet else shown).setFocus()

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Take no Enter for the file as a whole while somebody types in a cell."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and not self.take.hasFocus():
            return
        super().keyPressEvent(event)

    def accept_mode(self) -> str:
        """Return what the import shall accept."""
        return "good-rows" if self.good_rows.isChecked() else "all"


def _size_in(window: QWidget | None) -> QSize:
    """Return the size of the preview: as much of the window's as a list needs, and never more than is there."""
    room = window.size() if window is not None else _USUAL
    wide = max(min(room.width() - _EDGE, _MOST_WIDE), _FEWEST_WIDE)
    return QSize(wide, max(min(room.height() - _EDGE, _MOST_HIGH), _FEWEST_HIGH))


def _is_of(problem: CellProblem | FileProblem, sheet: SheetOutline | None) -> bool:
    # That no column is the mark the page says itself, in words of what to do there.
    lacks_mark = sheet is not None and not sheet.has_mark and isinstance(problem, FileProblem)
    return not lacks_mark


def _list(columns: tuple[str, ...], rows: list[tuple[str, ...]]) -> QTreeWidget:
    # What is refused is read to its end: lines of one column are as high as their words need.
    tree = WrappingTree() if len(columns) == 1 else QTreeWidget()
    tree.setHeaderHidden(False)
    tree.setHeaderLabels(list(columns))
    tree.setRootIsDecorated(False)
    tree.setAlternatingRowColors(True)
    tree.setWordWrap(True)
    for row in rows[:_MOST]:
        item = QTreeWidgetItem(list(row))
        item.setToolTip(len(row) - 1, row[-1])
        tree.addTopLevelItem(item)
    if len(rows) > _MOST:
        tree.addTopLevelItem(QTreeWidgetItem([phrase("and {count} more", count=len(rows) - _MOST)]))
    header = tree.header()
    header.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
    header.setSectionResizeMode(len(columns) - 1, QHeaderView.ResizeMode.Stretch)
    header.sectionResized.connect(lambda *_: tree.scheduleDelayedItemsLayout())
    return tree
