"""Views of a grid under names: those that everybody has, and those that a person keeps."""

from collections.abc import Callable, Mapping, Sequence
from functools import partial
from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLineEdit, QToolButton, QWidget

from hwsched.desktop.looks.text_size import in_figures, in_pixels
from hwsched.desktop.looks.tokens import TARGET
from hwsched.desktop.widgets.flow import Flow
from hwsched.language import phrase, to_phrase


class KeptViews(QWidget):
    """A row of views; one is chosen, the present one is kept under a name, a kept one is forgotten.

    Parameters
    ----------
    common : mapping of str to str
        Views that everybody has: name and query.
    """

    chosen = Signal(str)
    """The name of a view."""
    kept = Signal(str)
    """The present view is to be kept under this name."""
    forgotten = Signal(str)
    """A kept view is no more wanted."""

    def __init__(self, common: Sequence[str], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._common = common
        self._named: Sequence[str] = ()
        self.buttons: dict[str, QToolButton] = {}
        self._row = Flow(self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self.name = QLineEdit()
        self.name.setPlaceholderText(phrase("Name of this view, then Return"))
        self.name.setAccessibleName(phrase("Name under which this view is kept"))
        in_figures(self.name, maximumWidth=34)
        self.name.returnPressed.connect(self._keep)
        self.name.editingFinished.connect(self._left)
        self.keep = button(
            phrase("Keep this view…"), phrase("Keep what is asked, columns and order under a name"), self._ask
        )
        self.forget = button(phrase("Forget"), phrase("Forget this kept view"), self._forget)
        self._row.addWidget(self.keep)
        self._row.addWidget(self.name)
        self._row.addWidget(self.forget)
        self.name.hide()
        self.show_views((), "")

    def show_views(self, named: Sequence[str], present: str) -> None:
        """Show the common views and these; the present one is marked."""
        self._named, self._present = named, present
        for made in self.buttons.values():
            self._row.removeWidget(made)
            made.hide()
            made.deleteLater()
        self.buttons = {}
        for place, name in enumerate((*self._common, *named)):
            title = phrase(name) if name in self._common else name
            made = button(title, phrase("Show the view “{name}”", name=title), partial(self.chosen.emit, name))
            made.setCheckable(True)
            made.setChecked(name == present)
            self.buttons[name] = made
            self._row.insert(place, made)
        self.forget.setVisible(present in named)

    _present = ""

    def mark(self, present: str) -> None:
        """Mark another view as the present one; none with an empty name."""
        self._present = present
        for name, made in self.buttons.items():
            made.setChecked(name == present)
        self.forget.setVisible(present in self._named)

    def _ask(self) -> None:
        self.name.setText(self._present if self._present in self._named else "")
        self.keep.hide()
        self.name.show()
        self.name.setFocus()

    def _left(self) -> None:
        if not self.name.hasFocus():
            self.name.hide()
            self.keep.show()

    def _keep(self) -> None:
        name = " ".join(self.name.text().split())
        if name and name not in self._common:
            self.name.hide()
            self.keep.show()
            self.kept.emit(name)
            self.keep.setFocus()

    def _forget(self) -> None:
        self.forgotten.emit(self._present)


def button(text: str, tip: str, slot: Callable[[], object]) -> QToolButton:
    """Return a flat button that the keyboard reaches."""
    made = QToolButton()
    made.setText(text)
    made.setToolTip(tip)
    made.setAutoRaise(True)
    in_pixels(made, minimumHeight=TARGET)
    made.clicked.connect(lambda _checked=False: slot())
    return made


COMMON: Final[Mapping[str, str]] = {
    to_phrase("All"): "",
    to_phrase("To measure"): "status = to-measure",
    to_phrase("Held"): "status = fits and finding = holding",
    to_phrase("Does not fit"): "status = does-not-fit",
}
"""Views of openings that everybody has, by the words of the states."""
