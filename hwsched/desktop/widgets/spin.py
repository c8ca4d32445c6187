"""Fields with arrows: what stands in them begins where it begins in every other field."""

from typing import Final, TypeVar

from PySide6.QtWidgets import QAbstractSpinBox

from hwsched.desktop.looks.tokens import SPACE

_INNER: Final = 3
"""So far within a field Qt begins by itself [px]."""
_Spin = TypeVar("_Spin", bound=QAbstractSpinBox)


def spin(box: _Spin) -> _Spin:
    """Give the text of a field with arrows the room at its left that a style sheet does not reach."""
    box.lineEdit().setTextMargins(SPACE.small - _INNER, 0, 0, 0)
    return box
