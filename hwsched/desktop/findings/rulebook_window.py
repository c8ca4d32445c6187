"""The rulebook: every rule with its page, what is in force in this project, and the switches for it."""

from collections import Counter
from collections.abc import Mapping

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QCheckBox,
    QFormLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QScrollArea,
    QSplitter,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from hwsched.desktop.findings.rule_page import RulePage
from hwsched.desktop.frame.tool_window import Desk, ToolWindow
from hwsched.desktop.looks.limit_words import limit_value, limit_words
from hwsched.desktop.looks.severities import severity_word
from hwsched.desktop.looks.text_size import in_figures
from hwsched.desktop.widgets.found_by_key import found_by_key
from hwsched.desktop.widgets.giving_tree import GivingTree
from hwsched.desktop.widgets.number_columns import to_the_right
from hwsched.language import phrase, phrase_of_count
from hwsched.operations.project.history import newest
from hwsched.operations.project.reading_settings import settings_of
from hwsched.operations.project.settings import set_settings
from hwsched.rules import RULEBOOK, in_rulebook, limits_of
from hwsched.rules.page import page_of
from hwsched.values import DISCIPLINES, Settings

_RULE = int(Qt.ItemDataRole.UserRole)


class RulebookWindow(ToolWindow):
    """Rules by discipline at the left; the chosen one's page, its switch and its limits at the right."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, phrase("Rulebook"), parent)
        self.resize(1080, 620)
        self.base = newest(desk.workspace.project)
        self.settings: Settings = settings_of(desk.workspace.project)
        self.search = QLineEdit()
        self.search.setAccessibleName(phrase("Words of a rule"))
        self.search.setPlaceholderText(phrase("Find: word, identifier, publication…"))
        self.search.setClearButtonEnabled(True)
        self.search.textChanged.connect(self._narrow)
        found_by_key(self, self.search)
        self.changed = QCheckBox(phrase("Only changed or off"))
        self.changed.toggled.connect(self._narrow)
        # What it is and whether it is off stand on the page beside, too.
        self.list = GivingTree(
            [phrase("Rule"), phrase("Severity"), phrase("In force"), phrase("Findings")], gives_way=(1, 2)
        )
        self.list.setAccessibleName(phrase("Rules"))
        self.list.setAlternatingRowColors(True)
        to_the_right(self.list, (3,))
        self.list.currentItemChanged.connect(lambda *_: self._show())
        self.page = RulePage()
        self.page.setAccessibleName(phrase("Page of the rule"))
        self.limits: dict[str, QLineEdit] = {}
        self.form_area = QScrollArea()
        self.form_area.setWidgetResizable(True)
        self.form_area.setFrameShape(QScrollArea.Shape.NoFrame)
        self.form_area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.set = self.button(phrase("Set limits"), self.set_limits, phrase("Empty is the rule's own"))
        self.own = self.button(phrase("Back to the rule's own"), self.own_limits)
        self.switch = self.button(phrase("Switch off"), self.switch_rule)
        self._build()
        self._fill()
        self._choose_first()

    def _build(self) -> None:
        top = QHBoxLayout()
        top.addWidget(self.search, 1)
        top.addWidget(self.changed)
        left, right = QWidget(), QWidget()
        column = QVBoxLayout(left)
        column.setContentsMargins(0, 0, 0, 0)
        column.addLayout(top)
        column.addWidget(self.list, 1)
        column = QVBoxLayout(right)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.page, 1)
        column.addWidget(self.form_area)
        split = QSplitter(Qt.Orientation.Horizontal)
        split.addWidget(left)
        split.addWidget(right)
        split.setSizes([600, 480])
        self.body.addWidget(split)
        for each in (self.set, self.own, self.switch):
            self.foot.addWidget(each)

    def choose(self, rule_id: str) -> None:
        """Show a rule; one that is narrowed away is brought back."""
        for line in self._lines():
            if line.data(0, _RULE) == rule_id:
                if line.isHidden():
                    self.search.clear()
                    self.changed.setChecked(False)
                self.list.setCurrentItem(line)
                self.list.scrollToItem(line)

    def chosen(self) -> str:
        """Return the identifier of the chosen rule; empty where none is."""
        item = self.list.currentItem()
        return str(item.data(0, _RULE) or "") if item is not None else ""

    def help_topic(self) -> str:
        """Return the help page of what is looked at."""
        return f"rules/{self.chosen()}" if self.chosen() else ""

    def follow(self) -> None:
        """Show what is in force now; the chosen rule stays chosen."""
        self.base = newest(self.desk.workspace.project)
        self.settings = settings_of(self.desk.workspace.project)
        counts = self._counts()
        for line in self._lines():
            self._put(line, str(line.data(0, _RULE)), counts)
        self.list.share()
        self._narrow()
        self._show()

    def enable(self) -> None:
        """Let what is possible with the chosen rule be done."""
        rule_id = self.chosen()
        self.switch.setEnabled(bool(rule_id) and self.idle)
        self.set.setEnabled(bool(self.limits) and self.idle)
        held = any(name.startswith(f"{rule_id}.") for name in self.settings.limits)
        self.own.setEnabled(bool(rule_id) and held and self.idle)

    def switch_rule(self) -> None:
        """Switch the chosen rule off, or on again."""
        rule_id, workspace = self.chosen(), self.desk.workspace
        off = rule_id not in self.settings.rules_off
        self.edit_seen(
            lambda base: set_settings(workspace.project, who=workspace.who, rules_off={rule_id: off}, base=base),
            self.base,
            lambda _changes: self.follow(),
        )

    def set_limits(self) -> None:
        """Put what was typed in force; an empty field goes back to the rule's own."""
        rule_id, typed = self.chosen(), {}
        rule = in_rulebook(rule_id)
        if rule is None:
            return
        now = limits_of(rule, self.settings)
        for name, field in self.limits.items():
            text = field.text().strip().replace(",", ".")
            try:
                value = float(text) if text else None
            except ValueError:
                said = next(limit_words(limit) for limit in rule.limits if limit.name == name)
                self.told.setText(phrase("{name}: '{text}' is no number; nothing was changed.", name=said, text=text))
                field.setFocus()
                field.selectAll()
                return
            if value != now[name]:
                typed[f"{rule_id}.{name}"] = value
        self._set(typed)

    def own_limits(self) -> None:
        """Let the chosen rule go back to its own limits."""
        rule_id = self.chosen()
        self._set({name: None for name in self.settings.limits if name.startswith(f"{rule_id}.")})

    def _set(self, limits: Mapping[str, float | None]) -> None:
        workspace = self.desk.workspace
        if limits:
            self.told.clear()
            self.edit_seen(
                lambda base: set_settings(workspace.project, who=workspace.who, limits=limits, base=base),
                self.base,
                lambda _changes: self.follow(),
            )

    def _fill(self) -> None:
        counts = self._counts()
        branches: dict[str, QTreeWidgetItem] = {}
        for rule in RULEBOOK:
            branch = branches.get(rule.discipline)
            if branch is None:
                branch = branches[rule.discipline] = QTreeWidgetItem([phrase(DISCIPLINES[rule.discipline])])
                branch.setFlags(Qt.ItemFlag.ItemIsEnabled)
                self.list.addTopLevelItem(branch)
                branch.setFirstColumnSpanned(True)
                font = branch.font(0)
                font.setBold(True)
                branch.setFont(0, font)
            line = QTreeWidgetItem([phrase(rule.title)])
            line.setData(0, _RULE, rule.id)
            branch.addChild(line)
            self._put(line, rule.id, counts)
        self.list.expandAll()
        self.list.share()

    def _counts(self) -> Counter[str]:
        checked = self.desk.workspace.checked.values()
        return Counter(finding.rule for each in checked for finding in each.findings if not finding.waived)

    def _put(self, line: QTreeWidgetItem, rule_id: str, counts: Counter[str]) -> None:
        rule = in_rulebook(rule_id)
        if rule is None:
            return
        off = rule_id in self.settings.rules_off
        now = limits_of(rule, self.settings)
        values = [f"{limit_words(each)}: {limit_value(each, now[each.name])}" for each in rule.limits]
        own = sum(value != rule.declared[name] for name, value in now.items())
        words = (
            phrase("off")
            if off
            else phrase_of_count("on, {count} limit changed", "on, {count} limits changed", own)
            if own
            else phrase("on, {count}", count=phrase_of_count("{count} limit", "{count} limits", len(now)))
            if now
            else phrase("on")
        )
        texts = (
            phrase(rule.title),
            severity_word(rule.severity),
            words,
            str(counts[rule_id]) if counts[rule_id] else "",
        )
        for column, text in enumerate(texts):
            line.setText(column, text)
            font = line.font(column)
            font.setItalic(off)
            font.setBold(bool(own) and not off and column == 2)
            line.setFont(column, font)
        self.list.tell(line, f"{phrase(rule.title)} ({rule_id})")
        line.setToolTip(2, phrase("off") if off else "\n".join(values))
        line.setTextAlignment(3, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)

    def _narrow(self) -> None:
        words = self.search.text().casefold().split()
        for branch in self._branches():
            shown = 0
            for at in range(branch.childCount()):
                line = branch.child(at)
                hidden = line is None or not self._matches(line, words)
                if line is not None:
                    line.setHidden(hidden)
                shown += not hidden
            branch.setHidden(shown == 0)

    def _matches(self, line: QTreeWidgetItem, words: list[str]) -> bool:
        rule = in_rulebook(str(line.data(0, _RULE)))
        if rule is None:
            return False
        if self.changed.isChecked():
            held = any(name.startswith(f"{rule.id}.") for name in self.settings.limits)
            if not held and rule.id not in self.settings.rules_off:
                return False
        text = f"{rule.id} {page_of(rule)}".casefold()
        return all(word in text for word in words)

    def _show(self) -> None:
        rule = in_rulebook(self.chosen())
        form = QWidget()
        lines = QFormLayout(form)
        lines.setContentsMargins(0, 4, 0, 0)
        self.limits = {}
        if rule is None:
            self.page.setPlainText(phrase("Choose a rule."))
        else:
            off, now = rule.id in self.settings.rules_off, limits_of(rule, self.settings)
            self.page.show_rule(rule, now, off=off)
            self.switch.setText(phrase("Switch on") if off else phrase("Switch off"))
            for limit in rule.limits:
                field = QLineEdit(f"{now[limit.name]:.10g}")
                field.setPlaceholderText(phrase("the rule's own: {value:g}", value=limit.value))
                field.setToolTip(phrase(limit.text))
                in_figures(field, maximumWidth=19)
                field.returnPressed.connect(self.set_limits)
                label = QLabel(limit_words(limit))
                label.setWordWrap(True)
                label.setBuddy(field)
                field.setAccessibleName(label.text())
                lines.addRow(label, field)
                self.limits[limit.name] = field
        # Return in a field comes here: the field must outlive its own key.
        before = self.form_area.takeWidget()
        if before is not None:
            before.hide()
            before.deleteLater()
        self.form_area.setWidget(form)
        self.form_area.setVisible(bool(self.limits))
        self.form_area.setMaximumHeight(min(form.sizeHint().height() + 8, 190))
        self.enable()

    def _branches(self) -> list[QTreeWidgetItem]:
        found = (self.list.topLevelItem(at) for at in range(self.list.topLevelItemCount()))
        return [each for each in found if each is not None]

    def _lines(self) -> list[QTreeWidgetItem]:
        found = (branch.child(at) for branch in self._branches() for at in range(branch.childCount()))
        return [each for each in found if each is not None]

    def _choose_first(self) -> None:
        for line in self._lines()[:1]:
            self.list.setCurrentItem(line)
