"""Parts: the catalogue as a list by kind, the chosen part's form, where it is used, its files, what an edit changes."""

from typing import Any

from PySide6.QtCore import QModelIndex, QSignalBlocker, Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QLineEdit, QSplitter, QVBoxLayout, QWidget

from hwsched.catalogue import KINDS, kind_of
from hwsched.desktop.frame.keyboard_kept import begins_here
from hwsched.desktop.frame.tool_window import Desk, ToolWindow
from hwsched.desktop.jobs.jobs import Cancelled, Progress
from hwsched.desktop.looks.text_size import put_letters
from hwsched.desktop.looks.tokens import wide
from hwsched.desktop.opening.differences import Differences, summary
from hwsched.desktop.parts.draft_words import draft_said
from hwsched.desktop.parts.part_facts import PartFacts
from hwsched.desktop.parts.part_files import PartFiles
from hwsched.desktop.parts.part_table import PartGrid
from hwsched.desktop.parts.use_page import UsePage
from hwsched.desktop.widgets.drop_down import DropDown
from hwsched.desktop.widgets.found_by_key import found_by_key
from hwsched.desktop.widgets.tabs import TabbedPages
from hwsched.language import phrase
from hwsched.model.tables import ATTACHMENT
from hwsched.operations.changes import Changes
from hwsched.operations.opening.what_if import Answer, Question, accept_answer, what_if
from hwsched.operations.parts.part_edits import PartForm, part_form
from hwsched.operations.parts.part_form import PartEdit
from hwsched.operations.parts.where_used import PartUse, where_used
from hwsched.operations.shown import ShownOtherwiseError
from hwsched.quantities import LENGTH_STYLES, LengthStyle
from hwsched.values import Part


