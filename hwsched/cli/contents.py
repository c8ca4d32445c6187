"""What the command line's table of contents is made of: rooms, and in each its verbs.

Plain classes: `hwsched --help` is measured against a bare interpreter, and importing dataclasses would double it.
"""

from __future__ import annotations

DESCRIPTION = "Survey, fit, prove, schedule and install electronic locking on doors that already stand."

TYPE_CHECKING = False
if TYPE_CHECKING:
    from hwsched.cli.verb import Verb


class Entry:
    """A line of the table: a verb that is loaded when it is used.

    Parameters
    ----------
    name : str
        As typed behind its room; the file ``hwsched/cli/<room>/<name>.py`` exports it as ``VERB``.
    summary : str
        One sentence for the overview.
    *earlier : str
        Spellings of earlier versions, without the program's name: they work for one version more.
    """

    __slots__ = ("earlier", "name", "room", "summary")

    def __init__(self, name: str, summary: str, *earlier: str) -> None:
        self.name, self.summary, self.earlier = name, summary, earlier
        self.room = ""

    @property
    def spelling(self) -> str:
        """How it is typed: room and name."""
        return f"{self.room} {self.name}"

    def load(self) -> Verb:
        """Return the verb."""
        from importlib import import_module

        # Python keeps the word `import` for itself.
        file = "import_" if self.name == "import" else self.name.replace("-", "_")
        verb: Verb = import_module(f"hwsched.cli.{self.room}.{file}").VERB
        return verb


class Room:
    """Verbs about one subject; the same rooms as on every other floor.

    Parameters
    ----------
    name : str
        As typed.
    about : str
        One line for the overview.
    *entries : Entry
        In the order in which people see them.
    """

    __slots__ = ("about", "entries", "name")

    def __init__(self, name: str, about: str, *entries: Entry) -> None:
        self.name, self.about, self.entries = name, about, entries
        for each in entries:
            each.room = name
