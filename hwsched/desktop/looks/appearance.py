"""How the whole desktop looks: palette, letters and a small style sheet, from the tokens and the person's choices."""

from string import Template
from typing import Final

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QFont, QPalette
from PySide6.QtWidgets import QApplication

from hwsched.desktop.looks.icons import recoloured
from hwsched.desktop.looks.plain_words import keep_words_plain
from hwsched.desktop.looks.text_size import follow
from hwsched.desktop.looks.tokens import (
    COLOURS,
    CORNER,
    FOCUS,
    ICON,
    SPACE,
    TARGET,
    THIN,
    TYPE,
    Role,
    at_percent,
    colour,
)
from hwsched.desktop.project.preferences import Preferences, Theme
from hwsched.operations.collector import collector_paused

_SCHEMES: Final[dict[Theme, Qt.ColorScheme]] = {
    "system": Qt.ColorScheme.Unknown,
    "light": Qt.ColorScheme.Light,
    "dark": Qt.ColorScheme.Dark,
}
_ROLES: Final[dict[QPalette.ColorRole, Role]] = {
    QPalette.ColorRole.Window: "window",
    QPalette.ColorRole.WindowText: "text",
    QPalette.ColorRole.Base: "field",
    QPalette.ColorRole.AlternateBase: "pane",
    QPalette.ColorRole.Text: "text",
    QPalette.ColorRole.Button: "pane",
    QPalette.ColorRole.ButtonText: "text",
    QPalette.ColorRole.BrightText: "refused",
    QPalette.ColorRole.ToolTipBase: "field",
    QPalette.ColorRole.ToolTipText: "text",
    QPalette.ColorRole.PlaceholderText: "soft",
    QPalette.ColorRole.Highlight: "tint",
    QPalette.ColorRole.HighlightedText: "text",
    QPalette.ColorRole.Link: "link",
    QPalette.ColorRole.LinkVisited: "link",
    QPalette.ColorRole.Light: "field",
    QPalette.ColorRole.Midlight: "hover",
    QPalette.ColorRole.Mid: "line",
    QPalette.ColorRole.Dark: "edge",
    QPalette.ColorRole.Shadow: "edge",
    QPalette.ColorRole.Accent: "accent",
}
_ARROW: Final = 12
"""Side of the arrow of a drop-down [px at 100 % text]."""
_MARK: Final = 14
"""Side of the square or circle of what is ticked [px at 100 % text]."""
_CHECK: Final = 17
"""Height that a ticked line needs [px at 100 % text]."""
_LINE: Final = 4
"""So much higher than its least a field of one line is by its letters [px]."""
_ARROWS: Final = 3
"""So much higher than what it holds Qt makes a field with arrows [px]."""
_AIR: Final = 5
"""Over and under words that may wrap: where they do not, the line is as high as a row of a grid [px at 100 %]."""
_MARGIN: Final = 3
"""So far within the padding of a cell Qt sets its words, and not those of a title [px]."""
_INDENT: Final = 18
"""How far a line of a tree stands in from the one above it, and how large its arrow is [px at 100 % text]."""
_SHEET: Final = Template(
    """
QLineEdit, QPlainTextEdit, QTextEdit, QAbstractSpinBox {
    background: $field; border: ${thin}px solid $edge; border-radius: ${corner}px; padding: ${half}px ${hair}px;
}
QTextBrowser, QPlainTextEdit[readOnly="true"] { border: ${thin}px solid $line; border-radius: 0; }
QPlainTextEdit#whole { background: transparent; border-color: transparent; }
QLineEdit { min-height: ${line_inner}px; }
QAbstractSpinBox { padding: 0 ${hair}px; min-height: ${spin_inner}px; }
QComboBox {
    background: $field; border: ${thin}px solid $edge; border-radius: ${corner}px; padding: ${half}px ${hair}px;
    min-height: ${line_inner}px; combobox-popup: 0;
}
QComboBox:hover { background: $hover; }
QComboBox::drop-down, QDateEdit::drop-down { border: none; width: ${wide}px; }
QDateEdit::drop-down { subcontrol-origin: border; subcontrol-position: center right; }
QComboBox::down-arrow, QDateEdit::down-arrow { image: url("$down"); width: ${arrow}px; height: ${arrow}px; }
QAbstractSpinBox::up-button, QAbstractSpinBox::down-button {
    subcontrol-origin: border; border: none; width: ${wide}px;
}
QAbstractSpinBox::up-button { subcontrol-position: top right; }
QAbstractSpinBox::down-button { subcontrol-position: bottom right; }
QAbstractSpinBox::up-arrow { image: url("$up"); width: ${arrow}px; height: ${arrow}px; }
QAbstractSpinBox::down-arrow { image: url("$down"); width: ${arrow}px; height: ${arrow}px; }
QComboBox:disabled, QAbstractSpinBox:disabled, QLineEdit:disabled {
    background: $window; color: $disabled; border: ${thin}px solid $line;
}
QCheckBox, QRadioButton { min-height: ${check}px; }
QLineEdit:focus, QPlainTextEdit:focus, QTextEdit:focus, QAbstractSpinBox:focus, QComboBox:focus {
    border: ${ring}px solid $focus; padding: ${half_less}px ${hair_less}px;
}
QAbstractSpinBox:focus { padding: 0 ${hair_less}px; min-height: ${spin_focused}px; }
QAbstractItemView, QScrollArea { border: ${thin}px solid $line; margin: ${ring_more}px; }
QAbstractItemView:focus, QScrollArea:focus { border: ${ring}px solid $focus; margin: 0; }
QPlainTextEdit#whole:focus { border-color: $focus; }
QAbstractItemView { outline: ${thin}px solid $focus; }
QComboBox QAbstractItemView, QComboBox QAbstractItemView:focus {
    border: ${thin}px solid $focus; margin: 0; outline: none;
}
QListView[selectionMode="1"], QTreeView[selectionMode="1"] { outline: none; }
QAbstractItemView::item:selected { background: $tint; }
QAbstractScrollArea::corner { background: transparent; border: none; }
QScrollArea[frameShape="0"] { border: none; margin: 0; }
QScrollArea[frameShape="0"]:focus { border: ${ring}px solid $focus; }
QComboBox QLineEdit, QComboBox QLineEdit:focus, QAbstractSpinBox QLineEdit, QAbstractSpinBox QLineEdit:focus {
    background: transparent; border: none; padding: 0; min-height: 0;
}
QAbstractSpinBox QLineEdit, QAbstractSpinBox QLineEdit:focus { padding: 0 ${hair}px; }
QAbstractItemView QLineEdit, QAbstractItemView QComboBox { border-radius: 0; min-height: 0; padding: 0 ${half}px; }
QAbstractItemView QAbstractSpinBox { border-radius: 0; min-height: 0; }
QComboBox[cell="true"], QAbstractSpinBox[cell="true"] { background: transparent; border-color: transparent; }
QComboBox[cell="true"]:hover, QAbstractSpinBox[cell="true"]:hover { background: $hover; border-color: $edge; }
QComboBox[cell="true"]:focus, QAbstractSpinBox[cell="true"]:focus { background: $field; border-color: $focus; }
QPushButton {
    background: $field; border: ${thin}px solid $edge; border-radius: ${corner}px; padding: ${hair_less}px ${middle}px;
    min-height: ${inner}px;
}
QPushButton[line="true"] { text-align: left; }
QPushButton:hover { background: $hover; }
QPushButton:pressed, QPushButton:checked { background: $tint; }
QPushButton:flat { background: transparent; border-color: transparent; }
QPushButton:flat:hover { background: $hover; }
QPushButton:focus { border: ${ring}px solid $focus; padding: ${half}px ${middle_less}px; }
QPushButton:default, QPushButton[leads="true"] { background: $accent; color: $on_accent; border-color: $accent; }
QPushButton:default:focus, QPushButton[leads="true"]:focus { border: ${ring}px solid $text; }
QPushButton:disabled { background: $window; color: $disabled; border: ${thin}px solid $line; }
QToolButton {
    border: ${thin}px solid transparent; border-radius: ${corner}px; padding: ${hair}px; min-height: ${inner}px;
}
QToolButton:hover { background: $hover; }
QToolButton:pressed, QToolButton:checked { background: $tint; }
QToolButton:focus { border: ${ring}px solid $focus; padding: ${hair_less}px; }
QLineEdit { lineedit-clear-button-icon: url("$clear"); }
QLineEdit QToolButton { border: none; padding: 0; min-height: 0; background: transparent; }
QDialogButtonBox { dialogbuttonbox-buttons-have-icons: 0; }
QTabWidget::pane { border: none; border-top: ${thin}px solid $line; }
QTabBar::tab {
    background: transparent; color: $soft; border: none; border-bottom: ${ring}px solid transparent;
    padding: ${hair}px ${small}px; min-height: ${inner}px;
}
QTabBar::tab:hover { background: $hover; }
QTabBar::tab:selected { color: $text; border-bottom: ${ring}px solid $accent; }
QTabBar::tab:selected:focus { background: $tint; }
QTabBar::scroller { width: ${scroller}px; }
QTabBar::tear { width: 0; border: none; }
QTabBar QToolButton { background: $window; border: none; border-radius: 0; padding: 0; }
QTabBar QToolButton:hover { background: $hover; }
QTabBar QToolButton::left-arrow { image: url("$backward"); width: ${arrow}px; height: ${arrow}px; }
QTabBar QToolButton::right-arrow { image: url("$onward"); width: ${arrow}px; height: ${arrow}px; }
QTabBar QToolButton::left-arrow:disabled { image: url("$no_backward"); }
QTabBar QToolButton::right-arrow:disabled { image: url("$no_onward"); }
QHeaderView::section {
    background: $window; color: $soft; border: none; border-right: ${thin}px solid $line;
    border-bottom: ${thin}px solid $line; text-align: left;
    padding: ${hair}px ${title_right}px ${hair}px ${title_left}px;
}
QHeaderView::section:vertical { padding: 0 ${hair}px; }
QHeaderView { margin: 0; }
QHeaderView, QTableCornerButton::section { background: $window; border: none; }
QHeaderView::section:horizontal:last, QHeaderView::section:horizontal:only-one {
    border-right: none; padding-right: ${title_left}px;
}
GridTable, _Frozen { outline: none; }
_Frozen { margin: 0; }
GridTable::item, _Frozen::item { padding: 0 ${hair}px; }
QTableWidget::item { padding: 0 ${hair}px; }
Lines::item { padding: ${air}px ${hair}px; }
QCheckBox::indicator, QRadioButton::indicator, QAbstractItemView::indicator {
    width: ${mark}px; height: ${mark}px; background: $field; border: ${thin}px solid $edge;
    border-radius: ${hair_less}px;
}
QRadioButton::indicator { border-radius: ${round}px; }
QCheckBox::indicator:checked, QRadioButton::indicator:checked, QAbstractItemView::indicator:checked {
    background: $accent; border: ${thin}px solid $accent;
}
QCheckBox::indicator:checked, QAbstractItemView::indicator:checked { image: url("$tick"); }
QRadioButton::indicator:checked { image: url("$dot"); }
QCheckBox::indicator:indeterminate, QAbstractItemView::indicator:indeterminate { background: $tint; }
QCheckBox::indicator:disabled, QRadioButton::indicator:disabled {
    background: $window; border: ${thin}px solid $line;
}
QMenuBar { background: $window; }
QMenuBar::item { padding: ${hair}px ${small}px; border-radius: ${corner}px; }
QMenuBar::item:selected { background: $tint; color: $text; }
QPushButton, QCheckBox, QRadioButton, QTabBar, QToolBar { icon-size: ${icon}px; }
QToolBar { border: none; border-bottom: ${thin}px solid $line; spacing: ${hair}px; padding: ${hair}px; }
QStatusBar { border-top: ${thin}px solid $line; }
QStatusBar::item { border: none; }
QSplitter::handle { background: $line; }
QSplitter::handle:horizontal { width: ${thin}px; margin: 0 ${hair}px; }
QSplitter::handle:vertical { height: ${small}px; background: transparent; }
QProgressBar { background: $field; border: ${thin}px solid $line; border-radius: ${corner}px; text-align: center; }
QProgressBar::chunk { background: $tint; border-radius: ${hair_less}px; }
QScrollBar { background: transparent; border: none; }
QScrollBar:vertical { width: ${middle}px; }
QScrollBar:horizontal { height: ${middle}px; }
QScrollBar::handle { background: $edge; border: ${less}px solid $window; border-radius: ${corner}px; }
QScrollBar::handle:vertical { min-height: ${wide}px; }
QScrollBar::handle:horizontal { min-width: ${wide}px; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }
QFrame#card { background: $pane; border: ${thin}px solid $line; border-radius: ${corner}px; }
QListView::item, QTreeView::item { min-height: ${row}px; padding: 0 ${hair}px; }
QTreeView { qproperty-indentation: $indent; }
QTreeView::branch:has-children:closed { image: url("$onward"); }
QTreeView::branch:has-children:open { image: url("$down"); }
QToolTip { background: $field; color: $text; border: ${thin}px solid $edge; padding: ${hair}px; }
"""
)


