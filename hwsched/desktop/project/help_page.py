"""Help in the window, without a network: topics at the left, the page at the right.

Which pages there are stands in `help_topics`.
"""

from typing import Any, Final

from PySide6.QtCore import QEvent, Qt, QUrl, Signal
from PySide6.QtGui import QImage, QResizeEvent, QTextBlockFormat, QTextCursor, QTextDocument
from PySide6.QtWidgets import (
    QLabel,
    QLineEdit,
    QSplitter,
    QTextBrowser,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.looks.tokens import SPACE, font, wide
from hwsched.desktop.project.help_topics import GROUPS, linked, rule_of, text_of, topics
from hwsched.desktop.widgets.found_by_key import found_by_key
from hwsched.language import phrase
from hwsched.paths import RESOURCES

_LINE: Final = 130
"""Height of a line [%]."""
_INDENT: Final = 5
"""Figures by which what is listed stands in, with its bullet before it."""
_PICTURE: Final = "\N{OBJECT REPLACEMENT CHARACTER}"
"""Stands in the text where a picture is."""
_MEASURE: Final = 74
"""Figures that a line is wide at most, about 90 letters of a text: of a longer one the eye loses the next."""
_NAME: Final = Qt.ItemDataRole.UserRole


class _Reading(QTextBrowser):
    """The page that is read; no picture in it is wider than what is seen."""

    _width = -1
    """So wide it was when its pictures were loaded."""

    def loadResource(self, kind: int, name: QUrl | str) -> Any:  # noqa: N802
        """Return what a page names, pictures no wider than the page."""
        found = super().loadResource(kind, name)
        if kind != QTextDocument.ResourceType.ImageResource.value:
            return found
        picture = QImage()
        picture.loadFromData(found)
        bar = self.verticalScrollBar()
        # The bar that a long page has may not be there yet.
        room = self.viewport().width() - 2 * SPACE.wide - (0 if bar.isVisible() else bar.sizeHint().width())
        if picture.isNull() or room < SPACE.wide or picture.width() <= room:
            return found
        ratio = self.devicePixelRatio()
        small = picture.scaledToWidth(round(room * ratio), Qt.TransformationMode.SmoothTransformation)
        small.setDevicePixelRatio(ratio)
        return small

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802
        """Load pictures anew for the room that there is."""
        super().resizeEvent(event)
        self.measure()
        # Pictures leave the bar its room: one that comes and goes as the page is set changes nothing for them.
        if self._width != self.width():
            self._width = self.width()
            self.resized.emit()

    resized = Signal()

    def measure(self) -> None:
        """Let no line be longer than is read well; what is beyond stays empty at the right."""
        most = wide(_MEASURE) + 2 * SPACE.wide
        if self.viewport().width() > most:
            self.setLineWrapColumnOrWidth(most)
            self.setLineWrapMode(QTextBrowser.LineWrapMode.FixedPixelWidth)
        else:
            self.setLineWrapMode(QTextBrowser.LineWrapMode.WidgetWidth)


class HelpPage(QSplitter):
    """Pages of places, handbook and rules, found by words.

    Parameters
    ----------
    frame : Frame
        Back and forward lead over the pages that were read.
    """

    def __init__(self, frame: Frame) -> None:
        super().__init__(Qt.Orientation.Horizontal)
        self._frame = frame
        self.name = ""
        self.words = QLineEdit()
        self.words.setPlaceholderText(phrase("Words of a page"))
        self.words.setAccessibleName(phrase("Words of a page"))
        self.words.setClearButtonEnabled(True)
        self.words.textChanged.connect(self._narrow)
        found_by_key(self, self.words)
        self.topics = QTreeWidget()
        self.topics.setHeaderHidden(True)
        self.topics.setAccessibleName(phrase("Help pages"))
        self.topics.currentItemChanged.connect(self._on_topic)
        self.none = QLabel(phrase("No page holds these words."))
        self.none.setWordWrap(True)
        self.none.hide()
        self.page = _Reading()
        # Not at once: a bar may come while the page is being set, which would be set once more into itself.
        self.page.resized.connect(self._show_again, Qt.ConnectionType.QueuedConnection)
        self.page.setAccessibleName(phrase("The page"))
        self.page.setOpenLinks(False)
        self.page.setSearchPaths([str(RESOURCES / "handbook" / "places")])
        self.page.anchorClicked.connect(self._on_link)
        left = QWidget()
        column = QVBoxLayout(left)
        column.setContentsMargins(SPACE.small, SPACE.small, SPACE.small, SPACE.small)
        column.addWidget(self.words)
        column.addWidget(self.none)
        column.addWidget(self.topics, 1)
        right = QWidget()
        beside = QVBoxLayout(right)
        beside.setContentsMargins(0, SPACE.small, SPACE.small, SPACE.small)
        beside.addWidget(self.page)
        self.addWidget(left)
        self.addWidget(right)
        self.setSizes([wide(34), wide(90)])
        self.setStretchFactor(1, 1)
        self._lines: dict[str, QTreeWidgetItem] = {}
        self._groups: dict[str, QTreeWidgetItem] = {}
        self._group_of = {topic.name: topic.group for topic in topics()}
        for group in GROUPS:
            branch = QTreeWidgetItem(self.topics, [phrase(group)])
            branch.setFlags(Qt.ItemFlag.ItemIsEnabled)
            self._groups[group] = branch
            for topic in topics():
                if topic.group == group:
                    line = QTreeWidgetItem(branch, [topic.title])
                    line.setData(0, _NAME, topic.name)
                    line.setToolTip(0, topic.title)
                    self._lines[topic.name] = line
        self._show("places/today")

    def show_topic(self, thing: Any) -> None:
        """Show a page by its name."""
        if isinstance(thing, str):
            self.read(thing)

    def read(self, name: str) -> None:
        """Show a page; one that there is not changes nothing."""
        if name in self._lines and name != self.name:
            self._show(name)
            self._frame.trail.note(name)

    def _show(self, name: str) -> None:
        self.name = name
        document, rule = self.page.document(), rule_of(name)
        self.page.measure()
        document.setDefaultFont(font(tabular=True))
        document.setIndentWidth(wide(_INDENT))
        if rule is None:
            self.page.setMarkdown(text_of(name))
        else:
            from hwsched.desktop.findings.rule_page import rule_page

            self.page.setHtml(rule_page(rule, {}, off=False, level=1))
        _air(document)
        self._groups[self._group_of[name]].setExpanded(True)
        self.topics.setCurrentItem(self._lines[name])

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802
        """Set the page anew in letters of another size."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange and self.name:
            self._set_again()

    def _show_again(self) -> None:
        """Set the page anew, where it has pictures, for the room that it has now."""
        if "![" in text_of(self.name):
            self._set_again()

    def _set_again(self) -> None:
        at = self.page.verticalScrollBar().value()
        self._show(self.name)
        self.page.verticalScrollBar().setValue(at)

    def _on_topic(self, line: QTreeWidgetItem | None, _before: object) -> None:
        name = line.data(0, _NAME) if line is not None else None
        if name:
            self.read(name)

    def _on_link(self, url: QUrl) -> None:
        name = linked(self.name, url.path() if url.isRelative() else "")
        if name:
            self.read(name)
        elif url.hasFragment() and not url.path():
            self.page.scrollToAnchor(url.fragment())
        else:
            self._frame.say(
                phrase(
                    "{tostring} stands elsewhere; help reads only what came with the program.", tostring=url.toString()
                )
            )

    def _narrow(self, text: str) -> None:
        words = text.casefold().split()
        kept: set[str] = set()
        for name, line in self._lines.items():
            told = f"{line.text(0)} {text_of(name)}".casefold() if words else ""
            fits = all(word in told for word in words)
            line.setHidden(not fits)
            if fits:
                kept.add(self._group_of[name])
        for group, branch in self._groups.items():
            branch.setHidden(group not in kept)
            if words:
                branch.setExpanded(True)
        self.none.setVisible(not kept)


def _air(text: QTextDocument) -> None:
    """Set lines apart as pages to be read want it."""
    text.setDocumentMargin(SPACE.wide)
    cursor = QTextCursor(text)
    block = text.begin()
    while block.isValid():
        cursor.setPosition(block.position())
        look = QTextBlockFormat()
        # A picture is a letter to the toolkit: a line set apart by its share would leave as much of its height empty.
        share = 100 if _PICTURE in block.text() else _LINE
        look.setLineHeight(share, QTextBlockFormat.LineHeightTypes.ProportionalHeight.value)
        close = block.textList() is not None or QTextCursor(block).currentTable() is not None
        look.setBottomMargin(SPACE.hair if close else SPACE.small)
        cursor.mergeBlockFormat(look)
        block = block.next()
