"""Documents seen before they are printed: page by page, searched, printed or written as files."""

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import Any, Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtWidgets import (
    QDialog,
    QFormLayout,
    QLabel,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QSplitter,
    QVBoxLayout,
    QWidget,
)

from hwsched.desktop.frame.tool_window import Desk, ToolWindow
from hwsched.desktop.jobs.jobs import Cancelled, Progress
from hwsched.desktop.jobs.ran import of_files
from hwsched.desktop.looks.tokens import FOCUS, SPACE, wide
from hwsched.desktop.opening.scope_box import ScopeBox
from hwsched.desktop.release.page_view import PageView
from hwsched.desktop.release.printing import print_pages
from hwsched.desktop.widgets.asked_files import folder_to_write
from hwsched.desktop.widgets.buttons import let_lead
from hwsched.desktop.widgets.drop_down import DropDown
from hwsched.desktop.widgets.flow import Flow
from hwsched.desktop.widgets.found_by_key import found_by_key
from hwsched.documents.release.bound_packets import BOUND_PACKETS
from hwsched.documents.view import ProjectView
from hwsched.language import phrase, phrase_of_count
from hwsched.operations.opening.asked_openings import asked_openings
from hwsched.operations.opening.scope import Scope
from hwsched.operations.release.issued_documents import PRINTS, issue_by_name
from hwsched.operations.release.previewing import preview
from hwsched.operations.release.printed_view import printed_view, revision_asked
from hwsched.operations.release.project_view import project_view
from hwsched.operations.release.revisions import revisions
from hwsched.operations.release.walking_order import WALKS
from hwsched.render.pdf_pages import FoundWords, PdfPages

_NAME: Final = int(Qt.ItemDataRole.UserRole)
_FORMATS: Final = {name: formats for name, _, formats in PRINTS}


