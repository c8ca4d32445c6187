"""`hwsched project backups`: lists the copies of a project file, and puts one back."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class Copy(TypedDict):
    """A copy of the project file; newest: its last change set in words, newest_at: when that was."""

    name: str
    file: str
    byte_count: int
    newest: str | None
    newest_at: str | None


class Backups(TypedDict):
    """The copies that there are, and what was put back."""

    copies: list[Copy]
    restored: str | None
    kept: str | None
    """Copy of what was there before; null where nothing was."""


def _arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("project", help="project file (.hwsched)")
    parser.add_argument("--json", action="store_true", help="print JSON for machines")
    parser.add_argument("--restore", metavar="NAME", help="put this copy in the project's place; it is kept first")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import print_json, said
    from hwsched.operations.project.backups import list_backups, restore

    restored = kept = None
    if arguments.restore:
        found, kept = restore(arguments.project, arguments.restore)
        restored = found.name
    copies = list_backups(arguments.project)
    result: Backups = {
        "copies": [
            {
                "name": each.name,
                "file": str(each.path),
                "byte_count": each.size,
                "newest": each.newest or None,
                "newest_at": each.newest_at or None,
            }
            for each in copies
        ],
        "restored": restored,
        "kept": None if kept is None else str(kept),
    }
    print_json(result)
    if arguments.json:
        return DONE
    if arguments.restore:
        said(arguments, f"Put back: {found.path}")
        if kept is not None:
            undo = f"hwsched project backups {arguments.project} --restore {_name(kept)}"
            said(arguments, f"As it was: {kept}; to undo this: {undo}")
        return DONE
    if not copies:
        print("No copies yet: one is made before the first change of each day.")
    for each in copies:
        print(f"{each.name:<18} {each.size / 1e6:8.1f} MB  {each.newest}")
    return DONE


def _name(kept: object) -> str:
    return str(kept).removesuffix(".hwsched").rpartition(".")[2]


VERB = Verb(_arguments, _run, result=Backups)
