"""Words on the screen are words: what stands in a cell of somebody's sheet is shown, never read as markup.

Qt takes text that looks like HTML for HTML in labels, message boxes and tooltips, and loads the pictures that it names.
"""

from PySide6.QtCore import QCoreApplication, QEvent, QObject, Qt
from PySide6.QtWidgets import QLabel

_NAME = "plain words"


class PlainWords(QObject):
    """Makes every label plain before it is shown first: Qt's own too, those of tooltips and message boxes included."""

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802
        """Let every event pass; a label that is about to be shown guesses no more what its text is."""
        # Of every event of the program is asked, and most are none of a label: of what kind one is costs most to ask.
        if (
            isinstance(watched, QLabel)
            and event.type() == QEvent.Type.Polish
            and watched.textFormat() == Qt.TextFormat.AutoText
        ):
            watched.setTextFormat(Qt.TextFormat.PlainText)
        return False


def keep_words_plain() -> None:
    """Let it be so in the whole program; told twice it is the same."""
    application = QCoreApplication.instance()
    if application is not None and application.findChild(PlainWords, _NAME) is None:
        made = PlainWords(application)
        made.setObjectName(_NAME)
        application.installEventFilter(made)
