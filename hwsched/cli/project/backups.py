"""`hwsched backups`: lists the copies of a project file, and puts one back."""

from __future__ import annotations

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("project", help="project file (.hwsched)")
    parser.add_argument("--json", action="store_true", help="print JSON for machines")
    parser.add_argument("--restore", metavar="NAME", help="put this copy in the project's place; it is kept first")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import print_json
    from hwsched.operations.project.backups import list_backups, restore

    if arguments.restore:
        found, kept = restore(arguments.project, arguments.restore)
        if arguments.json:
            print_json({"restored": found.name, "kept": None if kept is None else str(kept)})
        else:
            print(f"Put back: {found.path}")
            if kept is not None:
                print(f"As it was: {kept}; to undo this: hwsched backups {arguments.project} --restore {_name(kept)}")
        return DONE
    copies = list_backups(arguments.project)
    if arguments.json:
        print_json(
            [{"name": each.name, "file": str(each.path), "bytes": each.size, "newest": each.newest} for each in copies]
        )
    elif not copies:
        print("No copies yet: one is made before the first change of each day.")
    for each in copies if not arguments.json else ():
        print(f"{each.name:<18} {each.size / 1e6:8.1f} MB  {each.newest}")
    return DONE


def _name(kept: object) -> str:
    return str(kept).removesuffix(".hwsched").rpartition(".")[2]


BACKUPS = Verb("backups", "List the daily copies of a project file, or put one back.", _arguments, _run)
