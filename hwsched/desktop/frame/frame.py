"""The frame: what every subject of the main window is given, and nothing that is of one subject.

It holds the open project, the places and the way through them, the commands, the jobs, the watching and the telling of
trouble, each an object of its own, and makes edits.
"""

from collections.abc import Callable, Sequence
from functools import partial
from pathlib import Path
from typing import Any

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QWidget

from hwsched.desktop.find.finding import Finder
from hwsched.desktop.frame.commands import ActsOn, Command, Commands, lacking
from hwsched.desktop.frame.pages import Pages
from hwsched.desktop.frame.place import Place
from hwsched.desktop.frame.trail import Trail
from hwsched.desktop.jobs.jobs import Jobs
from hwsched.desktop.jobs.trouble import Telling
from hwsched.desktop.project.following import Following
from hwsched.desktop.project.preferences import Preferences
from hwsched.desktop.project.project_state import ProjectState
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.model.errors import ConflictError


class Frame(QObject):
    """One project at a time, and the ways to work on it.

    Parameters
    ----------
    who : str
        Person at work, for the journal.
    window : QWidget
        Over which dialogs open.
    preferences : Preferences, optional
        What the person has chosen; the kept ones unless others are given.
    places : sequence of Place
        All that can be gone to; a command goes to each.
    """

    said = Signal(str, int)
    """A line for the status bar and how long it stands [ms]; 0: until the next one."""
    possible = Signal()
    """What can be done at present may be otherwise."""

    def __init__(
        self, who: str, window: QWidget, preferences: Preferences | None = None, places: Sequence[Place] = ()
    ) -> None:
        super().__init__(window)
        self.window = window
        self.preferences = preferences or Preferences(self)
        self.state = ProjectState(who, self)
        self.jobs = Jobs(self)
        self.telling = Telling(window, self)
        self.following = Following(self.state, self.jobs, self.telling, self)
        self.trail = Trail(self)
        self.commands = Commands(self)
        self.pages = self.side = Pages(self, places)
        self.finder = Finder(self.state, self.commands, self.go, self.acted_on)
        self.in_view: Callable[[], Sequence[str]] = list
        """Returns the openings that the list in the middle shows; the window says which list that is."""
        self.any_in_view: Callable[[], bool] = bool
        """Tells whether there is any."""
        self.pages.closed.connect(lambda name: self.trail.forget(lambda station: station.place == name))
        self.following.said.connect(self.said)
        self.jobs.failed.connect(self.telling.tell)
        # What was typed and refused is gone from the screen.
        self.telling.told_of.connect(lambda _failure, _told: self.state.show_again())
        self.possible.connect(self._enable)
        self.state.leaving.connect(self._on_leaving)
        self.state.reloaded.connect(self.possible)
        self.state.selected.connect(self._enable)
        self.jobs.started.connect(lambda _title: self.possible.emit())
        self.jobs.ended.connect(self.possible)
        for place in places:
            self._offer_way(place)

    def go(self, place: str, thing: Any = None) -> None:
        """Go to a place of the window, to show a thing there; back leads here again.

        Parameters
        ----------
        place : str
            Its name.
        thing : optional
            What the place is to show: an opening by its identifier, a rule, what it says of itself.
        """
        if self.pages.can_go(place):
            self.trail.go(self.pages.resolved(place).name, thing)

    def acted_on(self, acts_on: ActsOn) -> str:
        """Say on what a command will act at present; nothing for one that acts on nothing that is chosen."""
        state, checked = self.state, self.state.checked
        if not acts_on or state.workspace is None:
            return ""
        if acts_on == "chosen":
            return (
                phrase("on {mark}", mark=checked.given.opening.mark)
                if checked is not None
                else phrase("no opening is chosen")
            )
        ids = list(state.ids) if acts_on == "selected" else list(self.in_view())
        if len(ids) == 1 and ids[0] in state.workspace.checked:
            return phrase("on {mark}", mark=state.workspace.checked[ids[0]].given.opening.mark)
        if not ids:
            return phrase("no opening is selected") if acts_on == "selected" else phrase("no opening is in view")
        return phrase_of_count("on {count:,} opening", "on {count:,} openings", len(ids)) + (
            phrase(" in view") if acts_on == "in view" else ""
        )

    @property
    def acts(self) -> dict[str, QAction]:
        """The command that goes to each place, by the place's name."""
        return {each.name: self.commands[f"go-{each.name}"].act for each in self.pages.places.values() if each.listed}

    def say(self, words: str, how_long_ms: int = 8000) -> None:
        """Say a line in the status bar."""
        self.said.emit(words, how_long_ms)

    def edit(
        self,
        act: Callable[[], Any],
        then: Callable[[Any], None] | None = None,
        *,
        asker: QWidget | None = None,
        lost: Callable[[BaseException], object] | None = None,
    ) -> None:
        """Make an edit; tell what went wrong; let all views follow.

        Parameters
        ----------
        act : callable
            Calls an operation; runs off the screen's thread, so it may not touch a widget.
        then : callable, optional
            Gets its result once the views have followed, unless the asker is gone.
        asker : QWidget, optional
            The window in which it was asked for.
        lost : callable, optional
            Gets what went wrong where nothing could be written, to keep what was typed.
        """
        if self.state.workspace is not None:
            self.jobs.edit(phrase("Writing"), act, then, asker=asker, lost=lost)

    def edit_seen(
        self,
        act: Callable[[int | None], Any],
        base: int | None,
        then: Callable[[Any], None] | None = None,
        *,
        asker: QWidget | None = None,
        lost: Callable[[BaseException], object] | None = None,
    ) -> None:
        """Make an edit of what was shown; where somebody else changed it meanwhile, ask whose value is taken.

        Parameters
        ----------
        act : callable
            Calls an operation, given the newest step that was seen; runs off the screen's thread.
        base : int or None
            The newest step when what is edited was shown; None: it does not matter.
        then, asker, lost
            As in `edit`; what follows an edit that was asked about follows the answer.
        """
        seen = base

        def attempt() -> Any:
            nonlocal seen
            try:
                return act(seen)
            except ConflictError as conflict:
                # The question tells what is there: made once more, it overwrites that knowingly.
                seen = conflict.base
                raise

        self.edit(attempt, then, asker=asker, lost=lost)

    def write(self, path: str, act: Callable[[], Any], again: Callable[[], None]) -> None:
        """Write a file; where that cannot be, another place is asked for on wish."""
        self.jobs.edit(
            phrase("Writing {name}", name=Path(path).name),
            act,
            lambda _count: self.say(phrase("Wrote {path}", path=path)),
            ask_again=again,
        )

    def close(self) -> bool:
        """Close the project with its pages, unless there is something to tell first."""
        return self.following.close()

    def _offer_way(self, place: Place) -> None:
        if place.listed:
            self.commands.add(
                f"go-{place.name}",
                place.title,
                place.tip,
                partial(self.go, place.name),
                menu=to_phrase("Go"),
                needs=place.needs,
                keys=place.keys or None,
                icon=place.icon,
            )

    def _enable(self) -> None:
        state, idle = self.state, not self.jobs.busy
        opened, filled = state.workspace is not None, state.filled
        nobody: dict[ActsOn, bool] = {
            "chosen": state.checked is None,
            "selected": not state.ids,
            "in view": opened and not self.any_in_view(),
        }

        def why_not(command: Command) -> str:
            lacks = lacking(command.needs, idle=idle, opened=opened, filled=filled)
            return lacks or (self.acted_on(command.acts_on) if nobody.get(command.acts_on) else "")

        self.commands.enable(why_not)

    def _on_leaving(self) -> None:
        # First, so that no page that is closed leads to the one before it.
        self.trail.clear()
        self.pages.close()
        self.pages.desk = None
