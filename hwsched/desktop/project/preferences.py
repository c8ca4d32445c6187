"""What a person has chosen for themselves on this machine, whatever project is open. No widgets.

Here belongs what is kept between two starts of the desktop; what a project decides belongs to the project.
"""

import json
import os
from collections.abc import Sequence
from pathlib import Path
from typing import Any, Final, Literal, NamedTuple, get_args

from PySide6.QtCore import QByteArray, QObject, QSettings, Signal

from hwsched.telling.masking import masked
from hwsched.writing import runs

Theme = Literal["system", "light", "dark"]
THEMES: Final[tuple[Theme, ...]] = get_args(Theme)
LEAST_TEXT: Final = 80
"""Smallest text size [%]."""
MOST_TEXT: Final = 200
"""Largest text size [%]."""
RECENT: Final = 12
"""So many projects are remembered."""


class Typed(NamedTuple):
    """What was being typed in a field and not taken yet."""

    place: str
    """Of the project."""
    field: str
    """What the field is called."""
    text: str


class Preferences(QObject):
    """The choices of the person at this machine, kept by Qt where the system keeps such things.

    Parameters
    ----------
    kept : QSettings, optional
        Where they are kept; the person's own file unless another one is named.
    """

    changed = Signal(str)
    """Name of what was chosen otherwise: "theme", "text_size", "language", "name", "recent"."""

    def __init__(self, parent: QObject | None = None, *, kept: QSettings | None = None) -> None:
        super().__init__(parent)
        self._kept = kept or QSettings(
            QSettings.Format.IniFormat, QSettings.Scope.UserScope, "hwsched", "desktop", self
        )

    @property
    def theme(self) -> Theme:
        """Light, dark, or as the system is."""
        said = self._kept.value("look/theme")
        return next((each for each in THEMES if each == said), "system")

    @theme.setter
    def theme(self, theme: Theme) -> None:
        self._keep("look/theme", theme, "theme")

    @property
    def text_size(self) -> int:
        """How large text is, and with it rows and spacing [%]."""
        try:
            said = int(str(self._kept.value("look/text_size", 100)))
        except ValueError:
            return 100
        return min(max(said, LEAST_TEXT), MOST_TEXT)

    @text_size.setter
    def text_size(self, percent: int) -> None:
        self._keep("look/text_size", min(max(percent, LEAST_TEXT), MOST_TEXT), "text_size")

    @property
    def language(self) -> str:
        """In which the program speaks from its next start on; empty: in the system's, if that is there."""
        return str(self._kept.value("look/language") or "")

    @language.setter
    def language(self, language: str) -> None:
        self._keep("look/language", language, "language")

    @property
    def name(self) -> str:
        """The person's name as journals write it; empty until it was told."""
        return str(self._kept.value("person/name") or "")

    @name.setter
    def name(self, name: str) -> None:
        self._keep("person/name", " ".join(name.split()), "name")

    @property
    def toured(self) -> bool:
        """Whether the tour was gone through or left, so that it is not offered again."""
        return str(self._kept.value("person/toured")) == "true"

    @toured.setter
    def toured(self, toured: bool) -> None:
        self._keep("person/toured", "true" if toured else "false", "toured")

    @property
    def place(self) -> str:
        """The place of the rail in which the person was last; empty before there was one."""
        return str(self._kept.value("layout/place") or "")

    @place.setter
    def place(self, name: str) -> None:
        self._kept.setValue("layout/place", name)

    @property
    def recent(self) -> list[str]:
        """Projects that were open, the last one first."""
        said: Any = self._kept.value("projects/recent")
        # A list of one is kept as its only member.
        return [said] if isinstance(said, str) and said else [str(each) for each in said or ()]

    def opened(self, target: str) -> None:
        """Remember that a project was opened; an address with a password in it is not written down."""
        if masked(target) != target:
            return
        if "://" not in target:
            # The program may be started in another folder next time.
            target = str(Path(target).absolute())
        self._keep_recent([target, *(each for each in self.recent if each != target)])

    def forget(self, target: str) -> None:
        """Forget a project, of one that is no more there."""
        self._keep_recent([each for each in self.recent if each != target])

    def layout(self, name: str) -> QByteArray:
        """Return how a window, a splitter or a header stood, as Qt saved it; empty where it never was."""
        said = self._kept.value(f"layout/{name}")
        return said if isinstance(said, QByteArray) else QByteArray()

    def keep_layout(self, name: str, state: QByteArray) -> None:
        """Remember how a window, a splitter or a header stands."""
        self._kept.setValue(f"layout/{name}", state)

    def folder(self, way: str) -> str:
        """Return the folder from which files were last read, or into which they were last written; empty before."""
        return str(self._kept.value(f"folders/{way}") or "")

    def keep_folder(self, way: str, folder: str) -> None:
        """Remember the folder of files that are read or written."""
        self._kept.setValue(f"folders/{way}", folder)

    def keep_typed(self, texts: Sequence[Typed]) -> None:
        """Keep what is being typed in this process; at once, since it may be ended at any moment."""
        key = f"typed/{os.getpid()}"
        said = json.dumps([list(each) for each in texts]) if texts else None
        if self._kept.value(key) == said:
            return
        if said is None:
            self._kept.remove(key)
        else:
            self._kept.setValue(key, said)
        self._kept.sync()

    def typed_left(self, place: str) -> list[Typed]:
        """Return what was being typed in a project by processes that were ended; it is told once."""
        self._kept.sync()
        self._kept.beginGroup("typed")
        keys = self._kept.childKeys()
        self._kept.endGroup()
        found = []
        for key in keys:
            if not key.isdigit() or int(key) == os.getpid() or runs(int(key)):
                continue
            left = _read_typed(self._kept.value(f"typed/{key}"))
            found += [each for each in left if each.place == place]
            others = [list(each) for each in left if each.place != place]
            if others:
                self._kept.setValue(f"typed/{key}", json.dumps(others))
            else:
                self._kept.remove(f"typed/{key}")
        self._kept.sync()
        return found

    def _keep_recent(self, recent: Sequence[str]) -> None:
        self._keep("projects/recent", list(recent[:RECENT]), "recent")

    def _keep(self, key: str, value: object, name: str) -> None:
        if self._kept.value(key) != value:
            self._kept.setValue(key, value)
            self.changed.emit(name)


def _read_typed(kept: object) -> list[Typed]:
    """Read what is kept of one process; what is none of ours says nothing."""
    try:
        said = json.loads(str(kept))
    except ValueError:
        return []
    rows = said if isinstance(said, list) else []
    return [Typed(*map(str, each)) for each in rows if isinstance(each, list) and len(each) == len(Typed._fields)]
