"""The list of files at an opening or a part with the picture of the chosen one, and what can be done with them."""

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Final

from PySide6.QtCore import QMimeData, Qt, Signal
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QShowEvent
from PySide6.QtWidgets import QBoxLayout, QSplitter

from hwsched.desktop.looks.pictures import Picture, has_picture, picture_of
from hwsched.desktop.widgets.lines import Lines, LinesPage
from hwsched.language import phrase, to_phrase
from hwsched.operations.release.attachments import Attached

_SHORT: Final = 5
"""So long a media type's second half is when it is one that people know."""


class FilesPage(LinesPage):
    """Photographs, data sheets and other files at a thing and at what stands on it; files are dropped on it, too.

    Here belongs how files are listed and pictured; what is attached to what belongs to the page of a thing.
    """

    wants_file = Signal()
    wants_files = Signal(list)
    """Files that were dropped here, by their paths."""
    wants_look = Signal(object)
    """The attachment that a person wants to see."""
    wants_off = Signal(object)
    """The attachment that shall be taken off."""

    def __init__(self, what: str = to_phrase("opening")) -> None:
        super().__init__(
            Lines(
                (phrase("File"), phrase("At"), phrase("Kind"), phrase("Size"), phrase("Title")),
                4,
                {0: 170},
                numbers=(3,),
            )
        )
        what = phrase(what)
        self.read: Callable[[Attached], bytes] | None = None
        """Returns the content of a file; set by whoever shows files here."""
        self.picture = Picture()
        self.split = QSplitter(Qt.Orientation.Vertical)
        self.split.addWidget(self.table)
        self.split.addWidget(self.picture)
        self.split.setChildrenCollapsible(False)
        self.split.setStretchFactor(1, 1)
        layout = self.layout()
        if isinstance(layout, QBoxLayout):
            layout.insertWidget(0, self.split, 1)
        self.setAcceptDrops(True)
        self.table.setAccessibleName(phrase("Files"))
        self.invited = phrase("Drop photographs and data sheets of this {what} here, or press Add file.", what=what)
        """Said where there is no file yet."""
        self.table.empty.say(self.invited)
        self.table.setToolTip(phrase("Double-click a file to open it"))
        self.table.cellDoubleClicked.connect(lambda _row, _column: self._look())
        self.act_add = self.offer(
            phrase("Add file…"), phrase("Attach a file to this {what}; files can be dropped here, too", what=what)
        )
        self.act_add.triggered.connect(self.wants_file)
        self.act_open = self.offer(phrase("Open"), phrase("Write the file out and open it"))
        self.act_open.triggered.connect(self._look)
        self.act_remove = self.offer(phrase("Take off"), phrase("Take the file off; undo brings it back"))
        self.act_remove.triggered.connect(lambda: self.wants_off.emit(self.chosen()))
        self._attached: tuple[Attached, ...] = ()
        self._pictured: str | None = None
        """The attachment whose picture is shown."""
        self._show_picture()

    def show_files(self, attached: Sequence[Attached]) -> None:
        """Show these files; the chosen one stays so, else the first picture is shown."""
        chosen = self.chosen()
        self._attached = tuple(attached)
        self.table.show_rows(
            [(a.name, a.about, _kind(a.media_type), _size(a.size), a.title or a.note) for a in self._attached]
        )
        ids = [each.id for each in self._attached]
        if chosen is not None and chosen.id in ids:
            self.table.selectRow(ids.index(chosen.id))
        elif self._attached:
            first = (n for n, each in enumerate(self._attached) if has_picture(each.media_type))
            self.table.selectRow(next(first, 0))
        self.enable()

    def title(self) -> str:
        """Return the words of the page's tab."""
        return phrase("Documents {count}", count=len(self._attached))

    def chosen(self) -> Attached | None:
        """Return the selected file."""
        row = self.table.chosen_row()
        return self._attached[row] if 0 <= row < len(self._attached) else None

    def enable(self) -> None:
        """Let what is possible with the selected file be done."""
        chosen = self.chosen() is not None
        self.act_open.setEnabled(chosen)
        self.act_remove.setEnabled(chosen)
        self._show_picture()

    def showEvent(self, event: QShowEvent) -> None:  # noqa: N802
        """Show the chosen picture, which was not read while nobody saw it."""
        super().showEvent(event)
        self._show_picture()

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:  # noqa: N802
        """Take files that are dragged here from elsewhere."""
        if self.isEnabled() and _files_of(event.mimeData()):
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:  # noqa: N802
        """Tell which files were dropped."""
        files = _files_of(event.mimeData())
        if files:
            event.acceptProposedAction()
            self.wants_files.emit(files)

    def _show_picture(self) -> None:
        chosen = self.chosen()
        self.picture.setVisible(bool(self._attached))
        if chosen is None:
            self._pictured = None
            self.picture.show_picture(None, "")
            return
        # A page that nobody sees reads nothing; it is asked again when it is shown.
        if chosen.id == self._pictured or not self.isVisible():
            return
        self._pictured = chosen.id
        shown = has_picture(chosen.media_type) and self.read is not None
        image = picture_of(self.read(chosen), chosen.media_type) if shown and self.read is not None else None
        said = chosen.title or chosen.name
        self.picture.show_picture(
            image, said if image is not None else phrase("{said}: no picture; Open shows it", said=said)
        )

    def _look(self) -> None:
        if self.chosen() is not None:
            self.wants_look.emit(self.chosen())


def _files_of(data: QMimeData) -> list[Path]:
    paths = [Path(url.toLocalFile()) for url in data.urls() if url.isLocalFile()]
    return [each for each in paths if each.is_file()]


def _kind(media_type: str) -> str:
    """Say a media type in words.

    Examples
    --------
    >>> [_kind(each) for each in ("image/jpeg", "application/pdf", "text/plain", "application/octet-stream")]
    ['JPEG picture', 'PDF', 'text', 'file']
    """
    main, _, sub = media_type.partition("/")
    short = sub.upper() if sub.isalnum() and len(sub) <= _SHORT else ""
    if main == "image":
        return phrase("{kind} picture", kind=short) if short else phrase("picture")
    known = {"text": to_phrase("text"), "video": to_phrase("video"), "audio": to_phrase("sound")}
    return phrase(known[main]) if main in known else short or phrase("file")


def _size(count: int) -> str:
    """Say how large a file is.

    Examples
    --------
    >>> [_size(each) for each in (14, 14_200, 2_400_000)]
    ['14 B', '14.2 kB', '2.4 MB']
    """
    for unit, of in (("MB", 1e6), ("kB", 1e3)):
        if count >= of:
            return f"{count / of:.1f} {unit}"
    return f"{count} B"
