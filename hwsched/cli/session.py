"""What every verb that works on a project shares: its arguments, who is at work, printing for people or machines."""

from __future__ import annotations

import getpass
import sys
from contextlib import ExitStack, contextmanager
from contextvars import ContextVar
from typing import TYPE_CHECKING, Any, TypedDict

from hwsched.cli.answering import answer, mark_damaged
from hwsched.cli.counting import counted

if TYPE_CHECKING:
    import argparse
    from collections.abc import Callable, Iterator, Sequence
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


_HELD: ContextVar[Project | None] = ContextVar("held", default=None)


@contextmanager
def holding(project: Project) -> Iterator[None]:
    """Let the verbs that run in this block work on a project that is open already."""
    token = _HELD.set(project)
    try:
        yield
    finally:
        _HELD.reset(token)


@contextmanager
def opened(arguments: argparse.Namespace, *, tell: bool = True) -> Iterator[Project]:
    """Open the project for the time of a verb; says so where an earlier version has worked openings out.

    A file of an earlier version is brought up to date, after a compared copy, and that is said: a script must not stop
    at a file that nobody else works in. A project on a server is its office's: `open_project` refuses it and says how.
    """
    held = _HELD.get()
    if held is not None:
        yield held
        return
    from hwsched.model.errors import DamagedProjectError, NeedsUpgradeError
    from hwsched.model.project import open_project

    try:
        project = open_project(arguments.project)
    except DamagedProjectError as error:
        with _read_only_rest(arguments.project, error) as rest:
            yield rest
        return
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


@contextmanager
def _read_only_rest(address: str, error: Exception) -> Iterator[Project]:
    """Open what can be read of a damaged project; what is answered from it is never taken for the whole."""
    from hwsched.model.errors import ProjectError, ValueRefusedError
    from hwsched.operations.project.rescuing import lost_words, what_is_left

    with ExitStack() as stack:
        try:
            project, found = stack.enter_context(what_is_left(address))
        except (ProjectError, ValueRefusedError):
            # Nothing is left to be shown, or it is on a server: the damage is what there is to tell.
            raise error from None
        said = f"{error}. Opened to be read only, as far as it can be read; rows lost: {lost_words(found)}"
        mark_damaged(said)
        print(f"hwsched: {said}", file=sys.stderr)
        yield project


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
            f"{earlier_words(count)}; hwsched opening fit PROJECT --since-upgrade --dry-run shows what does.",
            file=sys.stderr,
        )


def print_json(value: Any) -> None:
    """Hand a verb's result over to whoever reads it as JSON; it is printed in the envelope when the verb has ended."""
    answer(value)


@contextmanager
def output_file(name: str, ending: str) -> Iterator[Path]:
    """Yield the path to write to for a file argument: ``-`` is standard output."""
    from pathlib import Path

    if name != "-":
        yield Path(name)
        return
    from hwsched.cli.streams import write_out
    from hwsched.writing import UnwritableError, scratch_folder

    with scratch_folder() as folder:
        path = folder / f"output{ending}"
        yield path
        written = len(list(folder.iterdir()))
        if written > 1:
            raise UnwritableError(f"standard output takes one file, and these are {written}; write them to a file")
        write_out(path)


def goes_to_stream(output: str | None) -> bool:
    """Tell whether output goes through a pipe or a device rather than into a folder."""
    from pathlib import Path

    from hwsched.writing import is_stream

    return output == "-" or (output is not None and is_stream(Path(output)))


def write_through(files: Sequence[Path], output: str) -> None:
    """Write the one file that was made through a pipe or a device.

    Raises
    ------
    UnwritableError
        For several: their bytes, one behind the other, would be no file.
    """
    from pathlib import Path

    from hwsched.cli.streams import write_out
    from hwsched.writing import UnwritableError, replacing

    if len(files) != 1:
        raise UnwritableError(
            f"{output} takes one file, and these are {len(files)}; choose with --format, or -o a folder"
        )
    if output in ("-", "/dev/stdout"):
        # By way of our own stream, which knows a reader that has had enough.
        write_out(files[0])
        return
    with replacing(Path(output)) as path:
        path.write_bytes(files[0].read_bytes())


def said(arguments: argparse.Namespace, text: str) -> None:
    """Print what is not the result but good to know; neither machines nor people who asked for quiet read it."""
    if not arguments.json and not getattr(arguments, "quiet", False):
        print(text)


def wrong_usage(message: str) -> int:
    """Say what is wrong with the words of a verb; returns its exit status."""
    from hwsched.cli.answering import add_problem
    from hwsched.cli.verb import WRONG_USAGE

    print(f"hwsched: {message}", file=sys.stderr)
    add_problem(message=message)
    return WRONG_USAGE


def add_dry_run(parser: argparse.ArgumentParser, what: str = "say what would change, write nothing") -> None:
    """Add the one word for trying."""
    from argparse import SUPPRESS

    parser.add_argument("--dry-run", action="store_true", help=what)
    # The spelling of earlier versions.
    parser.add_argument("--preview", dest="dry_run", action="store_true", help=SUPPRESS)


def add_output(parser: argparse.ArgumentParser, what: str, *earlier: str, folder: bool = False) -> None:
    """Add where output goes; earlier: its option of earlier versions, or `file` where it was a word."""
    from argparse import SUPPRESS

    shown = what if folder else f"{what}; - is standard output"
    parser.add_argument("-o", "--output", metavar="DIR" if folder else "FILE", help=shown)
    for each in earlier:
        if each.startswith("-"):
            parser.add_argument(each, dest="output", help=SUPPRESS)
        else:
            parser.add_argument(each, nargs="?", help=SUPPRESS)


def output_wanted(arguments: argparse.Namespace) -> str:
    """Return why where output goes is not said as it must be; empty where it is."""
    if not arguments.output:
        arguments.output = getattr(arguments, "file", None)
    if not arguments.output:
        return "say where to write: -o FILE"
    if arguments.output == "-" and arguments.json:
        return "-o - and --json would both write to standard output"
    return ""


class Wrote(TypedDict):
    """What was written where."""

    files: list[str]


class Step(TypedDict):
    """What a step touched."""

    marks: list[str]


def tell_wrote(arguments: argparse.Namespace, found: dict[str, Any], more: str = "") -> None:
    """Say that the output was written; not where that would be taken for a part of what was written."""
    from pathlib import Path

    from hwsched.writing import is_stream

    name = str(getattr(arguments, "output", None) or arguments.file)
    print_json({"files": [name], **found})
    if name == "-" or is_stream(Path(name)):
        if not getattr(arguments, "quiet", False):
            print(f"Wrote {'to standard output' if name == '-' else name}{more}", file=sys.stderr)
    else:
        said(arguments, f"Wrote {name}{more}")


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


def step_of(project: Project, changes: Changes) -> Step:
    """Return what machines read of a step: the openings that it touched and that are still there."""
    from hwsched.operations.opening.named_openings import marks_of

    return {"marks": marks_of(project, changes.openings)}


def tell_step(arguments: argparse.Namespace, what: str, changes: Changes, result: object = None) -> int:
    """Say what a step did; result: what machines read of it."""
    print_json({"openings": len(changes.openings)} if result is None else result)
    count = len(changes.openings)
    if changes.number is None:
        said(arguments, "Nothing to change.")
    else:
        said(arguments, f"{what}: {counted(count, 'opening')} touched; change set {changes.number} written.")
    return 0
