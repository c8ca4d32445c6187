"""The window's letters: kin of the pages' at the door, from the package, so that it looks the same on every system."""

from typing import Final

from PySide6.QtGui import QFont, QFontDatabase
from PySide6.QtWidgets import QApplication

from hwsched.paths import RESOURCES

FILES: Final = ("Roboto-Regular.ttf", "Roboto-Bold.ttf", "DejaVuSans.ttf", "DejaVuSans-Bold.ttf")
FAMILY: Final = "Roboto"
BESIDE: Final = "DejaVu Sans"
"""Has what the first lacks, as arrows are; drawings have it on paper and on the screen."""


def use_own_letters(application: QApplication) -> bool:
    """Take the package's fonts into the window, in the system's size; returns whether they could be loaded."""
    loaded = [QFontDatabase.addApplicationFont(str(RESOURCES / "fonts" / name)) for name in FILES]
    if -1 in loaded:
        return False
    font = QFont(application.font())
    font.setFamilies([FAMILY, BESIDE])
    application.setFont(font)
    return True
