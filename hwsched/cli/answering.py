"""What a verb answers machines: one JSON value, the envelope, whatever comes of the verb.

Verbs hand their result over with `answer`; the runner of the command line prints it when they have ended. The shape:
``ok`` (whether the verb did what it was asked: statuses 0, 1 and 5), ``result`` (the verb's own, described by its
``--schema``; null where there is none), ``problems``, ``change_set`` (the last one that was written; null for none) and
``version`` (of the envelope and all results).
"""

from __future__ import annotations

import sys
from contextlib import contextmanager
from contextvars import ContextVar

from hwsched.cli.verb import DONE, FINDINGS, NOT_JUDGED

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence
    from typing import Any

    from hwsched.model.journal.written import Written

VERSION = 1
"""Of the shape; raised when a name goes or changes its meaning, not when one is added."""
_CARRIED_OUT = (DONE, FINDINGS, NOT_JUDGED)
PROBLEM_FIELDS = ("file", "sheet", "row", "column", "cell", "read", "accepted", "rule", "mark", "message")
"""What a problem may say of itself; what does not apply is null."""


class Answer:
    """What one run of a verb has to tell a machine so far."""

    __slots__ = ("damaged", "problems", "result")

    def __init__(self) -> None:
        self.damaged = False
        """The project could be read in part only."""
        self.result: Any = None
        self.problems: list[dict[str, Any]] = []


_ANSWER: ContextVar[Answer | None] = ContextVar("answer", default=None)


def begin() -> Answer:
    """Begin the answer of a run."""
    begun = Answer()
    _ANSWER.set(begun)
    return begun


@contextmanager
def apart() -> Iterator[Answer]:
    """Take what a verb within another one answers apart from what that answers itself."""
    held = Answer()
    token = _ANSWER.set(held)
    try:
        yield held
    finally:
        _ANSWER.reset(token)


def answer(value: Any) -> None:
    """Hand over the result of the verb that runs."""
    held = _ANSWER.get()
    if held is not None:
        held.result = value


def named_problem(**told: Any) -> dict[str, Any]:
    """Return a problem with all fields; see `PROBLEM_FIELDS`."""
    from hwsched.telling.shortening import shortened

    problem = {name: told.get(name) for name in PROBLEM_FIELDS}
    return {**problem, "message": shortened(str(told.get("message") or ""))}


def add_problem(**told: Any) -> None:
    """Hand over what is wrong, in the fields that apply."""
    held = _ANSWER.get()
    if held is not None:
        held.problems.append(named_problem(**told))


def mark_damaged(message: str) -> None:
    """Note that the project could be read in part only, so that no answer counts as one from all of it."""
    held = _ANSWER.get()
    if held is not None:
        held.damaged = True
        add_problem(message=message)


def add_error(error: BaseException) -> None:
    """Hand over what an exception says: of each cell where it speaks of cells, as a sentence otherwise."""
    from hwsched.telling.masking import masked

    cells: Sequence[Any] = getattr(error, "problems", ())
    for each in cells:
        add_input_problem(each)
    if not cells:
        add_problem(message=masked(str(error)), rule=getattr(error, "rule", None), mark=getattr(error, "mark", None))


def add_input_problem(problem: Any) -> None:
    """Hand over what is said of a cell, a sheet or a file that was not taken."""
    if isinstance(problem, dict):
        add_problem(**problem)
        return
    told = {name: getattr(problem, name, None) or None for name in PROBLEM_FIELDS}
    if told["row"] and told["column"]:
        told["cell"] = f"{told['column']}{told['row']}"
    add_problem(**told)


def envelope(held: Answer, status: int, written: Sequence[Written]) -> Mapping[str, Any]:
    """Return the envelope of a run that ended with a status."""
    return {
        "ok": status in _CARRIED_OUT,
        "result": held.result,
        "problems": held.problems,
        "change_set": written[-1].number if written else None,
        "version": VERSION,
    }


def named(result: object) -> object:
    """Return the type of a result, also where it is only named."""
    if not isinstance(result, str):
        return result
    from importlib import import_module

    module, _, name = result.partition(":")
    found: object = getattr(import_module(module), name)
    return found


def schema_of(title: str, result: object) -> Mapping[str, Any]:
    """Return the JSON Schema of the envelope around results of a type."""
    import msgspec

    problem = msgspec.defstruct(
        "Problem",
        [(name, int | None if name == "row" else str if name == "message" else str | None) for name in PROBLEM_FIELDS],
    )
    of = msgspec.defstruct(
        "Envelope",
        [
            ("ok", bool),
            ("result", None if result is None else result | None),  # type: ignore[operator]
            ("problems", list[problem]),  # type: ignore[valid-type]
            ("change_set", int | None),
            ("version", int),
        ],
    )
    told: dict[str, Any] = _described(msgspec.json.schema(of))
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", "title": title, **told}


def _described(schema: Any) -> Any:
    """Return a schema as every version of the library tells it.

    Descriptions are set as text, without the code's indent; that something is empty by default is left out.
    """
    from inspect import cleandoc

    if isinstance(schema, list):
        return [_described(each) for each in schema]
    if not isinstance(schema, dict):
        return schema
    return {
        name: cleandoc(each) if name == "description" and isinstance(each, str) else _described(each)
        for name, each in schema.items()
        if name != "default" or each not in ({}, [])
    }


_SHORT = 10_000
"""Letters up to which an answer is laid out for the eye: with an indent Python's writer is many times slower."""


def print_value(value: Any) -> None:
    """Print one JSON value; in letters that a console without Unicode can take."""
    import json

    unicode = "utf" in (getattr(sys.stdout, "encoding", None) or "").casefold()
    # Infinity and NaN are no JSON: rather fail here than at whoever reads it.
    text = json.dumps(value, ensure_ascii=not unicode, allow_nan=False, default=_plain)
    if len(text) <= _SHORT:
        text = json.dumps(json.loads(text), indent=1, ensure_ascii=not unicode)
    print(text)


def _plain(value: object) -> Any:
    """Return a record as what JSON holds. Loaded when there is one: lists of plain rows are there sooner."""
    import msgspec

    return msgspec.to_builtins(value)
