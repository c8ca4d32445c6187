"""What a project decides: units, preference, rules switched off, limits changed."""

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QHeaderView,
    QLineEdit,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from hwsched.choices import PREFERENCES
from hwsched.desktop.looks.limit_words import PREFERRED, limit_words
from hwsched.desktop.looks.severities import severity_word
from hwsched.desktop.project.units import UnitsBox
from hwsched.desktop.widgets.drop_down import DropDown
from hwsched.desktop.widgets.room import give_room
from hwsched.kept_sentences import kept_phrase
from hwsched.language import phrase
from hwsched.rules import RULEBOOK
from hwsched.values import DISCIPLINES, Settings

_RULE: Final = int(Qt.ItemDataRole.UserRole)
_LIMIT: Final = _RULE + 1
_OWN: Final = _RULE + 2


class SettingsDialog(QDialog):
    """Units and the rulebook; only what differs is given back."""

    def __init__(
        self, title: str, settings: Settings, time_zone: str | None, units: UnitsBox, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(phrase("Settings and rules"))
        self._title, self._settings, self._zone = title, settings, time_zone or ""
        self.name = QLineEdit(title)
        self.units = units
        self.prefer = DropDown()
        for each in PREFERENCES:
            self.prefer.addItem(phrase(PREFERRED[each]), each)
        self.prefer.setCurrentIndex(self.prefer.findData(settings.prefer))
        self.zone = QLineEdit(self._zone)
        self.zone.setPlaceholderText(phrase("this machine's, such as Europe/Lisbon"))
        self.zone.setToolTip(phrase("Whose days count for documents, waivers and packets, and whose hours are shown."))
        form = QFormLayout()
        form.addRow(phrase("Title"), self.name)
        form.addRow(phrase("Units"), self.units)
        form.addRow(phrase("Rank first by"), self.prefer)
        form.addRow(phrase("Time zone"), self.zone)
        self.rules = QTreeWidget()
        self.rules.setHeaderLabels([phrase("Rule or limit"), phrase("Value"), phrase("Basis")])
        self.rules.setAlternatingRowColors(True)
        self.rules.header().setSectionResizeMode(0, QHeaderView.ResizeMode.ResizeToContents)
        self.rules.setToolTip(
            phrase("Untick a rule to switch it off. Double-click a limit to change it; empty is the rule's own.")
        )
        self.rules.itemDoubleClicked.connect(self._edit)
        self._fill()
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        layout = QVBoxLayout(self)
        layout.addLayout(form)
        layout.addWidget(self.rules, 1)
        layout.addWidget(buttons)
        give_room(self, 109, 73)

    def _fill(self) -> None:
        branches: dict[str, QTreeWidgetItem] = {}
        for rule in RULEBOOK:
            branch = branches.get(rule.discipline)
            if branch is None:
                branch = branches[rule.discipline] = QTreeWidgetItem([phrase(DISCIPLINES[rule.discipline])])
                self.rules.addTopLevelItem(branch)
            line = QTreeWidgetItem([phrase(rule.title), severity_word(rule.severity), phrase(rule.basis)])
            line.setData(0, _RULE, rule.id)
            off = rule.id in self._settings.rules_off
            line.setCheckState(0, Qt.CheckState.Unchecked if off else Qt.CheckState.Checked)
            line.setToolTip(0, kept_phrase(rule.cure, rule.id))
            branch.addChild(line)
            for limit in rule.limits:
                key = f"{rule.id}.{limit.name}"
                value = self._settings.limits.get(key, limit.value)
                below = QTreeWidgetItem([limit_words(limit), f"{value:g}", phrase(limit.source)])
                below.setData(0, _LIMIT, key)
                below.setData(0, _OWN, limit.value)
                below.setFlags(below.flags() | Qt.ItemFlag.ItemIsEditable)
                line.addChild(below)
        self.rules.expandToDepth(0)

    def _edit(self, item: QTreeWidgetItem, column: int) -> None:
        if item.data(0, _LIMIT) is not None and column == 1:
            self.rules.editItem(item, 1)

    def zone_answer(self) -> str | None:
        """Return the time zone, where another one was typed."""
        typed = self.zone.text().strip()
        return typed if typed not in ("", self._zone) else None

    def answer(self) -> tuple[str | None, str | None, dict[str, float | None], dict[str, bool]]:
        """Return title, preference, limits and rules switched off, as far as they differ; `units` tells its own.

        Raises
        ------
        ValueError
            Names the limit whose value is no number.
        """
        limits: dict[str, float | None] = {}
        off: dict[str, bool] = {}
        for branch in _children(self.rules.invisibleRootItem()):
            for line in _children(branch):
                rule = str(line.data(0, _RULE))
                is_off = line.checkState(0) == Qt.CheckState.Unchecked
                if is_off != (rule in self._settings.rules_off):
                    off[rule] = is_off
                for below in _children(line):
                    self._limit(below, limits)
        settings = self._settings
        return (
            self.name.text().strip() if self.name.text().strip() not in ("", self._title) else None,
            self.prefer.currentData() if self.prefer.currentData() != settings.prefer else None,
            limits,
            off,
        )

    def _limit(self, item: QTreeWidgetItem, limits: dict[str, float | None]) -> None:
        key, own, text = str(item.data(0, _LIMIT)), float(item.data(0, _OWN)), item.text(1).strip()
        held = self._settings.limits.get(key)
        if text == f"{own if held is None else held:g}":
            return
        if not text:
            limits[key] = None
            return
        try:
            limits[key] = float(text.replace(",", "."))
        except ValueError:
            raise ValueError(f"{key}: '{text}' is no number") from None


def _children(item: QTreeWidgetItem) -> list[QTreeWidgetItem]:
    return [child for place in range(item.childCount()) if (child := item.child(place)) is not None]
