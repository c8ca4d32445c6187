"""`hwsched project desktop`: opens the desktop."""

from __future__ import annotations

from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("project", nargs="?", help="project file (.hwsched) or database URL")
    parser.add_argument(
        "--who",
        default="",
        help="who is at work, for the journal (default: the name in the desktop's settings, else the login name)",
    )


def _run(arguments: argparse.Namespace) -> int:
    import logging
    import os

    from hwsched.cli.failing import tell
    from hwsched.cli.session import who
    from hwsched.cli.verb import CANNOT_OPEN
    from hwsched.telling.signals_held import signals_held

    try:
        # Interrupted as it is loaded, PySide6 aborts the process.
        with signals_held():
            from hwsched.desktop import run_desktop
    except ImportError as error:
        # Not installed, or installed without a library of the system's that it stands on.
        if not (error.name or "").startswith(("PySide6", "shiboken6")) and ".so" not in str(error):
            raise
        tell(
            f"the desktop cannot be opened, PySide6 cannot be loaded: {error}. Install it (pip install "
            "PySide6-Essentials, on Debian also libegl1 and libxkbcommon0); the other commands do without."
        )
        return CANNOT_OPEN

    def cannot_open(why: str) -> None:
        tell(f"the desktop cannot be opened, there is no display for it: {why} The other commands do without one.")
        logging.shutdown()
        # Qt would abort the process next.
        os._exit(CANNOT_OPEN)

    return run_desktop(arguments.project, arguments.who, login=who(arguments), cannot_open=cannot_open)


VERB = Verb(_arguments, _run)
