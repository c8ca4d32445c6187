"""The verb `list` of a room: any of its lists as table, records, JSON, JSON lines or CSV; it writes nothing."""

from __future__ import annotations

import sys
from functools import partial
from typing import TYPE_CHECKING, Any, TypedDict

from hwsched.cli.verb import DONE, REJECTED, Verb
from hwsched.operations.lists import ListKind, lists_of

if TYPE_CHECKING:
    import argparse
    from collections.abc import Iterable, Sequence

FORMATS = ("table", "record", "json", "jsonl", "csv")
_WIDEST = 48
# Smaller numbers are told with all their digits: to three places nothing is left of them.
_SMALL = 0.1


class Listed(TypedDict):
    """Rows of a list; every row has the same names."""

    list: str
    row_count: int
    rows: list[dict[str, Any]]


def list_verb(room: str) -> Verb:
    """Return the verb that lists what a room has."""
    kinds = lists_of(room)
    return Verb(partial(_arguments, kinds), partial(_run, kinds), result=Listed, quick=True)


def _arguments(kinds: dict[str, ListKind], parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.scope import add_scope
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument(
        "what",
        choices=list(kinds),
        help="; ".join(f"{each.name}: {each.about}" for each in kinds.values()),
    )
    parser.add_argument(
        "names", nargs="*", metavar="NAME", help="only rows of this name, such as a mark (default: all)"
    )
    parser.add_argument(
        "--format", choices=FORMATS, help="default: a table at the terminal; what the ending of --output says"
    )
    parser.add_argument("-o", "--output", metavar="FILE", default="-", help="file to write (default: standard output)")
    add_scope(parser)


def _run(kinds: dict[str, ListKind], arguments: argparse.Namespace) -> int:
    from pathlib import Path

    from hwsched.cli.answering import add_problem
    from hwsched.cli.scope import is_scoped, openings_asked
    from hwsched.cli.session import opened, print_json
    from hwsched.operations.listing import list_rows

    kind = kinds[arguments.what]
    form = arguments.format or _of_ending(arguments.output)
    if form is None:
        message = f"{arguments.output}: the ending says no format; give one of {', '.join(FORMATS)} with --format"
        print(f"hwsched: {message}", file=sys.stderr)
        add_problem(message=message)
        return REJECTED
    scope = (lambda project: openings_asked(project, arguments)) if is_scoped(arguments) else None
    if scope is not None and not kind.by_opening:
        message = f"{kind.name} are not listed by openings; leave --building, --level, --mark and --where out"
        print(f"hwsched: {message}", file=sys.stderr)
        add_problem(message=message)
        return REJECTED
    rows = list_rows(kind, arguments.project, lambda: opened(arguments), arguments.names, scope)
    missing = [name for name in arguments.names if all(str(row.get(kind.key)) != name for row in rows)]
    if missing:
        message = f"no {kind.key} {', '.join(missing)} among {kind.name}"
        print(f"hwsched: {message}", file=sys.stderr)
        add_problem(message=message)
        return REJECTED
    if arguments.json:
        print_json({"list": kind.name, "row_count": len(rows), "rows": rows})
        return DONE
    text = _TEXTS[form](rows, kind)
    if arguments.output == "-":
        _print(text)
        return DONE
    from hwsched.writing import replacing

    with replacing(Path(arguments.output)) as path:
        path.write_text(text, encoding="utf-8", newline="")
    return DONE


def _print(text: str) -> None:
    if sys.stdout.isatty():
        # What steers the terminal is escaped, line ends that are not its own with it.
        sys.stdout.write(text.replace("\r\n", "\n"))
        return
    # Byte for byte what a file would hold: a program reads it.
    sys.stdout.flush()
    sys.stdout.buffer.write(text.encode("utf-8"))
    sys.stdout.buffer.flush()


def _of_ending(output: str) -> str | None:
    if output == "-" or "." not in output:
        return "table"
    ending = output.rpartition(".")[2].casefold()
    return {"txt": "table", **{form: form for form in FORMATS}}.get(ending)


def _json(rows: Sequence[dict[str, Any]], _: ListKind) -> str:
    import json

    return json.dumps(rows, ensure_ascii=False, allow_nan=False) + "\n"


def _json_lines(rows: Iterable[dict[str, Any]], _: ListKind) -> str:
    import json

    return "".join(json.dumps(row, ensure_ascii=False, allow_nan=False) + "\n" for row in rows)


def _csv(rows: Sequence[dict[str, Any]], _: ListKind) -> str:
    import csv
    import io

    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    names = _names(rows)
    writer.writerow(names)
    writer.writerows([_cell(row.get(name)) for name in names] for row in rows)
    return text.getvalue()


def _cell(value: object) -> object:
    """Return a value as a cell of a table of text."""
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, list):
        return "; ".join(str(each) for each in value)
    if isinstance(value, dict):
        return "; ".join(f"{name}={each}" for name, each in value.items())
    return f"{value:.10g}" if isinstance(value, float) else value


def _told(value: object) -> object:
    """Return a value as people read it: what is worked out to nine places is told to three; files have it whole."""
    if isinstance(value, dict):
        return "; ".join(f"{name}={_told(each)}" for name, each in value.items())
    if isinstance(value, float) and abs(value) >= _SMALL:
        return f"{round(value, 3):.10g}"
    return _cell(value)


def _names(rows: Sequence[dict[str, Any]]) -> list[str]:
    return list(rows[0]) if rows else []


def _table(rows: Sequence[dict[str, Any]], kind: ListKind) -> str:
    if not rows:
        return f"No rows: {kind.name}.\n"
    names = list(kind.first) or _names(rows)
    cells = [[name.replace("_", " ") for name in names]]
    cells += [[_short(_told(row.get(name))) for name in names] for row in rows]
    wide = [max(len(line[place]) for line in cells) for place in range(len(names))]
    numbers = [all(isinstance(row.get(name), int | float | None) for row in rows) for name in names]
    lines = []
    for line in cells:
        aligned = [
            text.rjust(width) if number else text.ljust(width)
            for text, width, number in zip(line, wide, numbers, strict=True)
        ]
        lines.append("  ".join(aligned).rstrip())
    return "\n".join(lines) + "\n"


def _short(value: object) -> str:
    text = " ".join(str(value).split())
    return text if len(text) <= _WIDEST else text[: _WIDEST - 3] + "..."


def _records(rows: Sequence[dict[str, Any]], kind: ListKind) -> str:
    if not rows:
        return f"No rows: {kind.name}.\n"
    wide = max(len(name) for name in _names(rows))
    return "\n".join(
        "".join(f"{name.replace('_', ' '):<{wide}}  {_told(value)}\n" for name, value in row.items()) for row in rows
    )


_TEXTS = {"table": _table, "record": _records, "json": _json, "jsonl": _json_lines, "csv": _csv}
