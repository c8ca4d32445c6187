"""The window's letters: those of the pages, from the package, so that both look alike on every system."""

from typing import Final

from PySide6.QtGui import QFont, QFontDatabase
from PySide6.QtWidgets import QApplication

from hwsched.paths import RESOURCES

FILES: Final = ("DejaVuSans.ttf", "DejaVuSans-Bold.ttf")
FAMILY: Final = "DejaVu Sans"


def use_own_letters(application: QApplication) -> bool:
    """Take the package's font into the window, in the size that the system has; returns whether it could be loaded."""
    loaded = [QFontDatabase.addApplicationFont(str(RESOURCES / "fonts" / name)) for name in FILES]
    if -1 in loaded:
        return False
    font = QFont(application.font())
    font.setFamilies([FAMILY])
    application.setFont(font)
    return True
