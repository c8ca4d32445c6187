"""Putting a what-if together: one change after another, of which the list below shows what is asked."""

from dataclasses import dataclass
from pathlib import Path
from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QCompleter,
    QHBoxLayout,
    QLineEdit,
    QListWidget,
    QPushButton,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from hwsched.choices import PREFERENCES
from hwsched.desktop.looks.limit_words import PREFERRED, limit_words
from hwsched.desktop.looks.text_size import in_figures, in_pixels
from hwsched.desktop.opening.part_box import PartBox, RoleBox, catalogue_of, part_names
from hwsched.desktop.project.workspace import Workspace
from hwsched.desktop.widgets.asked_files import file_to_read
from hwsched.desktop.widgets.drop_down import DropDown
from hwsched.desktop.widgets.empty import Empty
from hwsched.language import phrase, to_phrase
from hwsched.operations.opening.hand_choices import ROLES
from hwsched.operations.opening.what_if import Question
from hwsched.operations.project.reading_settings import settings_of
from hwsched.rules import RULEBOOK
from hwsched.values import Chosen, Settings

CATALOGUE, PREFER, LIMIT, SWITCH, PART = range(5)
_OWN: Final = int(Qt.ItemDataRole.UserRole) + 1
"""Role under which a limit keeps the rule's own value."""
KINDS: Final = (
    to_phrase("Catalogue file"),
    to_phrase("Preference"),
    to_phrase("Limit of a rule"),
    to_phrase("Rule on or off"),
    to_phrase("Part"),
)


@dataclass(frozen=True, slots=True)
class Asked:
    """One change that is asked about."""

    kind: int
    name: str
    """File, preference, limit, rule or role."""
    value: float | bool | str | None
    """Of the limit (None: its own), whether the rule is off, or the part."""
    words: str

    @property
    def place(self) -> tuple[int, str]:
        """What a later change of the same replaces: there is one catalogue and one preference."""
        return self.kind, "" if self.kind in (CATALOGUE, PREFER) else self.name


