"""Why an opening has what it has: the chain of facts, rules and numbers as a tree, to be read and copied."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QHBoxLayout, QLabel, QTreeWidgetItem, QWidget

from hwsched.desktop.frame.tool_window import Desk, ToolWindow
from hwsched.desktop.looks.tokens import wide
from hwsched.desktop.widgets.drop_down import DropDown
from hwsched.desktop.widgets.empty import Empty
from hwsched.desktop.widgets.wrapping import WrappingTree
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.model.errors import ChangeError
from hwsched.operations.findings.why import HOLES, PLACE, Why, as_lines, why
from hwsched.rules import in_rulebook

_WORDS = {PLACE: to_phrase("place of the unit"), HOLES: to_phrase("holes")}


class WhyWindow(ToolWindow):
    """One thing of one opening at a time; another is chosen above."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, phrase("Why?"), parent)
        self.resize(760, 560)
        self.mark = ""
        self._told: tuple[Why, ...] = ()
        self.about = DropDown()
        self.about.setAccessibleName(phrase("What is asked about"))
        self.about.currentIndexChanged.connect(self._show)
        self.about.setMinimumWidth(wide(34))
        self.headline = QLabel()
        self.headline.setTextFormat(Qt.TextFormat.PlainText)
        self.headline.setWordWrap(True)
        font = self.headline.font()
        font.setBold(True)
        self.headline.setFont(font)
        self.tree = WrappingTree()
        self.tree.setAccessibleName(phrase("Why"))
        self.tree.setAlternatingRowColors(True)
        self.tree.wants_copy.connect(self.copy_text)
        self.tree.setSelectionMode(WrappingTree.SelectionMode.ExtendedSelection)
        self.tree.itemSelectionChanged.connect(self.enable)
        Empty(self.tree, phrase("Ask Why? at a part, a place or a finding of an opening: its reasons stand here."))
        self.headline.hide()
        # Nothing is asked about yet.
        self.about.hide()
        row = QHBoxLayout()
        row.addWidget(self.about)
        row.addStretch(1)
        self.body.addLayout(row)
        self.body.addWidget(self.headline)
        self.body.addWidget(self.tree, 1)
        self.rule = self.button(phrase("Show rule"), self._show_rule)
        self.copy = self.button(phrase("Copy"), self.copy_text, phrase("The selected lines, or the whole chain"))
        self.foot.addWidget(self.rule)
        self.foot.addWidget(self.copy)
        self.enable()

    def tell(self, about: tuple[str, str, str, str]) -> None:
        """Tell about mark, thing, line and lock point."""
        self.ask(*about)

    def ask(self, mark: str, about: str, line: str = "", point: str = "") -> None:
        """Tell about one thing of an opening, or of a lock point of it, and point at the line that begins so.

        Raises
        ------
        ChangeError
            When the opening or the thing is not there.
        """
        told = why(self.desk.workspace.project, mark)
        self.mark, self._told = mark, told
        self.setWindowTitle(phrase("Why? {mark}", mark=mark))
        self.about.blockSignals(True)
        self.about.clear()
        for each in told:
            rule = in_rulebook(each.about)
            words = phrase(_WORDS.get(each.about, rule.title if rule is not None else each.about))
            self.about.addItem(f"{words}, {each.point}" if each.point else words, each.about)
        at = [place for place, each in enumerate(told) if each.about == about]
        here = [place for place in at if told[place].point == point]
        self.about.setCurrentIndex((here or at or [0])[0])
        self.about.blockSignals(False)
        self.about.setVisible(bool(told))
        self._show()
        if line:
            found = self.tree.findItems(line, Qt.MatchFlag.MatchStartsWith | Qt.MatchFlag.MatchRecursive, 0)
            for item in found[:1]:
                self.tree.setCurrentItem(item)

    def follow(self) -> None:
        """Tell anew after an edit; an opening that is gone closes the window."""
        if not self.mark:
            return
        try:
            chain = self.chain()
            self.ask(self.mark, str(self.about.currentData() or ""), point=chain.point if chain is not None else "")
        except ChangeError:
            self.close()

    def enable(self) -> None:
        """Only a finding or a line of a rule has one to show."""
        self.rule.setEnabled(self._rule() is not None)
        self.copy.setEnabled(bool(self._told))

    def chain(self) -> Why | None:
        """Return what is shown."""
        at = self.about.currentIndex()
        return self._told[at] if 0 <= at < len(self._told) else None

    def copy_text(self) -> None:
        """Put the selected lines, or the whole chain, on the clipboard."""
        chosen = [item.text(0) for item in self.tree.selectedItems()]
        chain = self.chain()
        if len(chosen) < 2 and chain is not None:
            chosen = [f"{self.mark}:", *as_lines([chain])]
        QGuiApplication.clipboard().setText("\n".join(chosen))
        self.told.setText(phrase_of_count("{count} line copied.", "{count} lines copied.", len(chosen)))

    def _show(self) -> None:
        self.tree.clear()
        chain = self.chain()
        self.headline.setText(
            chain.headline if chain is not None else phrase("Nothing is worked out for this opening yet.")
        )
        if chain is None:
            self.enable()
            return
        for reason in chain.reasons:
            branch = QTreeWidgetItem([reason.text])
            branch.setToolTip(0, reason.text)
            self.tree.addTopLevelItem(branch)
            for line in reason.under:
                leaf = QTreeWidgetItem([line])
                leaf.setToolTip(0, line)
                branch.addChild(leaf)
            # A long list of rules that hold says little; it is there when asked for.
            branch.setExpanded(len(reason.under) <= 12)
        self.enable()

    def _rule(self) -> str | None:
        for item in self.tree.selectedItems()[:1]:
            for word in item.text(0).replace(",", " ").replace(":", " ").split():
                if in_rulebook(word) is not None:
                    return word
        chain = self.chain()
        return chain.about if chain is not None and in_rulebook(chain.about) is not None else None

    def _show_rule(self) -> None:
        rule = self._rule()
        if rule is not None:
            self.desk.show_rule(rule)
