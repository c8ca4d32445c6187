"""`hwsched project upgrade`: brings a project of an earlier version to this one's schema, after a verified copy."""

from __future__ import annotations

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("project", help="project file (.hwsched) or database URL")
    parser.add_argument("--json", action="store_true", help="print JSON for machines")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import print_json
    from hwsched.operations.project.upgrading import upgrade

    done = upgrade(arguments.project)
    if arguments.json:
        copy = None if done.copy is None else str(done.copy)
        print_json({"before": done.before, "after": done.after, "copy": copy, "rows_compared": done.rows})
    elif done.before == done.after:
        print(f"{done.place} has the newest schema ({done.after}) already; nothing was changed.")
    else:
        print(f"{done.place}: schema {done.before} -> {done.after}.")
        if done.copy is None:
            print("No copy was made of it: that is its keeper's.")
        else:
            print(f"As it was: {done.copy}; {done.rows} rows compared equal before anything was changed.")
    return DONE


VERB = Verb(_arguments, _run)
