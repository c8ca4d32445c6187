"""`hwsched project upgrade`: brings a project of an earlier version to this one's schema, after a verified copy."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class Upgrade(TypedDict):
    """Schemas before and after, and the copy that was kept of a file that was changed."""

    project: str
    before: str
    after: str
    copy: str | None
    compared_row_count: int


def _arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("project", help="project file (.hwsched) or database URL")
    parser.add_argument("--json", action="store_true", help="print JSON for machines")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import print_json, said
    from hwsched.operations.project.upgrading import upgrade

    done = upgrade(arguments.project)
    print_json(
        {
            "project": str(done.place),
            "before": done.before,
            "after": done.after,
            "copy": None if done.copy is None else str(done.copy),
            "compared_row_count": done.rows,
        }
    )
    if done.before == done.after:
        said(arguments, f"{done.place} has the newest schema ({done.after}) already; nothing was changed.")
        return DONE
    said(arguments, f"{done.place}: schema {done.before} -> {done.after}.")
    if done.copy is None:
        said(arguments, "No copy was made of it: that is its keeper's.")
    else:
        said(arguments, f"As it was: {done.copy}; {done.rows} rows compared equal before anything was changed.")
    return DONE


VERB = Verb(_arguments, _run, result=Upgrade)