class QuestionForm(QWidget):
    """A kind of change, its values, and the list of what is asked."""

    changed = Signal()

    def __init__(self, workspace: Workspace, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._workspace = workspace
        self._settings: Settings = settings_of(workspace.project)
        self.asked: list[Asked] = []
        self.kind = DropDown()
        self.kind.setAccessibleName(phrase("What would be otherwise"))
        self.kind.addItems([phrase(each) for each in KINDS])
        self.inputs = QStackedWidget()
        self.kind.currentIndexChanged.connect(self.inputs.setCurrentIndex)
        self.file = QLineEdit()
        self.file.setAccessibleName(phrase("Catalogue file"))
        self.file.setPlaceholderText(phrase("Catalogue workbook, taken in over the project's own"))
        browse = QPushButton(phrase("Choose…"))
        browse.setAutoDefault(False)
        browse.clicked.connect(self._browse)
        self.prefer = DropDown()
        self.limit = _search_box()
        for rule in RULEBOOK:
            for limit in rule.limits:
                self.limit.addItem(f"{phrase(rule.title)}: {limit_words(limit)}", f"{rule.id}.{limit.name}")
                self.limit.setItemData(self.limit.count() - 1, limit.value, _OWN)
        self.value = QLineEdit()
        self.value.setAccessibleName(phrase("Value of the limit"))
        in_figures(self.value, maximumWidth=13)
        self.value.returnPressed.connect(self.add)
        self.limit.currentIndexChanged.connect(self._show_limit)
        self._show_limit()
        self.rule = _search_box()
        self._fill()
        self.role = RoleBox(ROLES)
        self.part = PartBox(part_names(catalogue_of(workspace)))
        for row in (
            (self.file, browse),
            (self.prefer,),
            (self.limit, self.value),
            (self.rule,),
            (self.role, self.part),
        ):
            self.inputs.addWidget(_in_row(row))
        self.inputs.setFixedHeight(self.inputs.sizeHint().height())
        self.plus = QPushButton(phrase("Ask this too"))
        self.plus.setAutoDefault(False)
        self.plus.clicked.connect(self.add)
        self.list = QListWidget()
        self.list.setAccessibleName(phrase("What is asked"))
        in_pixels(self.list, maximumHeight=76)
        Empty(self.list, phrase("Ask this too puts what is chosen above into the question."))
        self.out = QPushButton(phrase("Take out"))
        self.out.setAutoDefault(False)
        self.out.clicked.connect(self.take_out)
        top, below = QHBoxLayout(), QHBoxLayout()
        top.addWidget(self.kind)
        top.addWidget(self.inputs, 1)
        top.addWidget(self.plus)
        below.addWidget(self.list, 1)
        below.addWidget(self.out, 0, Qt.AlignmentFlag.AlignTop)
        self.out.setFixedWidth(self.plus.sizeHint().width())
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addLayout(top)
        layout.addLayout(below)
        self._show()

    def follow(self) -> None:
        """Offer what differs from the settings as they now stand."""
        self._settings = settings_of(self._workspace.project)
        self._fill()

    def _fill(self) -> None:
        for box in (self.prefer, self.rule):
            box.clear()
        for each in PREFERENCES:
            if each != self._settings.prefer:
                self.prefer.addItem(phrase(PREFERRED[each]), each)
        for rule in RULEBOOK:
            off = rule.id in self._settings.rules_off
            self.rule.addItem(f"{phrase(rule.title)} ({phrase('off now') if off else phrase('on now')})", rule.id)

    def add(self) -> None:
        """Add the change that is put together to the question, in place of an earlier one of the same."""
        made = self._made()
        if made is None:
            return
        self.asked = [each for each in self.asked if each.place != made.place]
        self.asked.append(made)
        self._show()

    def take_out(self) -> None:
        """Take the selected change, or the last one, out of the question."""
        if self.asked:
            row = self.list.currentRow()
            del self.asked[row if 0 <= row < len(self.asked) else -1]
            self._show()

    def question(self) -> Question:
        """Return what is asked."""
        catalogue: Path | None = None
        prefer: str | None = None
        limits: dict[str, float | None] = {}
        off: dict[str, bool] = {}
        parts: list[Chosen] = []
        for each in self.asked:
            if each.kind == CATALOGUE:
                catalogue = Path(each.name)
            elif each.kind == PREFER:
                prefer = each.name
            elif isinstance(each.value, bool):
                off[each.name] = each.value
            elif isinstance(each.value, str):
                parts.append(Chosen(each.name, each.value))
            else:
                limits[each.name] = each.value
        return Question(catalogue, limits, off, prefer, tuple(parts))

    def _made(self) -> Asked | None:
        kind = self.kind.currentIndex()
        if kind == CATALOGUE:
            path = self.file.text().strip()
            return Asked(kind, path, None, phrase("Catalogue {path}", path=path)) if path else None
        if kind == PREFER:
            return Asked(kind, str(self.prefer.currentData()), None, self.prefer.currentText())
        if kind == LIMIT:
            return self._limit_asked()
        if kind == SWITCH:
            at = self.rule.findText(self.rule.currentText())
            if at < 0:
                return None
            rule = str(self.rule.itemData(at))
            off = rule not in self._settings.rules_off
            title = next(phrase(each.title) for each in RULEBOOK if each.id == rule)
            words = phrase("{title}: off", title=title) if off else phrase("{title}: on", title=title)
            return Asked(kind, rule, off, words)
        part, role = self.part.number(), self.role.role()
        return Asked(kind, role, part, f"{self.role.currentText()} {part}") if part else None

    def _limit_asked(self) -> Asked | None:
        text = self.value.text().strip().replace(",", ".")
        at = self.limit.findText(self.limit.currentText().strip())
        if at < 0:
            return None
        name = str(self.limit.itemData(at))
        try:
            value = float(text) if text else None
        except ValueError:
            self.value.setFocus()
            self.value.selectAll()
            return None
        said = phrase("back to its own") if value is None else f"{value:g}"
        return Asked(LIMIT, name, value, f"{self.limit.itemText(at)}: {said}")

    def _show(self) -> None:
        self.list.clear()
        self.list.addItems([each.words for each in self.asked])
        self.out.setEnabled(bool(self.asked))
        self.changed.emit()

    def _show_limit(self) -> None:
        name, own = str(self.limit.currentData()), self.limit.currentData(_OWN)
        now = self._settings.limits.get(name, own)
        self.value.setText("" if now is None else f"{now:.10g}")

    def _browse(self) -> None:
        path = file_to_read(self, phrase("Catalogue"), at=self.file.text(), kinds=phrase("Workbooks (*.xlsx)"))
        if path:
            self.file.setText(path)
            self.add()


def _search_box() -> QComboBox:
    box = DropDown()
    box.setEditable(True)
    box.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
    box.setMinimumContentsLength(24)
    completer = QCompleter(box.model(), box)
    completer.setFilterMode(Qt.MatchFlag.MatchContains)
    completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
    box.setCompleter(completer)
    return box


def _in_row(widgets: tuple[QWidget, ...]) -> QWidget:
    made = QWidget()
    row = QHBoxLayout(made)
    row.setContentsMargins(0, 0, 0, 0)
    for place, each in enumerate(widgets):
        stretch = (
            1 if len(widgets) == 1 or (isinstance(each, QLineEdit | QComboBox) and each.maximumWidth() > 1000) else 0
        )
        row.addWidget(each, stretch + (place == 1 and isinstance(each, PartBox)))
    return made