class DocumentsWindow(ToolWindow):
    """Which document of which openings at the left, its pages at the right."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, phrase("Documents"), parent)
        self.resize(wide(135), wide(85))
        self.names = QListWidget()
        self.names.setAccessibleName(phrase("Documents"))
        for name, title, formats in PRINTS:
            if "pdf" in formats:
                item = QListWidgetItem(phrase(title))
                item.setData(_NAME, name)
                self.names.addItem(item)
        self.scope = ScopeBox(desk)
        self.scope.setAccessibleName(phrase("Openings"))
        self.scope.setCurrentIndex(0 if desk.chosen() else self.scope.count() - 1)
        self.state = DropDown()
        self.state.setAccessibleName(phrase("State"))
        self.state.setToolTip(
            phrase("The project as it stands, or as it was frozen: with photos and bench work of then")
        )
        self.where = QLineEdit()
        self.where.setAccessibleName(phrase("Those of a query"))
        self.where.setPlaceholderText(phrase("or by a query: rating is known"))
        self.where.setClearButtonEnabled(True)
        self.paper = DropDown()
        self.paper.setAccessibleName(phrase("Paper"))
        self.paper.addItem(phrase("Letter"), "letter")
        self.paper.addItem("A4", "a4")
        self.walk = DropDown()
        self.walk.setAccessibleName(phrase("Order on each level"))
        self.walk.setToolTip(phrase("In which order the doors of a level are walked"))
        for name, words in WALKS.items():
            self.walk.addItem(phrase(words), name)
        self.view = PageView(desk.jobs, self)
        self.at = QLabel()
        # The buttons beside it stay where they are when the number of the page gets longer.
        self.at.setMinimumWidth(wide(14))
        self.search = QLineEdit()
        self.search.setAccessibleName(phrase("Search in the pages"))
        self.search.setPlaceholderText(phrase("Search in the pages"))
        self.search.setClearButtonEnabled(True)
        self.hits = QLabel()
        self._found: list[FoundWords] = []
        self._shown: tuple[str, tuple[str, ...] | None, str] | None = None
        """Document, openings and paper of the pages that are shown."""
        self.show_it = self.button(phrase("Show"), self.make_pages, phrase("The document as it would be printed"))
        self.print_it = self.button(phrase("Pr&int…"), self.ask_printer, phrase("On a printer, at true size"))
        self.write_it = self.button(
            phrase("Wri&te files…"), self.ask_folder, phrase("As PDF, and as workbook where there is one")
        )
        self._build()
        self._connect()
        self.names.setCurrentRow(0)
        self.list_states()
        self.view.show_pages(
            None, phrase("Choose a document and openings; Show makes its pages. Nothing is printed by it.")
        )
        self.enable()

    @property
    def name(self) -> str:
        """The document that is chosen."""
        item = self.names.currentItem()
        return str(item.data(_NAME)) if item is not None else ""

    def follow(self) -> None:
        """Say that the pages are of before."""
        self.scope.follow()
        self.list_states()
        if self._shown is not None:
            self.told.setText(phrase("The project has changed since these pages were made; Show makes them anew."))
        self.enable()

    def list_states(self) -> None:
        """List the revisions anew; what was chosen stays chosen while it is there."""
        before = self.state.currentData()
        self.state.blockSignals(True)
        self.state.clear()
        self.state.addItem(phrase("The project as it stands"), "")
        for each in reversed(revisions(self.desk.workspace.project)):
            self.state.addItem(phrase("Revision {letter}", letter=each.letter), each.letter)
        self.state.setCurrentIndex(max(self.state.findData(before), 0))
        self.state.blockSignals(False)

    def enable(self) -> None:
        """There must be openings to show, and pages to print."""
        idle = self.idle
        # A query asks the project as it stands.
        self.where.setEnabled(not self.state.currentData())
        asked = bool((self.where.isEnabled() and self.where.text().strip()) or self.scope.ids())
        pages = self.view.pages is not None and self.view.pages.count > 0
        # Only what is carried along a walk has an order of it.
        self.walk.setEnabled(self.name == BOUND_PACKETS.name)
        self.show_it.setEnabled(idle and bool(self.name) and asked)
        self.print_it.setEnabled(idle and pages)
        self.write_it.setEnabled(idle and bool(self.name) and asked)
        self.search.setEnabled(pages)
        for each in self.turners:
            each.setEnabled(pages)
        let_lead(self.show_it)

    def make_pages(self) -> None:
        """Make the pages of the document as it would be printed, off the screen's thread."""
        name, paper, asked = self.name, str(self.paper.currentData()), self._asked()

        def work(progress: Progress, cancelled: Cancelled) -> Any:
            view = asked()
            made = preview(view, name, paper=paper, progress=progress, cancelled=cancelled)
            ids = tuple(each.given.opening.id for each in view.openings)
            return None if cancelled() else (PdfPages(made), len(ids), (name, ids, paper))

        self.run(phrase("Making pages: {text}", text=self.names.currentItem().text()), work, self._on_made)

    def _asked(self) -> Callable[[], ProjectView]:
        """Return what reads, off the screen's thread, what the chosen document is printed from."""
        project, checker = self.desk.workspace.project, self.desk.workspace.checker
        name, walk, letter = self.name, str(self.walk.currentData()), str(self.state.currentData() or "")
        where, ids = self.where.text().strip(), self.scope.ids()
        # Of a revision all means all that it holds, those that are gone since too.
        of_then = None if self.scope.currentData() == "all" else ids

        def asked() -> ProjectView:
            if letter:
                view, then, _ = revision_asked(project, letter, ids=of_then)
                return printed_view(project, view, name, walk, then)
            wanted = asked_openings(project, Scope(where=where)).ids if where else tuple(ids)
            return printed_view(project, project_view(project, list(wanted), checker=checker), name, walk)

        return asked

    def ask_printer(self) -> None:
        """Ask for a printer and print the pages that are shown."""
        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        dialog = QPrintDialog(printer, self)
        pages = self.view.pages
        if pages is None:
            return
        dialog.setMinMax(1, pages.count)
        dialog.setOption(QPrintDialog.PrintDialogOption.PrintPageRange)
        if dialog.exec() == QDialog.DialogCode.Accepted:
            chosen = printer.printRange() == QPrinter.PrintRange.PageRange
            first, last = (printer.fromPage(), printer.toPage()) if chosen else (1, pages.count)
            self.print_on(printer, range(max(first, 1) - 1, min(last, pages.count)))

    def print_on(self, printer: QPrinter, wanted: range) -> None:
        """Print pages of those that are shown."""
        pages = self.view.pages
        if pages is None:
            return

        def then(done: tuple[int, bool]) -> None:
            count, taken = done
            words = phrase("{count} of {count_2} pages given to the printer", count=count, count_2=len(wanted))
            self.told.setText(words if taken else phrase("{words}; it did not take the rest", words=words))
            self.enable()

        self.run(
            phrase("Printing"),
            lambda progress, cancelled: print_pages(pages, wanted, printer, progress, cancelled),
            then,
        )

    def ask_folder(self) -> None:
        """Ask for a folder and write the document into it."""
        folder = folder_to_write(self, phrase("Folder for the documents"))
        if folder:
            self.write_into(Path(folder))

    def write_into(self, folder: Path) -> None:
        """Write the document into a folder in all its formats."""
        name, paper, asked = self.name, str(self.paper.currentData()), self._asked()

        def work(progress: Progress, cancelled: Cancelled) -> Any:
            return issue_by_name(
                asked(), name, folder, _FORMATS[name], paper=paper, progress=progress, cancelled=cancelled
            )  # fmt: skip

        def then(written: list[Path]) -> None:
            self.told.setText(
                phrase_of_count(
                    "{count} file written into {folder}",
                    "{count} files written into {folder}",
                    len(written),
                    folder=folder,
                )
            )

        self.run(phrase("Writing files"), work, then, partial(of_files, folder=folder))

    def search_pages(self) -> None:
        """Search the pages and go to the first that has the words, from the one that is shown on."""
        pages, words = self.view.pages, self.search.text().strip()
        self._found = pages.find(words) if pages is not None and words else []
        self.view.mark(self._found)
        count = sum(len(each.boxes) for each in self._found)
        self.hits.setText(
            ""
            if not words
            else phrase_of_count("{hits} on {count} page", "{hits} on {count} pages", len(self._found), hits=count)
            if count
            else phrase("not found")
        )
        if self._found and self.view.page not in {each.page for each in self._found}:
            self.search_on()

    def search_on(self) -> None:
        """Go to the next page that has the words; after the last comes the first."""
        pages = [each.page for each in self._found]
        if pages:
            self.view.turn(next((page for page in pages if page > self.view.page), pages[0]))

    def let_go(self) -> None:
        """Let go of the pages with the window."""
        self.view.show_pages(None)
        super().let_go()

    def _on_made(self, made: tuple[PdfPages, int, tuple[str, tuple[str, ...], str]] | None) -> None:
        if made is None:
            self.told.setText(phrase("Stopped; the pages that were shown stay."))
            return
        pages, openings, self._shown = made
        self.view.show_pages(pages, phrase("There is nothing to print for these openings."))
        self.told.setText(
            phrase(
                "{pages} of {openings}",
                pages=phrase_of_count("{count} page", "{count} pages", pages.count),
                openings=phrase_of_count("{count} opening", "{count} openings", openings),
            )
        )
        self.search_pages()
        self.enable()

    def _on_turned(self, page: int) -> None:
        count = self.view.pages.count if self.view.pages is not None else 0
        self.at.setText(phrase("Page {page} of {count}", page=page + 1, count=count) if count else phrase("No page"))

    def _build(self) -> None:
        left, right = QWidget(), QWidget()
        form = QFormLayout()
        form.addRow(phrase("State"), self.state)
        form.addRow(phrase("Openings"), self.scope)
        form.addRow("", self.where)
        form.addRow(phrase("Paper"), self.paper)
        form.addRow(phrase("Order on each level"), self.walk)
        column = QVBoxLayout(left)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.names, 1)
        column.addLayout(form)
        self.turners: list[QPushButton] = []
        """Buttons that need a page."""
        bar = Flow()
        bar.addWidget(self.at)
        for text, tip, slot in (
            ("‹", phrase("The page before (Page Up)"), lambda: self.view.turn(self.view.page - 1)),
            ("›", phrase("The next page (Page Down)"), lambda: self.view.turn(self.view.page + 1)),
            ("−", phrase("Smaller (Ctrl and wheel)"), lambda: self.view.zoom(-1)),
            ("+", phrase("Larger (Ctrl and wheel)"), lambda: self.view.zoom(1)),
            (phrase("Page"), phrase("The whole page"), lambda: self.view.fit(whole=True)),
            (phrase("Width"), phrase("As wide as the place"), lambda: self.view.fit(whole=False)),
        ):
            button = self.button(text, slot, tip)
            button.setAccessibleName(tip.partition(" (")[0])
            # Left to itself a button is as wide as a word of ten letters.
            around = SPACE.middle + FOCUS
            button.setFixedWidth(button.fontMetrics().horizontalAdvance(text) + around + around)
            bar.addWidget(button)
            self.turners.append(button)
        bar.addWidget(self.search)
        bar.stretched = self.search
        bar.addWidget(self.hits)
        column = QVBoxLayout(right)
        column.setContentsMargins(0, 0, 0, 0)
        column.addLayout(bar)
        column.addWidget(self.view, 1)
        split = QSplitter(Qt.Orientation.Horizontal)
        split.addWidget(left)
        split.addWidget(right)
        split.setSizes([wide(37), wide(97)])
        split.setChildrenCollapsible(False)
        self.body.addWidget(split, 1)
        for each in (self.show_it, self.print_it, self.write_it):
            self.foot.addWidget(each)

    def _connect(self) -> None:
        found_by_key(self, self.search)
        QShortcut(QKeySequence(QKeySequence.StandardKey.FindNext), self, self.search_on)
        self.search.textChanged.connect(lambda _text: self.search_pages())
        self.search.returnPressed.connect(self.search_on)
        self.where.textChanged.connect(lambda _text: self.enable())
        self.state.currentIndexChanged.connect(lambda _at: self.enable())
        self.scope.currentIndexChanged.connect(lambda _at: self.enable())
        self.names.currentRowChanged.connect(lambda _row: self.enable())
        self.names.itemActivated.connect(lambda _item: self.make_pages() if self.show_it.isEnabled() else None)
        self.view.turned.connect(self._on_turned)
