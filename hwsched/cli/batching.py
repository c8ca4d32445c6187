"""Running many verbs as one step: a line of JSON each, or the rows of a CSV for one verb. Whole, or not at all."""

from __future__ import annotations

import argparse
import csv
import io
import json
from contextlib import redirect_stdout
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final

from hwsched.cli import ENTRIES
from hwsched.cli.answering import apart, named_problem
from hwsched.cli.parsing import UsageError, parser_of
from hwsched.cli.session import holding
from hwsched.cli.verb import DONE, FINDINGS
from hwsched.model.errors import ChangeError
from hwsched.operations.outcome import REFUSED
from hwsched.operations.project.batch import as_one_step

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from hwsched.cli.contents import Entry
    from hwsched.cli.verb import Verb
    from hwsched.model.project import Project

_VERB: Final = "verb"
_LONGEST: Final = 1_000_000
"""Letters of a line; no verb needs more."""


class LineRefusedError(ChangeError):
    """A line of a batch that cannot be done; nothing of the batch was written.

    Parameters
    ----------
    file : str
        Its name.
    row : int
        Line, from 1.
    message : str
        Why, and what is accepted.
    """

    def __init__(self, file: str, row: int, message: str) -> None:
        super().__init__(f"{file}, line {row}: {message}")
        self.problems = (named_problem(file=file, row=row, message=message),)


@dataclass(frozen=True, slots=True)
class Command:
    """A line of a batch, read."""

    row: int
    entry: Entry
    verb: Verb
    arguments: argparse.Namespace


def read_commands(text: str, file: str, project: str, who: str, usual: str = "") -> list[Command]:
    """Read a batch.

    Parameters
    ----------
    text : str
        JSON lines: objects with ``verb`` ("survey edit") and the verb's arguments by their names, or as words in
        ``arguments``. Or, where the file's name ends in .csv, a header with those names and a row each.
    file : str
        Its name, for messages.
    project, who : str
        As given to the batch.
    usual : str
        Verb of the lines that name none.

    Raises
    ------
    LineRefusedError
        For the first line that is no command.
    """
    lines = _csv_lines(text, file) if file.casefold().endswith(".csv") else _json_lines(text, file)
    return [_command(row, given, file, project, who, usual) for row, given in lines]


def _json_lines(text: str, file: str) -> Iterator[tuple[int, dict[str, Any]]]:
    for row, line in enumerate(text.splitlines(), start=1):
        if not line.strip():
            continue
        if len(line) > _LONGEST:
            raise LineRefusedError(file, row, f"is longer than {_LONGEST} letters")
        try:
            given = json.loads(line)
        except (ValueError, RecursionError) as error:
            raise LineRefusedError(file, row, f"is no JSON: {error}") from error
        if not isinstance(given, dict):
            raise LineRefusedError(file, row, 'is no JSON object, such as {"verb": "survey edit", "mark": "M101", ...}')
        yield row, given


def _csv_lines(text: str, file: str) -> Iterator[tuple[int, dict[str, Any]]]:
    rows = csv.reader(io.StringIO(text, newline=""))
    try:
        header = [name.strip() for name in next(rows, [])]
        for cells in rows:
            if not any(cell.strip() for cell in cells):
                continue
            if len(cells) > len(header):
                raise LineRefusedError(file, rows.line_num, f"has {len(cells)} cells under {len(header)} headers")
            # An empty cell says nothing of an option; an empty word of a fact, which means unknown, is written "".
            yield rows.line_num, {name: cell for name, cell in zip(header, cells, strict=False) if cell != ""}
    except csv.Error as error:
        raise LineRefusedError(file, rows.line_num, f"is no CSV: {error}") from error


def _command(row: int, given: dict[str, Any], file: str, project: str, who: str, usual: str) -> Command:
    spelling = str(given.pop(_VERB, usual))
    entry = next((each for each in ENTRIES if each.spelling == spelling), None)
    if entry is None:
        raise LineRefusedError(file, row, f"no verb {spelling!r}; one such as 'survey edit' or 'findings waive'")
    verb = entry.load()
    if not verb.in_batch:
        raise LineRefusedError(
            file, row, f"{spelling} cannot be a part of a step: it does not only write into a project"
        )
    parser = parser_of(entry, verb)
    try:
        words = [project, *_words(parser, given), *(["--who", who] if who else [])]
        # Its help would be printed among the answers.
        with redirect_stdout(io.StringIO()):
            arguments = parser.parse_intermixed_args(words)
    except UsageError as error:
        raise LineRefusedError(file, row, f"{spelling}: {error.message}") from error
    except SystemExit as error:
        raise LineRefusedError(file, row, f"{spelling}: help is no command") from error
    arguments.json = True
    return Command(row, entry, verb, arguments)


def _words(parser: argparse.ArgumentParser, given: dict[str, Any]) -> list[str]:
    """Return the words that arguments by name stand for."""
    if set(given) == {"arguments"} and isinstance(given["arguments"], list):
        return [str(each) for each in given["arguments"]]
    options: list[str] = []
    placed: list[str] = []
    left = dict(given)
    for action in parser._actions:
        names = {action.dest, *(flag.lstrip("-").replace("-", "_") for flag in action.option_strings)}
        name = next((each for each in left if each.replace("-", "_") in names), None)
        if name is None or action.dest in ("project", "help"):
            continue
        value = left.pop(name)
        values = [_word(each) for each in (value if isinstance(value, list) else [value])]
        if not action.option_strings:
            placed += values
        elif action.nargs == 0:
            options += [action.option_strings[-1]] if value not in (False, None, "", "no", "false") else []
        elif value is not None:
            options += [f"{action.option_strings[-1]}={each}" for each in values]
    if left:
        known = ", ".join(sorted({a.dest for a in parser._actions} - {"help", "project", "project_elsewhere", "json"}))
        raise UsageError("", f"has no argument {', '.join(sorted(left))}; it has {known}")
    # Behind the mark a value may begin with a hyphen.
    return [*options, "--", *placed] if any(word.startswith("-") for word in placed) else [*options, *placed]


def _word(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return "" if value is None else str(value)


def run_commands(
    project: Project, commands: Sequence[Command], file: str, *, who: str, trial: bool
) -> list[dict[str, Any]]:
    """Run the commands of a batch as one change set.

    Parameters
    ----------
    project : Project
        Open project.
    commands : sequence of Command
        In their order.
    file : str
        Name of the batch, for messages.
    who : str
        For the journal.
    trial : bool
        Whether it is all taken back at the end.

    Returns
    -------
    list of dict
        Per command: line, verb, what it answered.

    Raises
    ------
    LineRefusedError
        For the first command that is refused; nothing was written.
    """

    def work() -> list[dict[str, Any]]:
        with holding(project):
            return [{"line": each.row, "verb": each.entry.spelling, "result": _done(each, file)} for each in commands]

    return as_one_step(project, f"Batch {file}: {len(commands)} commands", work, who=who, keep=not trial)


def _done(command: Command, file: str) -> Any:
    with apart() as held:
        try:
            with redirect_stdout(io.StringIO()):
                status = command.verb.run(command.arguments)
        except REFUSED as error:
            raise LineRefusedError(file, command.row, f"{command.entry.spelling}: {error}") from error
    if status not in (DONE, FINDINGS):
        said = "; ".join(each["message"] for each in held.problems) or f"status {status}"
        raise LineRefusedError(file, command.row, f"{command.entry.spelling}: {said}")
    return held.result
