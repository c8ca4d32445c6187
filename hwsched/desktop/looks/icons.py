"""Icons by name, in the colours of the present theme, and the shapes that tell a state beside its word and colour.

The drawings stand in `resources/icons`, one file each; where they write `currentColor`, the colour of a role is put.
"""

from functools import cache, lru_cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Final

from PySide6.QtCore import QByteArray, QEvent, QPoint, QRect, QRectF, QSize
from PySide6.QtGui import QColor, QIcon, QIconEngine, QPainter, QPaintEvent, QPixmap
from PySide6.QtSvg import QSvgRenderer
from PySide6.QtWidgets import QWidget

from hwsched.desktop.looks.tokens import STATES, Role, State, colour, icon_size
from hwsched.paths import RESOURCES

_FOLDER: Final = RESOURCES / "icons"


class UnknownIconError(LookupError):
    """There is no such icon."""


@lru_cache(maxsize=512)
def _drawn(name: str, code: str) -> QSvgRenderer:
    try:
        text = (_FOLDER / f"{name}.svg").read_text(encoding="utf-8")
    except FileNotFoundError:
        raise UnknownIconError(f"there is no icon {name}") from None
    return QSvgRenderer(QByteArray(text.replace("currentColor", code).encode()))


@cache
def recoloured(name: str, code: str) -> str:
    """Return a file that holds an icon in a colour, for style sheets, which take no other pictures."""
    folder = _made_folder()
    text = (_FOLDER / f"{name}.svg").read_text(encoding="utf-8").replace("currentColor", code)
    target = Path(folder.name) / f"{name}-{code.removeprefix('#')}.svg"
    target.write_text(text, encoding="utf-8")
    return target.as_posix()


@cache
def _made_folder() -> TemporaryDirectory[str]:
    """Return a folder that goes with the process."""
    return TemporaryDirectory(prefix="hwsched-")


def paint_icon(painter: QPainter, rect: QRectF, name: str, role: Role = "text") -> None:
    """Paint an icon into the middle of a rectangle, as large as fits, in the colour of a role."""
    side = min(rect.width(), rect.height())
    square = QRectF(rect.center().x() - side / 2, rect.center().y() - side / 2, side, side)
    _drawn(name, colour(role).name()).render(painter, square)


class _Engine(QIconEngine):
    """Paints in the colours that the theme has when it is painted, so that an icon never has to be made anew."""

    def __init__(self, name: str, role: Role) -> None:
        super().__init__()
        self._name, self._role = name, role

    def paint(self, painter: QPainter, rect: QRect, mode: QIcon.Mode, _state: QIcon.State) -> None:
        """Paint it."""
        role: Role = "disabled" if mode == QIcon.Mode.Disabled else self._role
        paint_icon(painter, QRectF(rect), self._name, role)

    def pixmap(self, size: QSize, mode: QIcon.Mode, state: QIcon.State) -> QPixmap:
        """Return it as a picture with nothing behind it."""
        made = QPixmap(size)
        made.fill(QColor(0, 0, 0, 0))
        painter = QPainter(made)
        self.paint(painter, QRect(QPoint(0, 0), size), mode, state)
        painter.end()
        return made

    def clone(self) -> QIconEngine:
        """Return another like it."""
        return _Engine(self._name, self._role)


class Picture(QWidget):
    """An icon that stands by itself beside words; it says nothing that they do not."""

    def __init__(self, name: str, role: Role = "text", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._name, self._role = name, role
        self.setFixedSize(icon_size())

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802
        """Be as large as the words beside it in another text size."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.StyleChange, QEvent.Type.FontChange):
            self.setFixedSize(icon_size())

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Paint it."""
        painter = QPainter(self)
        paint_icon(painter, QRectF(self.rect()), self._name, self._role)


def icon(name: str, role: Role = "text") -> QIcon:
    """Return an icon.

    Parameters
    ----------
    name : str
        Name of its file in `resources/icons`; empty: no icon.
    role : str
        In which colour.

    Returns
    -------
    QIcon
        Recoloured by itself when the theme changes.

    Raises
    ------
    UnknownIconError
        When there is no such icon.
    """
    if not name:
        return QIcon()
    _drawn(name, colour(role).name())
    return QIcon(_Engine(name, role))


def state_icon(state: State) -> QIcon:
    """Return the shape of a state in its colour; its word stands beside it."""
    look = STATES[state]
    return icon(look.shape, look.role)
