"""What a person chooses for themselves: name, theme, text size. All of it holds at once, and for every project."""

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFormLayout, QHBoxLayout, QLabel, QLineEdit, QPushButton, QVBoxLayout, QWidget

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.looks.spoken import own_name
from hwsched.desktop.looks.text_size import in_figures, in_pixels, put_letters
from hwsched.desktop.looks.tokens import ROW, SPACE, TEXT_SIZES
from hwsched.desktop.project.preferences import THEMES, Theme
from hwsched.desktop.widgets.drop_down import DropDown
from hwsched.desktop.widgets.labels import of_first_line
from hwsched.language import languages, phrase, to_phrase

_THEMES: Final[dict[Theme, str]] = {
    "system": to_phrase("As the system"),
    "light": to_phrase("Light"),
    "dark": to_phrase("Dark"),
}


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
        title = QLabel(phrase("Your settings"))
        put_letters(title, "title", bold=True)
        words = QLabel(
            phrase(
                "They are kept on this machine and hold for every project. What a project decides, its units "
                "and limits, stands in “Settings and rules”."
            )
        )
        words.setWordWrap(True)
        self.name = QLineEdit(self._preferences.name)
        self.name.setPlaceholderText(frame.state.who)
        self.name.setAccessibleName(phrase("Your name"))
        self.name.editingFinished.connect(self._on_name)
        self.signs = QLabel()
        self.signs.setWordWrap(True)
        self.theme = DropDown()
        self.theme.setAccessibleName(phrase("Theme"))
        for theme in THEMES:
            self.theme.addItem(phrase(_THEMES[theme]), theme)
        self.theme.activated.connect(self._on_theme)
        self.text_size = DropDown()
        self.text_size.setAccessibleName(phrase("Text size"))
        for percent in TEXT_SIZES:
            self.text_size.addItem(phrase("{percent}%", percent=percent), percent)
        self.text_size.activated.connect(self._on_text_size)
        self.language = DropDown()
        self.language.setAccessibleName(phrase("Language"))
        self.language.setToolTip(phrase("It holds from the next start of the program on"))
        self.language.addItem(phrase("As the system"), "")
        for name in languages():
            self.language.addItem(own_name(name), name)
        self.language.activated.connect(self._on_language)
        self.tour = QPushButton(phrase("Show the tour"))
        self.tour.setToolTip(phrase("A few words on each place, in the order of the job; it can be left at any step"))
        self.tour.clicked.connect(lambda _checked=False: frame.commands["tour"].act.trigger())
        form = QFormLayout()
        form.setVerticalSpacing(SPACE.middle)
        form.setHorizontalSpacing(SPACE.large)
        # What is said of a field stands by it, not midway to the next.
        both = QWidget()
        named = QVBoxLayout(both)
        named.setContentsMargins(0, 0, 0, 0)
        named.setSpacing(SPACE.hair)
        named.addWidget(self.name)
        named.addWidget(self.signs)
        form.addRow(of_first_line(phrase("Your &name"), self.name), both)
        form.addRow(phrase("&Theme"), self.theme)
        form.addRow(phrase("Text si&ze"), self.text_size)
        # A choice of one is none.
        if len(languages()) > 1:
            form.addRow(phrase("&Language"), self.language)
        # As wide as its words: a button over the whole width would be taken for a field.
        beside = QHBoxLayout()
        beside.addWidget(self.tour)
        beside.addStretch(1)
        form.addRow("", beside)
        for field in (self.name, self.theme, self.text_size, self.language, self.tour):
            in_pixels(field, minimumHeight=ROW.form)
            in_figures(field, maximumWidth=48)
        in_figures(self.signs, maximumWidth=64)
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
            self.text_size.addItem(phrase("{percent}%", percent=chosen.text_size), chosen.text_size)
        self.text_size.setCurrentIndex(self.text_size.findData(chosen.text_size))
        self.language.setCurrentIndex(max(self.language.findData(chosen.language), 0))
        if not self.name.hasFocus():
            self.name.setText(chosen.name)
        workspace = self._frame.state.workspace
        signs = workspace.who if workspace is not None else self._frame.state.who
        said = phrase("The journal of a project says who did what: “{signs}”.", signs=signs)
        if chosen.name and signs != chosen.name:
            said += phrase(" From the next project that you open on, “{name}”.", name=chosen.name)
        self.signs.setText(said)

    def _on_name(self) -> None:
        self._preferences.name = self.name.text()
        if self._preferences.name:
            self._frame.state.who = self._preferences.name
        self._show()

    def _on_theme(self, at: int) -> None:
        self._preferences.theme = self.theme.itemData(at, Qt.ItemDataRole.UserRole)

    def _on_language(self, at: int) -> None:
        self._preferences.language = self.language.itemData(at, Qt.ItemDataRole.UserRole)

    def _on_text_size(self, at: int) -> None:
        self._preferences.text_size = self.text_size.itemData(at, Qt.ItemDataRole.UserRole)
