"""What a person chooses for themselves: name, theme, text size. All of it holds at once, and for every project."""

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox, QFormLayout, QLabel, QLineEdit, QPushButton, QVBoxLayout, QWidget

from hwsched.desktop.frame import Frame
from hwsched.desktop.place import Place
from hwsched.desktop.preferences import THEMES, Theme
from hwsched.desktop.tokens import ROW, SPACE, TEXT_SIZES, font, scaled, wide

_THEMES: Final[dict[Theme, str]] = {"system": "As the system", "light": "Light", "dark": "Dark"}


class PreferencesPage(QWidget):
    """Name, theme, text size, and the tour once more.

    Parameters
    ----------
    frame : Frame
        Its preferences are shown and changed.
    """

    def __init__(self, frame: Frame, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._frame, self._preferences = frame, frame.preferences
        title = QLabel("Your settings")
        title.setFont(font("title", bold=True))
        words = QLabel(
            "They are kept on this machine and hold for every project. What a project decides, its units and limits, "
            "stands in “Settings and rules”."
        )
        words.setWordWrap(True)
        self.name = QLineEdit(self._preferences.name)
        self.name.setPlaceholderText(frame.state.who)
        self.name.setAccessibleName("Your name")
        self.name.editingFinished.connect(self._on_name)
        self.signs = QLabel()
        self.signs.setWordWrap(True)
        self.theme = QComboBox()
        self.theme.setAccessibleName("Theme")
        for theme in THEMES:
            self.theme.addItem(_THEMES[theme], theme)
        self.theme.activated.connect(self._on_theme)
        self.text_size = QComboBox()
        self.text_size.setAccessibleName("Text size")
        for percent in TEXT_SIZES:
            self.text_size.addItem(f"{percent} %", percent)
        self.text_size.activated.connect(self._on_text_size)
        self.tour = QPushButton("Show the tour")
        self.tour.setToolTip("A few words on each place, in the order of the job; it can be left at any step")
        self.tour.clicked.connect(lambda _checked=False: frame.commands["tour"].act.trigger())
        form = QFormLayout()
        form.setVerticalSpacing(SPACE.middle)
        form.setHorizontalSpacing(SPACE.large)
        form.addRow("Your &name", self.name)
        form.addRow("", self.signs)
        form.addRow("&Theme", self.theme)
        form.addRow("Text &size", self.text_size)
        form.addRow("", self.tour)
        for field in (self.name, self.theme, self.text_size, self.tour):
            field.setMinimumHeight(scaled(ROW.form))
            field.setMaximumWidth(wide(48))
        self.signs.setMaximumWidth(wide(64))
        layout = QVBoxLayout(self)
        layout.setContentsMargins(SPACE.wide, SPACE.large, SPACE.wide, SPACE.large)
        layout.setSpacing(SPACE.large)
        layout.addWidget(title)
        layout.addWidget(words)
        layout.addLayout(form)
        layout.addStretch(1)
        self._preferences.changed.connect(self._show)
        self._show()

    def _show(self, _name: str = "") -> None:
        chosen = self._preferences
        self.theme.setCurrentIndex(self.theme.findData(chosen.theme))
        if self.text_size.findData(chosen.text_size) < 0:
            self.text_size.addItem(f"{chosen.text_size} %", chosen.text_size)
        self.text_size.setCurrentIndex(self.text_size.findData(chosen.text_size))
        if not self.name.hasFocus():
            self.name.setText(chosen.name)
        workspace = self._frame.state.workspace
        signs = workspace.who if workspace is not None else self._frame.state.who
        said = f"The journal of a project says who did what: “{signs}”."
        if chosen.name and signs != chosen.name:
            said += f" From the next project that you open on, “{chosen.name}”."
        self.signs.setText(said)

    def _on_name(self) -> None:
        self._preferences.name = self.name.text()
        if self._preferences.name:
            self._frame.state.who = self._preferences.name
        self._show()

    def _on_theme(self, at: int) -> None:
        self._preferences.theme = self.theme.itemData(at, Qt.ItemDataRole.UserRole)

    def _on_text_size(self, at: int) -> None:
        self._preferences.text_size = self.text_size.itemData(at, Qt.ItemDataRole.UserRole)


PREFERENCES: Final = Place(
    "preferences", "Your settings", "person", "Name, theme and text size of the person at this machine",
    needs="nothing", make=PreferencesPage,
)  # fmt: skip
