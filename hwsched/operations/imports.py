"""What can be taken in: the tuple below is its table of contents, for the command line and the desktop alike.

A format is a reader in `hwsched.exchange` and an operation that writes what was read through the journal; the module of
the operation has a function `take_in`. It is loaded when it is used: `hwsched --help` shows the table without any.
"""

from __future__ import annotations

from importlib import import_module

# Loaded before `hwsched --help` is shown, which neither typing nor dataclasses may slow down.
TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Mapping
    from pathlib import Path

    from hwsched.exchange.problems import CellProblem, FileProblem
    from hwsched.model.project import Project
    from hwsched.operations.changes import Changes


class TakenIn:
    """What came in.

    Parameters
    ----------
    changes : Changes
        What was touched.
    said : str
        One sentence for people.
    counts : mapping of str to int
        The same for machines, names ending in ``_count``.
    problems : tuple
        Of rows that were left out.
    unread : tuple of str
        Names of the sheets that were not read.
    """

    __slots__ = ("changes", "counts", "problems", "said", "unread")

    def __init__(
        self,
        changes: Changes,
        said: str,
        counts: Mapping[str, int],
        problems: tuple[CellProblem | FileProblem, ...] = (),
        unread: tuple[str, ...] = (),
    ) -> None:
        self.changes, self.counts, self.problems, self.unread = changes, counts, problems, unread
        self.said = "; ".join([said, *(f"not read: sheet {name}" for name in unread)])


class ImportFormat:
    """One kind of file that can be taken in.

    Parameters
    ----------
    name : str
        By which it is named where a room has several: ``hwsched ROOM import --as NAME``.
    room : str
        Whose verb ``import`` takes it.
    title : str
        What the verb does.
    what : str
        What the file holds, for help.
    endings : tuple of str
        Of its name.
    module : str
        Of the operation: ``take_in(project, path, *, who, accept)`` returns `TakenIn`, or raises InputRejected.
    leaves_out : str
        What is left out, if a person says so, where one of its cells is refused; empty: such a cell refuses the file.
    asks : bool
        Whether it is shown and asked about before it is taken in: then verb and dialog are its own.
    """

    __slots__ = ("asks", "endings", "leaves_out", "module", "name", "room", "title", "what")

    def __init__(
        self,
        name: str,
        room: str,
        title: str,
        what: str,
        endings: tuple[str, ...],
        module: str,
        leaves_out: str = "",
        asks: bool = False,
    ) -> None:
        self.name, self.room, self.title, self.what, self.endings = name, room, title, what, endings
        self.module, self.leaves_out, self.asks = module, leaves_out, asks

    def take_in(self, project: Project, path: Path, *, who: str, accept: str = "all") -> TakenIn:
        """Take a file in; raises InputRejected naming every cell that cannot be, and changes nothing then."""
        # Loaded when it is used: spreadsheet libraries would make every start of the command line slower.
        taken: TakenIn = import_module(self.module).take_in(project, path, who=who, accept=accept)
        return taken


IMPORTS = (
    ImportFormat(
        "survey",
        "survey",
        "Take in a survey.",
        "survey as .xlsx, .xls, .ods or .csv",
        (".xlsx", ".xlsm", ".xlsb", ".xls", ".ods", ".csv", ".tsv", ".txt"),
        "hwsched.operations.survey.survey_import",
        leaves_out="openings",
        asks=True,
    ),
    ImportFormat(
        "catalogue",
        "parts",
        "Take in a catalogue workbook.",
        "catalogue as .xlsx",
        (".xlsx",),
        "hwsched.operations.parts.catalogue_import",
        leaves_out="parts",
    ),
    ImportFormat(
        "power",
        "power",
        "Take in a power workbook.",
        "power workbook as .xlsx: sheets Levels, Places, Supplies, Circuits, Runs, Routes",
        (".xlsx",),
        "hwsched.operations.power.power_import",
    ),
)


def import_named(name: str) -> ImportFormat:
    """Return the format of that name; raises KeyError."""
    return {each.name: each for each in IMPORTS}[name]
