"""Asks who accepts a finding, why, until when and how far; nothing is written here."""

from dataclasses import dataclass

from PySide6.QtCore import QDate, Qt, Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QCheckBox,
    QDateEdit,
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QRadioButton,
    QVBoxLayout,
    QWidget,
)

from hwsched.desktop.looks.severities import severity_word
from hwsched.desktop.widgets.room import give_room
from hwsched.desktop.widgets.spin import spin
from hwsched.language import phrase
from hwsched.rules.saying import message_of, rule_said
from hwsched.values import Finding


@dataclass(frozen=True, slots=True)
class Accepted:
    """What a person said of a finding."""

    person: str
    reason: str
    scope: str
    about: str | None
    until: str | None


class WaiveDialog(QDialog):
    """Person, reason, last day, scope.

    Parameters
    ----------
    mark : str
        Of the opening.
    finding : Finding
        That is to be accepted.
    person : str
        Who is at work.
    alike, everywhere : int
        Openings alike with the same finding, this one included; openings of the project with a finding of the rule.
    """

    wants_waiver = Signal(object)
    """What was said; the dialog stays until it is accepted."""

    def __init__(
        self, mark: str, finding: Finding, person: str, alike: int, everywhere: int, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(phrase("Waive '{rule}'", rule=rule_said(finding.rule)))
        self._about = finding.about
        said = QLabel(f"{mark}. {severity_word(finding.severity)}: {message_of(finding)}")
        said.setTextFormat(Qt.TextFormat.PlainText)
        said.setWordWrap(True)
        self.person = QLineEdit(person)
        self.reason = QLineEdit()
        self.reason.setPlaceholderText(phrase("Why it can be accepted; it is printed with the finding"))
        self.ends = QCheckBox(phrase("Last day"))
        self.until = spin(QDateEdit(QDate.currentDate().addMonths(6)))
        self.until.setMinimumDate(QDate.currentDate())
        self.until.setDisplayFormat(phrase("yyyy-MM-dd"))
        self.until.setCalendarPopup(True)
        self.until.setEnabled(False)
        self.ends.toggled.connect(self.until.setEnabled)
        day = QHBoxLayout()
        day.addWidget(self.ends)
        day.addWidget(self.until)
        day.addStretch(1)
        self.scopes = QButtonGroup(self)
        scopes = QVBoxLayout()
        for key, text in (
            ("opening", phrase("This opening")),
            ("alike", phrase("Openings alike ({alike} with the same finding now)", alike=alike)),
            (
                "project",
                phrase("The whole project ({everywhere} with a finding of this rule now)", everywhere=everywhere),
            ),
        ):
            button = QRadioButton(text)
            button.setObjectName(key)
            button.setChecked(key == "opening")
            self.scopes.addButton(button)
            scopes.addWidget(button)
        self.every = QCheckBox(phrase("Every finding of this rule, not only about {about}", about=finding.about))
        self.every.setVisible(bool(finding.about))
        scopes.addWidget(self.every)
        note = QLabel(
            phrase(
                "A waiver writes down who accepts a finding. It makes nothing safe or allowed: label, local "
                "code and the authority having jurisdiction decide. It lapses when the facts it is given for "
                "change."
            )
        )
        note.setWordWrap(True)
        form = QFormLayout()
        form.addRow(phrase("Person"), self.person)
        form.addRow(phrase("Reason"), self.reason)
        form.addRow(phrase("Until"), day)
        form.addRow(phrase("Holds for"), scopes)
        self.buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel)
        self.ok = self.buttons.button(QDialogButtonBox.StandardButton.Ok)
        self.ok.setText(phrase("Waive"))
        self.buttons.accepted.connect(lambda: self.wants_waiver.emit(self.answer()))
        self.buttons.rejected.connect(self.reject)
        layout = QVBoxLayout(self)
        layout.addWidget(said)
        layout.addLayout(form)
        layout.addWidget(note)
        layout.addWidget(self.buttons)
        self.person.textChanged.connect(self._allow)
        self.reason.textChanged.connect(self._allow)
        self.reason.setFocus()
        self._allow()
        give_room(self, 68)

    def answer(self) -> Accepted:
        """Return what was said."""
        checked = self.scopes.checkedButton()
        return Accepted(
            self.person.text(),
            self.reason.text(),
            checked.objectName() if checked is not None else "opening",
            self._about if self._about and not self.every.isChecked() else None,
            self.until.date().toString(phrase("yyyy-MM-dd")) if self.ends.isChecked() else None,
        )

    def _allow(self) -> None:
        self.ok.setEnabled(bool(self.person.text().strip() and self.reason.text().strip()))
