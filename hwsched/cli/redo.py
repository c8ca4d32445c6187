"""`hwsched redo`: do again what was taken back last."""

from __future__ import annotations

from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, tell_step, who
    from hwsched.operations.undoing import redo

    with opened(arguments) as project:
        changes = redo(project, who=who(arguments))
    return tell_step(arguments, "Done again", changes)


REDO = Verb("redo", "Do again what was taken back last.", _arguments, _run)
