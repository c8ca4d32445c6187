"""Who accepts the selected findings, why and until when: a pane under the list; nothing is written here."""

from PySide6.QtCore import QDate, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QCheckBox, QDateEdit, QFrame, QHBoxLayout, QLabel, QLineEdit, QPushButton, QVBoxLayout

from hwsched.desktop.looks.tokens import SPACE
from hwsched.desktop.widgets.giving_back import GivingBack
from hwsched.desktop.widgets.spin import spin
from hwsched.language import phrase, to_phrase

_NOTE = to_phrase(
    "A waiver writes down who accepts a finding; each is given for its own opening, and lapses "
    "when the facts it is given for change. It makes nothing safe or allowed: label, local code "
    "and the authority having jurisdiction decide."
)


class WaivePane(QFrame):
    """Person, reason, last day."""

    given = Signal(str, str, object)
    """Person, reason, last day or None."""

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName(phrase("Waive the selected findings"))
        self.said = QLabel()
        self.said.setWordWrap(True)
        self.person, self.reason = QLineEdit(), QLineEdit()
        self.person.setAccessibleName(phrase("Person who accepts"))
        self.person.setPlaceholderText(phrase("Who accepts them"))
        self.reason.setAccessibleName(phrase("Reason"))
        self.reason.setPlaceholderText(phrase("Why they can be accepted; it is printed with each"))
        self.ends = QCheckBox(phrase("Last day"))
        self.until = spin(QDateEdit(QDate.currentDate().addMonths(6)))
        self.until.setAccessibleName(phrase("Last day on which they are accepted"))
        self.until.setMinimumDate(QDate.currentDate())
        self.until.setDisplayFormat(phrase("yyyy-MM-dd"))
        self.until.setCalendarPopup(True)
        self.until.setEnabled(False)
        self.ends.toggled.connect(self.until.setEnabled)
        self.take = QPushButton()
        self.take.clicked.connect(lambda _checked=False: self._give())
        self.leave = QPushButton(phrase("Leave"))
        self.leave.clicked.connect(lambda _checked=False: self.hide())
        row = QHBoxLayout()
        row.addWidget(self.person, 1)
        row.addWidget(self.reason, 3)
        row.addWidget(self.ends)
        row.addWidget(self.until)
        buttons = QHBoxLayout()
        buttons.addWidget(self.said, 1)
        buttons.addWidget(self.leave)
        buttons.addWidget(self.take)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(SPACE.hair)
        layout.addLayout(row)
        layout.addLayout(buttons)
        for line in (self.person, self.reason):
            line.textChanged.connect(self._allow)
        GivingBack(self)
        self.hide()

    def ask(self, findings: int, at: str, person: str) -> None:
        """Ask about so many findings at openings or supplies."""
        self.person.setText(self.person.text() or person)
        self.reason.clear()
        self.take.setText(
            phrase(
                "Waive {findings} {part} at {at}",
                findings=findings,
                part=phrase("finding") if findings == 1 else phrase("findings"),
                at=at,
            )
        )
        self.said.setText(phrase(_NOTE))
        self._allow()
        self.show()
        self.reason.setFocus(Qt.FocusReason.OtherFocusReason)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Leave with Escape, give with Return."""
        if event.key() == Qt.Key.Key_Escape:
            self.hide()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.take.isEnabled():
            self._give()
        else:
            super().keyPressEvent(event)

    def _give(self) -> None:
        day = self.until.date().toString(phrase("yyyy-MM-dd")) if self.ends.isChecked() else None
        self.given.emit(self.person.text(), self.reason.text(), day)

    def _allow(self) -> None:
        self.take.setEnabled(bool(self.person.text().strip() and self.reason.text().strip()))