def palette(*, dark: bool) -> QPalette:
    """Return the palette of a theme."""
    made = QPalette()
    for role, name in _ROLES.items():
        made.setColor(role, colour(name, dark=dark))
    for role in (QPalette.ColorRole.WindowText, QPalette.ColorRole.Text, QPalette.ColorRole.ButtonText):
        made.setColor(QPalette.ColorGroup.Disabled, role, colour("disabled", dark=dark))
    return made


def sheet(*, dark: bool, percent: int = 100) -> str:
    """Return the style sheet of a theme at a text size: what a palette cannot say."""
    named = {role.replace("-", "_"): codes[dark] for role, codes in COLOURS.items()}
    # The ring of the focus is thicker than an edge: by so much less stands what it surrounds away from it.
    less, half = FOCUS - THIN, SPACE.hair // 2
    inner = at_percent(TARGET - 2 * SPACE.hair, percent)
    # What is worked beside one another is equally high: a field of one line, a drop-down, one with arrows, a button.
    line = inner + 2 * half + 2 * THIN + _LINE
    return _SHEET.substitute(
        named,
        up=recoloured("up", named["soft"]), down=recoloured("down", named["soft"]),
        onward=recoloured("next", named["soft"]), backward=recoloured("previous", named["soft"]),
        no_onward=recoloured("next", named["line"]), no_backward=recoloured("previous", named["line"]),
        clear=recoloured("close", named["soft"]), indent=at_percent(_INDENT, percent),
        thin=THIN, ring=FOCUS, icon=at_percent(ICON, percent), arrow=at_percent(_ARROW, percent),
        tick=recoloured("check", named["on_accent"]), dot=recoloured("disc", named["on_accent"]),
        mark=at_percent(_MARK, percent), round=at_percent(_MARK, percent) // 2, corner=CORNER,
        check=max(TARGET, at_percent(_CHECK, percent)), scroller=2 * at_percent(TARGET, percent),
        row=at_percent(TARGET, percent),
        spin_inner=line - 2 * THIN - _ARROWS, spin_focused=line - 2 * FOCUS - _ARROWS,
        title_left=SPACE.hair + _MARGIN, title_right=SPACE.hair + _MARGIN - THIN,
        # Where there is too little room a layout goes down to this: letters have to fit into it.
        inner=inner,
        line_inner=at_percent(TARGET - 2 * half - 2 * THIN, percent),
        air=at_percent(_AIR, percent),
        half=half, hair=SPACE.hair, small=SPACE.small, middle=SPACE.middle, wide=SPACE.wide,
        # A list has the room of its ring without it too: else its lines would be laid out anew as the focus comes.
        ring_more=less,
        less=SPACE.hair - less, half_less=half - less, hair_less=SPACE.hair - less, middle_less=SPACE.middle - less,
    )  # fmt: skip


