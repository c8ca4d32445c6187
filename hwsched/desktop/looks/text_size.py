"""What has a size of its own and follows the text size while the window is open.

Letters that a widget does not set follow by themselves. Here belong letters of a step, icons beside words, and sizes
that follow from letters: a widget keeps what it was given, and is given it anew when another text size is chosen.
"""

from collections.abc import Mapping
from typing import Final, Protocol, get_args

from PySide6.QtCore import QObject, QSize
from PySide6.QtGui import QFont
from PySide6.QtWidgets import QApplication, QWidget

from hwsched.desktop.looks.tokens import Step, fixed_font, font, icon_size, scaled, wide

_LETTERS: Final = "letters of a step"
_ICONS: Final = "icons beside words"
_SIZES: Final = "sizes in letters"
"""Properties by which a widget is known whose letters, icons or sizes have to follow."""


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


def in_pixels(widget: QObject, **sizes: float) -> None:
    """Give a widget sizes [px at 100 % text] by the names that Qt has for them, in each text size."""
    _keep(widget, "pixels", sizes)


def in_figures(widget: QObject, **sizes: float) -> None:
    """Give a widget sizes [figures] by the names that Qt has for them, such as maximumWidth, in each text size."""
    _keep(widget, "figures", sizes)


def _keep(widget: QObject, unit: str, sizes: Mapping[str, float]) -> None:
    said = {name: f"{name} {size} {unit}" for name, size in sizes.items()}
    words = str(widget.property(_SIZES) or "").split()
    held = {name: f"{name} {size} {kind}" for name, size, kind in zip(*[iter(words)] * 3, strict=True)}
    widget.setProperty(_SIZES, " ".join((held | said).values()))
    _size(widget, " ".join(said.values()))


def _size(widget: QObject, said: str) -> None:
    words = iter(said.split())
    for name, size, unit in zip(words, words, words, strict=True):
        widget.setProperty(name, wide(float(size)) if unit == "figures" else scaled(float(size)))


def follow(application: QApplication) -> None:
    """Give all widgets their letters, icons and sizes anew."""
    for each in application.allWidgets():
        _follow(each)


def _follow(widget: QWidget) -> None:
    said = widget.property(_LETTERS)
    if isinstance(said, str):
        widget.setFont(_letters(said))
    if isinstance(sizes := widget.property(_SIZES), str):
        _size(widget, sizes)
    if widget.property(_ICONS):
        widget.setProperty("iconSize", icon_size())


def _letters(said: str) -> QFont:
    name, *more = said.split()
    step: Step = next(each for each in get_args(Step) if each == name)
    return fixed_font() if "fixed" in more else font(step, bold="bold" in more, tabular="tabular" in more)