class PartsWindow(ToolWindow):
    """The list at the left, the chosen part at the right; an edit is a draft until what it changes was seen."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, phrase("Parts"), parent)
        self.resize(wide(147), wide(82))
        self.form: PartForm = part_form(desk.workspace.project)
        self.drafts: dict[str, PartEdit] = {}
        """What was typed and not taken, by part; a new part's stands under the empty number."""
        self.answer: Answer | None = None
        self._at = ""
        """Number of the part in the form; empty: none, or a new one."""
        self._wants_use = False
        self.kinds = DropDown()
        self.kinds.setAccessibleName(phrase("Kind of parts"))
        self.search = QLineEdit()
        self.search.setAccessibleName(phrase("Search parts"))
        self.search.setPlaceholderText(phrase("Search number, words, supplier, value"))
        self.search.setClearButtonEnabled(True)
        self.grid = PartGrid()
        self.heading = QLabel(textFormat=Qt.TextFormat.PlainText, wordWrap=True)
        put_letters(self.heading, bold=True)
        self.facts, self.use = PartFacts(), UsePage()
        self.differences = Differences(
            phrase("Edit a part, and press What changes?: openings that would differ stand here.")
        )
        self.differences.setAccessibleName(phrase("What an edit of the part would change"))
        self.files = PartFiles(self)
        self.said = QLabel(textFormat=Qt.TextFormat.PlainText, wordWrap=True)
        self.pages = TabbedPages()
        self.changes = QWidget()
        self.new = self.button(phrase("&New part"), self.begin_new, phrase("A new part of the kind that is shown"))
        self.copy = self.button(
            phrase("Dupl&icate"), self.begin_copy, phrase("A new part with what is known of this one")
        )
        self.follow_on = self.button(
            phrase("Superse&de"), self.begin_successor, phrase("Say which part follows this one")
        )
        self.withdraw = self.button(
            phrase("Withdraw"), self.look_at_withdrawal, phrase("See what it changes; then take it out")
        )
        self.drop = self.button(phrase("Forget edits"), self.forget, phrase("Back to what the project holds"))
        self.look = self.button(
            phrase("Wha&t changes?"), self.look_at_changes, phrase("Work out which fits and costs would differ")
        )
        self.take = self.button(
            phrase("Ta&ke"), self.accept_it, phrase("Make it so, and fit the openings, as one step")
        )
        self._build()
        self._connect()
        self.follow()

    def follow(self) -> None:
        """Show the catalogue as it now stands; what was typed stays."""
        self.form = part_form(self.desk.workspace.project)
        self._show_kinds()
        self._show_parts()
        if self.answer is not None:
            self.answer = None
            self.said.setText(phrase("The project has changed since; look again at what the edit changes."))
        self._show_part()
        self.enable()

    def follow_change(self, changes: object) -> None:
        """Follow an edit of parts or files; of openings `follow` is told."""
        if isinstance(changes, Changes) and (changes.parts or ATTACHMENT.name in changes.entities):
            self.follow()

    def enable(self) -> None:
        """Let what is possible be done: an edit is taken once what it changes was seen."""
        idle, at = self.idle, self._at in self.form.catalogue.parts
        asked = self.facts.asked() if self.facts.lines else None
        edited = asked is not None and bool(asked.typed or asked.new)
        self.copy.setEnabled(idle and at)
        self.follow_on.setEnabled(idle and at)
        self.withdraw.setEnabled(idle and at)
        self.drop.setEnabled(edited)
        sound = asked is not None and edited and not self.form.read(asked).problems
        self.look.setEnabled(idle and sound)
        self.take.setEnabled(idle and self.answer is not None)
        if self._wants_use and idle:
            self._look_for_use()

    @property
    def kind(self) -> str:
        """Kind that is shown; empty for all."""
        return str(self.kinds.currentData() or "")

    def begin_new(self) -> None:
        """Begin a new part of the kind that is shown, else of the chosen part's."""
        held = self.form.catalogue.get(self._at)
        kind = self.kind or (held.kind if held is not None else KINDS[0].name)
        self._begin(PartEdit("", kind=kind))

    def begin_copy(self) -> None:
        """Begin a new part with what is known of the chosen one."""
        self._begin(PartEdit("", like=self._at))

    def begin_successor(self) -> None:
        """Go to the field that says which part follows."""
        self.pages.setCurrentWidget(self.facts)
        line = self.facts.lines["superseded_by"]
        self.facts.ensureWidgetVisible(line)
        line.field.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def forget(self) -> None:
        """Forget what was typed into the form that is shown."""
        self.drafts.pop(self._at, None)
        if not self._at:
            self._at = self.grid.number
        self.answer = None
        self._show_part()
        self.enable()

    def look_at_withdrawal(self) -> None:
        """Work out what it changes that the chosen part leaves the catalogue."""
        self._look(PartEdit(self._at, withdrawn=True))

    def look_at_changes(self) -> None:
        """Work out what the edit changes."""
        self._look(self.facts.asked())

    def accept_it(self) -> None:
        """Take the edit as it was shown, with the fits that follow, as one step."""
        answer, workspace = self.answer, self.desk.workspace
        if answer is None or answer.question.part is None:
            return
        asked = answer.question.part

        def work(progress: Progress, cancelled: Cancelled) -> Any:
            try:
                return accept_answer(
                    workspace.project, answer, who=workspace.who, progress=progress, cancelled=cancelled
                )  # fmt: skip
            except ShownOtherwiseError as otherwise:
                return otherwise

        def then(done: Any) -> None:
            self.answer = None
            if isinstance(done, ShownOtherwiseError):
                self.said.setText(phrase("Not done: {done}.", done=done))
            elif done.number is None:
                self.said.setText(phrase("Stopped. Nothing is changed."))
            else:
                self.drafts.pop("" if asked.new else asked.number, None)
                self._at = "" if asked.withdrawn else asked.number
                self.differences.forget()
                self.follow()
                self.grid.choose(self._at)
                self.said.setText(phrase("Taken. Undo takes all of it back."))
            self.enable()

        self.run(phrase("Taking the edit"), work, then)

    def _begin(self, asked: PartEdit) -> None:
        held = self.drafts.get("")
        begun = held is not None and bool(held.number or held.typed)
        if not begun:
            self.drafts[""] = asked
        self._at = ""
        self.answer = None
        self.pages.setCurrentWidget(self.facts)
        self._show_part()
        self.enable()
        self.facts.lines["number"].field.setFocus(Qt.FocusReason.ShortcutFocusReason)
        if begun:
            self.said.setText(phrase("This new part was begun before. Take it, or forget its edits first."))

    def _look(self, asked: PartEdit) -> None:
        project = self.desk.workspace.project

        def work(progress: Progress, cancelled: Cancelled) -> Any:
            found = what_if(project, Question(part=asked), progress=progress, cancelled=cancelled)
            return None if cancelled() else found

        def then(answer: Answer | None) -> None:
            if answer is None:
                self.said.setText(phrase("Stopped before all openings were compared. Nothing is changed."))
                return
            self.answer = answer
            self.differences.show_differences(answer.differences)
            what = (
                phrase("Withdrawing {number}", number=asked.number)
                if asked.withdrawn
                else phrase("This edit of {number}", number=asked.number)
            )
            self.said.setText(
                phrase(
                    "{what}: {summary}. Nothing is changed yet.",
                    what=what,
                    summary=summary(answer.differences, len(answer.asked)),
                )
            )
            self.pages.setCurrentWidget(self.changes)
            self.enable()

        self.answer = None
        self.run(phrase("Working out what changes"), work, then)

    def _show_kinds(self) -> None:
        counts: dict[str, int] = {}
        for part in self.form.catalogue.parts.values():
            counts[part.kind] = counts.get(part.kind, 0) + 1
        held = self.kind
        with QSignalBlocker(self.kinds):
            self.kinds.clear()
            self.kinds.addItem(phrase("All kinds ({count})", count=len(self.form.catalogue.parts)), "")
            for kind in KINDS:
                self.kinds.addItem(f"{phrase(kind.label)} ({counts.get(kind.name, 0)})", kind.name)
            self.kinds.setCurrentIndex(max(self.kinds.findData(held), 0))

    def _show_parts(self) -> None:
        words = self.search.text().casefold().split()
        kind = self.kind
        parts = [part for part in self.form.catalogue.parts.values() if kind in ("", part.kind)]
        kept = [at for at, part in enumerate(parts) if all(word in self._spoken(part) for word in words)]
        self.grid.show_parts(parts, kind, self.form.own, self.form.extra, self._style(), kept)
        count = phrase("{count} of {count_2} parts", count=len(kept), count_2=len(self.form.catalogue.parts))
        gone = self.grid.number and not self.grid.in_view
        self.told.setText(
            phrase("{count}; {number} is chosen and not in view", count=count, number=self.grid.number)
            if gone
            else count
        )

    def _spoken(self, part: Part) -> str:
        kind = kind_of(part.kind)
        words = [part.number, part.description, part.supplier, part.finish, part.superseded_by, part.kind]
        words += [phrase(kind.label)] if kind is not None else []
        words += [str(value) for value in part.attributes.values() if isinstance(value, str)]
        return " ".join(words).casefold()

    def _style(self) -> LengthStyle:
        held = self.desk.workspace.project.length_style
        return next((each for each in LENGTH_STYLES if each == held), "fraction")

    def _on_picked(self, number: str) -> None:
        self._at = number
        self.answer = None
        # What was said was said of the part before.
        self.said.setText("")
        self.differences.forget()
        self._show_part()
        self._show_page()
        self.enable()

    def _on_clicked(self, index: QModelIndex) -> None:
        """Show the part that is chosen already again, where a new one was begun meanwhile."""
        number = self.grid.model.id_at(index.row())
        if number == self.grid.number and number != self._at:
            self._on_picked(number)

    def _go_to_form(self, number: str) -> None:
        """Go from the chosen part into its form."""
        if number != self._at:
            self._on_picked(number)
        self.pages.setCurrentWidget(self.facts)
        first = next(iter(self.facts.lines.values()), None)
        if first is not None:
            first.field.setFocus(Qt.FocusReason.OtherFocusReason)

    def _on_typed(self) -> None:
        asked = self.facts.asked()
        if asked.typed or asked.new:
            self.drafts[self._at] = asked
        else:
            self.drafts.pop(self._at, None)
        self.answer = None
        self._say_draft()
        self.enable()

    def _show_part(self) -> None:
        asked = self.drafts.get(self._at) or PartEdit(self._at)
        if not asked.new and asked.number not in self.form.catalogue.parts:
            self._head("")
            self.facts.clear()
            self.files.show_part("", "")
            return
        self.facts.show_part(self.form, asked, self._style())
        self.files.show_part(self._at, self.form.ids.get(self._at, ""))
        self._say_draft()

    def _say_draft(self) -> None:
        said = draft_said(self.drafts.get(self._at), self.form.catalogue.get(self._at))
        if said:
            self._head(said)

    def _show_page(self) -> None:
        if self.pages.currentWidget() is self.use and self._at in self.form.catalogue.parts:
            self.use.wait()
            self._wants_use = True
            self.enable()

    def _look_for_use(self) -> None:
        self._wants_use = False
        number, project = self._at, self.desk.workspace.project
        part = self.form.catalogue.get(number)

        def then(found: PartUse) -> None:
            if found.number == self._at:
                self.use.show_use(found, part, self._style())

        self.run(
            phrase("Looking where {number} is used", number=number),
            lambda _progress, _cancelled: where_used(project, number),
            then,
        )

    def _head(self, words: str) -> None:
        """Say which part it is; of none nothing stands above the tabs."""
        self.heading.setText(words)
        self.heading.setVisible(bool(words))

    def _build(self) -> None:
        top = QHBoxLayout()
        top.addWidget(self.kinds)
        top.addWidget(self.search, 1)
        left, right = QWidget(), QWidget()
        column = QVBoxLayout(left)
        column.setContentsMargins(0, 0, 0, 0)
        column.addLayout(top)
        column.addWidget(self.grid, 1)
        under = QVBoxLayout(self.changes)
        under.setContentsMargins(0, 0, 0, 0)
        under.addWidget(self.said)
        under.addWidget(self.differences, 1)
        for title, page in (
            (phrase("Fa&cts"), self.facts),
            (phrase("Where &used"), self.use),
            (phrase("Fi&les"), self.files),
        ):
            self.pages.addTab(page, title)
        self.pages.addTab(self.changes, phrase("What changes"))
        column = QVBoxLayout(right)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.heading)
        column.addWidget(self.pages, 1)
        split = QSplitter(Qt.Orientation.Horizontal)
        split.addWidget(left)
        split.addWidget(right)
        split.setSizes([wide(80), wide(67)])
        split.setChildrenCollapsible(False)
        self.body.addWidget(split, 1)
        for each in (self.new, self.copy, self.follow_on, self.withdraw, self.drop, self.look, self.take):
            self.foot.addWidget(each)

    def _connect(self) -> None:
        found_by_key(self, self.search)
        begins_here(self.grid.table)
        self.kinds.currentIndexChanged.connect(lambda _at: self._show_parts())
        self.search.textChanged.connect(lambda _text: self._show_parts())
        self.grid.chose.connect(self._on_picked)
        self.grid.opened.connect(self._go_to_form)
        for view in (self.grid.table, self.grid.table.frozen):
            view.clicked.connect(self._on_clicked)
        self.grid.said.connect(self.told.setText)
        self.facts.changed.connect(self._on_typed)
        self.pages.currentChanged.connect(lambda _at: self._show_page())
        self.use.wants_openings.connect(self.desk.show_openings)
        self.differences.itemActivated.connect(self._on_activated)
        self.desk.workspace.changed.connect(self.follow_change)

    def _on_activated(self, item: Any) -> None:
        opening = self.differences.opening_of(item)
        if opening:
            self.desk.show_openings([opening])