class Look(QObject):
    """Keeps the look of the program as the person has chosen it, and follows when they or the system choose otherwise.

    Parameters
    ----------
    application : QApplication
        Whose look it is.
    preferences : Preferences
        What was chosen.
    """

    def __init__(self, application: QApplication, preferences: Preferences) -> None:
        super().__init__(application)
        self._application, self._preferences = application, preferences
        self._shown: tuple[bool, int] | None = None
        keep_words_plain()
        preferences.changed.connect(self._on_chosen)
        application.styleHints().colorSchemeChanged.connect(self._on_scheme)
        self._on_chosen("theme")

    @property
    def dark(self) -> bool:
        """Whether the window is dark: by the person's choice, else by the system's."""
        theme = self._preferences.theme
        scheme = self._application.styleHints().colorScheme()
        return theme == "dark" or (theme == "system" and scheme == Qt.ColorScheme.Dark)

    def put_on(self) -> None:
        """Let palette, letters and style sheet be those that were chosen."""
        wanted = (self.dark, self._preferences.text_size)
        if wanted == self._shown:
            return
        self._shown = wanted
        # The toolkit goes through a list of all widgets, and calls on Python at each. What nobody holds any more is let
        # go of afterwards: a window that went in the midst of it would still stand in that list.
        with collector_paused():
            self._put_on(*wanted)

    def _put_on(self, dark: bool, percent: int) -> None:
        letters = QFont(self._application.font())
        letters.setPixelSize(at_percent(TYPE.normal, percent))
        self._application.setFont(letters)
        self._application.setPalette(palette(dark=dark))
        # A sheet that takes the place of another is put on each widget once for every one around it, one that takes the
        # place of none only once: an open window waits a tenth of the time.
        self._application.setStyleSheet("")
        self._application.setStyleSheet(sheet(dark=dark, percent=percent))
        follow(self._application)

    def _on_chosen(self, name: str) -> None:
        if name == "theme":
            with collector_paused():
                self._application.styleHints().setColorScheme(_SCHEMES[self._preferences.theme])
        if name in ("theme", "text_size"):
            self.put_on()

    def _on_scheme(self, _scheme: object) -> None:
        self.put_on()
