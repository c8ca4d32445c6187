"""The list of files at an opening, and what can be done with them."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import Signal

from hwsched.desktop.lines import Lines, LinesPage
from hwsched.operations.release.attachments import Attached

_SHORT: Final = 5
"""So long a media type's second half is when it is one that people know."""


class FilesPage(LinesPage):
    """Photographs, data sheets and other files at the opening and at what stands on it."""

    wants_file = Signal()
    wants_look = Signal(object)
    """The attachment that a person wants to see."""
    wants_off = Signal(object)
    """The attachment that shall be taken off."""

    def __init__(self) -> None:
        super().__init__(Lines(("File", "At", "Kind", "Size", "Title"), 4, {0: 230}))
        self.table.setToolTip("Double-click a file to open it")
        self.table.cellDoubleClicked.connect(lambda _row, _column: self._look())
        self.act_add = self.offer("Add file…", "Attach a file to this opening")
        self.act_add.triggered.connect(self.wants_file)
        self.act_open = self.offer("Open", "Write the file out and open it")
        self.act_open.triggered.connect(self._look)
        self.act_remove = self.offer("Take off", "Take the file off; undo brings it back")
        self.act_remove.triggered.connect(lambda: self.wants_off.emit(self.chosen()))
        self._attached: tuple[Attached, ...] = ()

    def show_files(self, attached: Sequence[Attached]) -> None:
        """Show these files."""
        self._attached = tuple(attached)
        self.table.show_rows(
            [(a.name, a.about, _kind(a.media_type), _size(a.size), a.title or a.note) for a in self._attached]
        )
        self.enable()

    def title(self) -> str:
        """Return the words of the page's tab."""
        return f"Files {len(self._attached)}"

    def chosen(self) -> Attached | None:
        """Return the selected file."""
        row = self.table.chosen_row()
        return self._attached[row] if 0 <= row < len(self._attached) else None

    def enable(self) -> None:
        """Let what is possible with the selected file be done."""
        chosen = self.chosen() is not None
        self.act_open.setEnabled(chosen)
        self.act_remove.setEnabled(chosen)

    def _look(self) -> None:
        if self.chosen() is not None:
            self.wants_look.emit(self.chosen())


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
        return f"{short} picture".strip()
    return {"text": "text", "video": "video", "audio": "sound"}.get(main, short or "file")


def _size(count: int) -> str:
    return f"{count / 1e6:.1f} MB" if count >= 1e6 else f"{count / 1e3:.1f} kB"
