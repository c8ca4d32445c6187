"""Fields with arrows: what stands in them begins where it begins in every other field."""

from typing import Final, TypeVar

from PySide6.QtWidgets import QAbstractSpinBox, QDoubleSpinBox

from hwsched.desktop.looks.tokens import SPACE

_INNER: Final = 3
"""So far within a field Qt begins by itself [px]."""
_Spin = TypeVar("_Spin", bound=QAbstractSpinBox)


class AmountBox(QDoubleSpinBox):
    """A number of pieces or of a length: as many decimals are shown as it has, none where it is whole."""

    def textFromValue(self, value: float) -> str:  # noqa: N802
        """Return it without noughts at its end."""
        said, point = super().textFromValue(value), self.locale().decimalPoint()
        return said.rstrip("0").removesuffix(point) if point in said else said


def spin(box: _Spin) -> _Spin:
    """Give the text of a field with arrows the room at its left that a style sheet does not reach."""
    box.lineEdit().setTextMargins(SPACE.small - _INNER, 0, 0, 0)
    return box
