"""What the verbs work on: ``--building``, ``--level``, ``--mark``, ``--where``, the same everywhere."""

from __future__ import annotations

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse
    from collections.abc import Sequence

    from hwsched.model.project import Project
    from hwsched.operations.opening.scope import Scope

_LONGEST_BYTES = 10_000_000
"""Of a file of marks: a hundred times what the largest site has."""


def add_scope(parser: argparse.ArgumentParser) -> None:
    """Add the choice of openings; each option narrows what the others leave."""
    group = parser.add_argument_group("openings", "all without these; each narrows what the others leave")
    group.add_argument("--building", action="append", default=[], metavar="NAME", help="of this building; repeatable")
    group.add_argument("--level", action="append", default=[], metavar="NAME", help="on this level; repeatable")
    group.add_argument(
        "--mark",
        dest="marks",
        action="append",
        default=[],
        metavar="MARKS",
        help="a mark, a list A1,A2, a pattern 'M1*', a range M1..M20, or @FILE with a mark a line (@- standard input)",
    )
    group.add_argument(
        "--where",
        default="",
        metavar="QUERY",
        help="of which this is true, such as 'leaf.thickness > 1 3/4 and level = 2'",
    )


def is_scoped(arguments: argparse.Namespace) -> bool:
    """Tell whether any of the options was given."""
    return bool(arguments.building or arguments.level or arguments.marks or arguments.where.strip())


def openings_asked(project: Project, arguments: argparse.Namespace, marks: Sequence[str] = ()) -> list[str] | None:
    """Return the openings that the options ask for; None where they leave nothing out.

    What is to be said of them, such as a mark taken in other letters or that nothing is found, goes to standard error.

    Parameters
    ----------
    project : Project
        Open project.
    arguments : Namespace
        With the options.
    marks : sequence of str, optional
        Marks that stand on the line by themselves: they are taken as those of ``--mark`` are.
    """
    if not marks and not is_scoped(arguments):
        return None
    import sys

    from hwsched.operations.opening.asked_openings import asked_openings

    found = asked_openings(project, scope_asked(arguments, marks))
    for note in found.notes:
        print(f"hwsched: {note}", file=sys.stderr)
    return list(found.ids)


def scope_asked(arguments: argparse.Namespace, marks: Sequence[str] = ()) -> Scope:
    """Return what the options ask for, as typed; raises ValueRefusedError for a file of marks that cannot be read."""
    from hwsched.operations.opening.scope import Scope

    typed = [*marks, *arguments.marks]
    files = [text for text in typed if text.startswith("@")]
    return Scope(
        buildings=tuple(arguments.building),
        levels=tuple(arguments.level),
        marks=tuple(text for text in typed if not text.startswith("@")),
        listed=tuple(mark for file in files for mark in _listed(file.removeprefix("@"))) if files else None,
        where=arguments.where,
    )


def _listed(name: str) -> list[str]:
    """Read a file of marks, one a line; raises ValueRefusedError."""
    import sys

    from hwsched.model.errors import ValueRefusedError

    try:
        if name == "-":
            read = sys.stdin.buffer.read(_LONGEST_BYTES + 1)
        else:
            with open(name, "rb") as file:
                read = file.read(_LONGEST_BYTES + 1)
        if len(read) > _LONGEST_BYTES:
            raise ValueRefusedError("mark", f"{name} is too large for a list of marks")
        text = read.decode("utf-8-sig")
    except OSError as error:
        raise ValueRefusedError("mark", f"{name} cannot be read: {error.strerror}") from error
    except UnicodeDecodeError:
        raise ValueRefusedError("mark", f"{name} is not UTF-8 text with a mark a line") from None
    return [line.strip() for line in text.splitlines() if line.strip()]
