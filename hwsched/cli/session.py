"""What every verb that works on a project shares: its arguments, who is at work, printing for people or machines."""

from __future__ import annotations

import getpass
import json
import sys
from contextlib import contextmanager
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    import argparse
    from collections.abc import Callable, Iterator
    from pathlib import Path
    from typing import TextIO

    from hwsched.model.project import Project
    from hwsched.operations.changes import Changes


def add_project(parser: argparse.ArgumentParser) -> None:
    """Add the project argument and what goes with it."""
    parser.add_argument("project", help="project file (.hwsched) or database URL")
    add_common(parser)


def add_common(parser: argparse.ArgumentParser) -> None:
    """Add what every verb takes."""
    parser.add_argument("--json", action="store_true", help="print JSON for machines")
    parser.add_argument("--who", default="", help="who is at work, for the journal (default: the login name)")


def who(arguments: argparse.Namespace) -> str:
    """Return the name that the journal writes down."""
    if arguments.who:
        return str(arguments.who)
    try:
        return getpass.getuser()
    # An account without a name, as in a container, raises one or the other by the version of Python.
    except (KeyError, OSError):
        return "unknown person"


@contextmanager
def opened(arguments: argparse.Namespace, *, tell: bool = True) -> Iterator[Project]:
    """Open the project for the time of a verb; says so where an earlier version has worked openings out.

    A file of an earlier version is brought up to date, after a compared copy, and that is said: a script must not stop
    at a file that nobody else works in. A project on a server is its office's: `open_project` refuses it and says how.
    """
    from hwsched.model.errors import NeedsUpgradeError
    from hwsched.model.project import open_project

    try:
        project = open_project(arguments.project)
    except NeedsUpgradeError as error:
        # A server's database is upgraded by its keeper, who has its backups; a file is copied first, and so upgraded
        # at once.
        if not error.copied:
            raise
        from hwsched.operations.project.upgrading import upgrade

        done = upgrade(arguments.project)
        print(
            f"hwsched: {done.place} was written by an earlier version (schema {done.before}, now {done.after}); "
            f"as it was: {done.copy}",
            file=sys.stderr,
        )
        project = open_project(arguments.project)
    told = 0
    try:
        if tell:
            tell_notices(project)
            told = len(project.notices)
            tell_earlier(project)
        else:
            told = len(project.notices)
        yield project
    finally:
        tell_notices(project, told)
        project.close()


def tell_notices(project: Project, since: int = 0) -> None:
    """Say what was noticed as the project was opened, or since then."""
    for notice in project.notices[since:]:
        print(f"hwsched: {notice}", file=sys.stderr)


def tell_earlier(project: Project) -> None:
    """Say in one sentence that results of an earlier version do not count before they are looked through."""
    from hwsched.operations.opening.standings import count_earlier
    from hwsched.values.standing import earlier_words

    count = count_earlier(project)
    if count:
        print(
            f"{earlier_words(count)}; hwsched fit PROJECT --since-upgrade --preview shows what does.", file=sys.stderr
        )


def print_json(value: Any) -> None:
    """Print a value for machines; in letters that a console without Unicode can take."""
    unicode = "utf" in (getattr(sys.stdout, "encoding", None) or "").casefold()
    # Infinity and NaN are no JSON: rather fail here than at whoever reads it.
    print(json.dumps(value, indent=1, ensure_ascii=not unicode, allow_nan=False))


@contextmanager
def output_file(name: str, ending: str) -> Iterator[Path]:
    """Yield the path to write to for a file argument: ``-`` is standard output."""
    from pathlib import Path

    if name != "-":
        yield Path(name)
        return
    import tempfile

    from hwsched.cli.streams import write_out

    with tempfile.TemporaryDirectory(prefix="hwsched-") as folder:
        path = Path(folder) / f"output{ending}"
        yield path
        write_out(path)


def tell_wrote(arguments: argparse.Namespace, found: dict[str, Any], more: str = "") -> None:
    """Say that the file argument was written; not where that would be taken for a part of what was written."""
    from pathlib import Path

    from hwsched.writing import is_stream

    name = str(arguments.file)
    if name == "-" or is_stream(Path(name)):
        print(f"Wrote {'to standard output' if name == '-' else name}{more}", file=sys.stderr)
    elif arguments.json:
        print_json({"file": name, **found})
    else:
        print(f"Wrote {name}{more}")


def _terminal() -> TextIO:
    """Return standard error as it is, for what steers the terminal on purpose; escaping is for what people typed."""
    return sys.__stderr__ or sys.stderr


@contextmanager
def progress_bar(title: str, quiet: bool) -> Iterator[Callable[[int, int], None]]:
    """Show a bar to a person at a terminal; yields a function that takes done and total."""
    if quiet or not sys.stderr.isatty():
        yield lambda done, total: None
        return
    from tqdm import tqdm

    with tqdm(desc=title, unit="", leave=False, file=_terminal()) as bar:

        def advance(done: int, total: int) -> None:
            bar.total = total
            bar.update(done - bar.n)

        yield advance


@contextmanager
def told_steps(quiet: bool) -> Iterator[Callable[[str, float | None], None]]:
    """Tell a person at a terminal the step and the gap that is left; yields the function that is told them."""
    if quiet or not sys.stderr.isatty():
        yield lambda step, gap: None
        return
    from hwsched.telling.characters import escaped

    try:
        yield lambda step, gap: print(
            f"\r\x1b[K{escaped(step)}" + ("" if gap is None else f", gap {gap:.2%}"),
            end="",
            file=_terminal(),
            flush=True,
        )
    finally:
        print("\r\x1b[K", end="", file=_terminal(), flush=True)


def add_marks(parser: argparse.ArgumentParser) -> None:
    """Add the choice of openings."""
    parser.add_argument("--mark", dest="marks", action="append", default=[], help="only this opening; may be repeated")


def add_point(parser: argparse.ArgumentParser) -> None:
    """Add the choice of a lock point."""
    parser.add_argument(
        "--point",
        metavar="NAME",
        help="lock point of an opening that has several, by name or number (default: the first)",
    )


def add_shown(parser: argparse.ArgumentParser, what: str) -> None:
    """Add the name of what was shown, by which no more and no less than that is accepted."""
    parser.add_argument("--shown", default="", metavar="KEY", help=f"accept only what was shown under this key: {what}")


def chosen_openings(project: Project, marks: list[str]) -> list[str] | None:
    """Return the identifiers of the openings with these marks; None for all."""
    if not marks:
        return None
    from hwsched.operations.opening.named_openings import openings_of_marks

    return openings_of_marks(project, marks)


def asked_openings(project: Project, arguments: argparse.Namespace) -> list[str] | None:
    """Return the openings of ``--mark`` and ``--building``; None for all."""
    ids = chosen_openings(project, arguments.marks)
    if not arguments.building:
        return ids
    from hwsched.operations.opening.named_openings import openings_of_building

    return [*(ids or []), *openings_of_building(project, arguments.building)]


def tell_step(arguments: argparse.Namespace, what: str, changes: Changes) -> int:
    """Say which step was taken back or done again."""
    if arguments.json:
        print_json({"change_set": changes.number, "openings": len(changes.openings)})
    elif changes.number is None:
        print("Nothing to change.")
    else:
        print(f"{what}: {len(changes.openings)} openings touched; change set {changes.number} written.")
    return 0
