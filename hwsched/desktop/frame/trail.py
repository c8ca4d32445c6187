"""Where a person is in the window and where they were, so that back and forward lead there. No widgets.

Here belongs the order of places alone. Which places there are stands in `places`, how one is shown in `centre`.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Final

from PySide6.QtCore import QObject, Signal

_LONGEST: Final = 100
"""So many stations are remembered."""


@dataclass(frozen=True, slots=True)
class Station:
    """A place, and what was looked at there."""

    place: str
    thing: Any = None


class Trail(QObject):
    """The stations of a person, in order, and the one that is shown."""

    moved = Signal()
    """Another station is shown, or the same one was asked for again."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._stations: list[Station] = []
        self._at = -1

    @property
    def here(self) -> Station | None:
        """The station that is shown."""
        return self._stations[self._at] if self._stations else None

    @property
    def before(self) -> Station | None:
        """Where back leads."""
        return self._stations[self._at - 1] if self._at > 0 else None

    @property
    def after(self) -> Station | None:
        """Where forward leads."""
        return self._stations[self._at + 1] if self._at + 1 < len(self._stations) else None

    def go(self, place: str, thing: Any = None) -> None:
        """Go to a place; what was ahead is forgotten, and the place that is shown already is no new station."""
        station = Station(place, thing)
        here = self.here
        if here is not None and here.place == place and thing in (None, here.thing):
            self.moved.emit()
            return
        self._stations[self._at + 1 :] = [station]
        del self._stations[:-_LONGEST]
        self._at = len(self._stations) - 1
        self.moved.emit()

    def note(self, thing: Any) -> None:
        """Remember what is looked at here, so that coming back shows it again."""
        here = self.here
        if here is not None:
            self._stations[self._at] = Station(here.place, thing)

    def back(self) -> None:
        """Go to the station before."""
        if self.before is not None:
            self._at -= 1
            self.moved.emit()

    def forward(self) -> None:
        """Go on to the station from which back was gone."""
        if self.after is not None:
            self._at += 1
            self.moved.emit()

    def forget(self, gone: Callable[[Station], bool]) -> None:
        """Forget stations, of a page that was closed or a thing that is no more; the one before them is shown."""
        here = self.here
        kept = [(at, each) for at, each in enumerate(self._stations) if not gone(each)]
        stations, shown = list[Station](), -1
        for at, each in kept:
            # Two stations that now follow one another are one where they are the same.
            if not stations or stations[-1] != each:
                stations.append(each)
            if at <= self._at:
                shown = len(stations) - 1
        self._stations = stations
        self._at = max(shown, 0) if stations else -1
        if self.here != here:
            self.moved.emit()

    def clear(self) -> None:
        """Forget every station: those of one project are none of another."""
        self._stations, self._at = [], -1
