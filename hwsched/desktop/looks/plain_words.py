"""Words on the screen are words: what stands in a cell of somebody's sheet is shown, never read as markup, and whole.

Qt takes text that looks like HTML for HTML in labels, message boxes and tooltips, and loads the pictures that it names.
It cuts words that have no room, and tells nobody what they were.
"""

from typing import Any, Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QLabel, QProxyStyle

from hwsched.desktop.looks.told_whole import ToldWhole

BASE: Final = "Fusion"
"""The toolkit's own style, alike on every system."""
_NAME: Final = "plain words"


class PlainWords(QProxyStyle):
    """That style, which makes every label plain before it is shown first: Qt's own too, of tooltips and message boxes.

    What may cut its words is looked at from then on, so that its tip tells them.

    The style is asked once for each thing on the screen. A filter of events would be asked for every event there is: it
    took a fifth of the time in which a project opens.
    """

    def __init__(self) -> None:
        super().__init__(BASE)
        self.setObjectName(_NAME)
        self._whole = ToldWhole(self)

    def polish(self, what: Any) -> Any:
        """Let what is about to be shown guess no more what its text is, where it is a label."""
        if isinstance(what, QLabel) and what.textFormat() == Qt.TextFormat.AutoText:
            what.setTextFormat(Qt.TextFormat.PlainText)
        self._whole.look_at(what)
        return super().polish(what)


def keep_words_plain() -> None:
    """Let it be so in the whole program; told twice it is the same."""
    application = QApplication.instance()
    # A style sheet puts a style of its own before it.
    if isinstance(application, QApplication) and application.findChild(PlainWords, _NAME) is None:
        application.setStyle(PlainWords())
