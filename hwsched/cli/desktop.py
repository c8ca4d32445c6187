"""`hwsched desktop`: opens the desktop."""

from __future__ import annotations

from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("project", nargs="?", help="project file (.hwsched) or database URL")
    parser.add_argument("--who", default="", help="who is at work, for the journal (default: the login name)")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import who
    from hwsched.desktop import run_desktop

    return run_desktop(arguments.project, who(arguments))


DESKTOP = Verb("desktop", "Open the desktop.", _arguments, _run)
