"""What has a size of its own and follows the text size while the window is open.

Letters that a widget does not set follow by themselves. Here belong letters of a step and icons beside words: a widget
keeps what it was given, and is given it anew when the person chooses another text size.
"""

from typing import Final, Protocol, get_args

from PySide6.QtCore import QSize
from PySide6.QtGui import QFont
from PySide6.QtWidgets import QApplication, QWidget

from hwsched.desktop.looks.tokens import Step, fixed_font, font, icon_size

_LETTERS: Final = "letters of a step"
_ICONS: Final = "icons beside words"
"""Properties by which a widget is known whose letters, or whose icons, have to follow."""


class _Lettered(Protocol):
    def setFont(self, font: QFont, /) -> None: ...  # noqa: N802

    def setProperty(self, name: str, value: object, /) -> bool: ...  # noqa: N802

    def property(self, name: str, /) -> object: ...


class _WithIcons(Protocol):
    def setIconSize(self, size: QSize, /) -> None: ...  # noqa: N802

    def setProperty(self, name: str, value: object, /) -> bool: ...  # noqa: N802


def put_letters(
    widget: _Lettered, step: Step = "normal", *, bold: bool = False, tabular: bool = False, fixed: bool = False
) -> None:
    """Give a widget letters of a step, in each text size that is chosen while it stands; fixed: all equally wide."""
    asked = {"bold": bold, "tabular": tabular, "fixed": fixed}
    said = " ".join((step, *(name for name, wanted in asked.items() if wanted)))
    widget.setProperty(_LETTERS, said)
    widget.setFont(_letters(said))


def put_icons(widget: _WithIcons) -> None:
    """Give a button or bar icons as large as the words beside them, in each text size that is chosen meanwhile."""
    widget.setProperty(_ICONS, True)
    widget.setIconSize(icon_size())


def follow(application: QApplication) -> None:
    """Give all widgets their letters and icons anew."""
    for each in application.allWidgets():
        _follow(each)


def _follow(widget: QWidget) -> None:
    said = widget.property(_LETTERS)
    if isinstance(said, str):
        widget.setFont(_letters(said))
    if widget.property(_ICONS):
        widget.setProperty("iconSize", icon_size())


def _letters(said: str) -> QFont:
    name, *more = said.split()
    step: Step = next(each for each in get_args(Step) if each == name)
    return fixed_font() if "fixed" in more else font(step, bold="bold" in more, tabular="tabular" in more)
