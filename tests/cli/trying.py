"""A command line tried, here or in a process of its own, and what every one of them owes whoever runs it."""

import contextlib
import io
import json
import multiprocessing
import os
import re
import signal
import subprocess
import sys
import tempfile
from collections.abc import Mapping, Sequence
from contextlib import chdir, redirect_stderr, redirect_stdout
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from jsonschema import Draft202012Validator
from sqlalchemy import event
from sqlalchemy.engine import Engine

from hwsched.cli import ENTRIES
from hwsched.cli.answering import named, schema_of
from hwsched.cli.command import run
from hwsched.cli.outermost import run_process
from hwsched.cli.parsing import parser_of
from hwsched.cli.verb import HUNG_UP, INTERRUPTED, STATUSES, TERMINATED
from hwsched.model.project import open_project
from hwsched.operations.project.verifying import verify
from tests.cli.answers import ENVELOPE, closed
from tests.cli.processes import FAILURE_MARKS
from tests.operations.killing import damage, rows

FORKED = multiprocessing.get_context("forkserver")
FORKED.set_forkserver_preload([__name__, "tests.cli.loaded"])
DOCUMENTED = {status for status, _ in STATUSES} | {HUNG_UP, TERMINATED}
PASSED = {0, 1, 5}
LONGEST_S = 120


@dataclass(frozen=True)
class Outcome:
    """How a command line ended."""

    words: Sequence[str]
    status: int
    out: str
    err: str
    apart: bool = True
    """Whether in a process of its own."""
    closed: bool = False
    """Whether standard output leads nowhere."""
    ended: bool = False
    """Whether it was stopped when all was done."""

    def __str__(self) -> str:
        words = " ".join(word if len(word) < 200 else f"{word[:20]}...({len(word)})" for word in self.words)
        return f"hwsched {words}\n  status {self.status}\n  out: {self.out[:600]!r}\n  err: {self.err[-1500:]}"


def run_here(words: Sequence[str], folder: Path) -> Outcome:
    """Run a command line in this process, in a folder, with nothing on standard input."""
    streams = [io.TextIOWrapper(io.BytesIO(), encoding="utf-8", write_through=True) for _ in range(2)]
    held, sys.stdin = sys.stdin, io.TextIOWrapper(io.BytesIO())
    try:
        with chdir(folder), redirect_stdout(streams[0]), redirect_stderr(streams[1]):
            status = run(words)
    finally:
        sys.stdin = held
    out, err = (each.buffer.getvalue().decode("utf-8") for each in streams)
    return Outcome(words, status, out, err, apart=False)


def run_apart(words: Sequence[str], folder: Path, *, to: str = "", env: Mapping[str, str] | None = None) -> Outcome:
    """Run a command line in a process of its own; to: where the shell sends standard output, such as ``| head -0``."""
    line = (
        f'exec "$0" -m hwsched "$@" {to}' if not to.startswith("|") else f'"$0" -m hwsched "$@" {to}; exit $PIPESTATUS'
    )
    done = subprocess.run(
        ["bash", "-c", line, sys.executable, *words],
        cwd=folder,
        env={**os.environ, **(env or {})},
        stdin=subprocess.DEVNULL,
        capture_output=True,
        timeout=LONGEST_S,
        check=False,
    )
    encoding = (env or {}).get("PYTHONIOENCODING", "utf-8")
    return Outcome(words, done.returncode, done.stdout.decode(encoding), done.stderr.decode(encoding), closed=bool(to))


_REACHED = """
import os, sys
from hwsched.__main__ import main
class Asked(dict):
    def __contains__(self, name):
        os.environ = real
        os.write(2, b"up\\n")
        return name in real
real, os.environ = os.environ, Asked()
sys.exit(main())
"""
"""Says so when the entry has asked the environment, which is the first that it does."""


def run_interrupted(words: Sequence[str], folder: Path, after_s: float) -> Outcome:
    """Run a command line in a process of its own, which is told to stop that long after its own code is reached."""
    process = subprocess.Popen(
        [sys.executable, "-c", _REACHED, *words],
        cwd=folder, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True,
    )  # fmt: skip
    assert process.stderr is not None
    assert process.stderr.readline() == "up\n"
    with contextlib.suppress(subprocess.TimeoutExpired):
        process.wait(after_s)
    process.send_signal(signal.SIGINT)
    try:
        out, err = process.communicate(timeout=LONGEST_S)
    except subprocess.TimeoutExpired:
        process.kill()
        process.communicate()
        raise
    if process.returncode == -signal.SIGINT:
        # All is done, and the interpreter is ending: the system itself stops it, which a shell shows so.
        return Outcome(words, INTERRUPTED, out, err, ended=True)
    return Outcome(words, process.returncode, out, err)


def _work(words: Sequence[str], told: str, folder: str, env: Mapping[str, str], at: int) -> None:
    for descriptor, name in ((0, os.devnull), (1, f"{told}/out"), (2, f"{told}/err")):
        opened = os.open(name, os.O_RDWR | os.O_CREAT, 0o600)
        os.dup2(opened, descriptor)
        os.close(opened)
    os.chdir(folder)
    for name in os.environ.keys() - env.keys():
        del os.environ[name]
    os.environ.update(env)
    sys.stdout, sys.stderr = (
        io.TextIOWrapper(io.FileIO(each, "w", closefd=False), encoding="utf-8") for each in (1, 2)
    )
    count = 0

    def step(*_: object) -> None:
        nonlocal count
        count += 1
        if count == at:
            os.kill(os.getpid(), signal.SIGINT)

    if at:
        for name in ("before_cursor_execute", "after_cursor_execute", "commit"):
            event.listen(Engine, name, step)
    sys.exit(run_process(words))


def run_forked(words: Sequence[str], folder: Path, *, env: Mapping[str, str] | None = None, at: int = 0) -> Outcome:
    """Run a command line in a process of its own that need not load the program: it is forked from one that has.

    Parameters
    ----------
    words : sequence of str
        Without the program's name.
    folder : Path
        Where it is run.
    env : mapping, optional
        What is added to the environment of this process.
    at : int
        It is told to stop at that step of its work with the database; 0: it is not.
    """
    with tempfile.TemporaryDirectory() as told:
        process = FORKED.Process(target=_work, args=(words, told, str(folder), {**os.environ, **(env or {})}, at))
        process.start()
        process.join(LONGEST_S)
        assert process.exitcode is not None, f"{words} does not end"
        out, err = (Path(told, name).read_text(encoding="utf-8") for name in ("out", "err"))
    return Outcome(words, process.exitcode, out, err)


def run_interrupted_at(words: Sequence[str], folder: Path, step: int) -> Outcome:
    """Run a command line in a process that is told to stop at a step of its work with the database."""
    told = folder / "told"
    told.mkdir(exist_ok=True)
    return run_forked(words, told, at=step)


@cache
def _validator(spelling: str) -> Draft202012Validator:
    entry = next(each for each in ENTRIES if each.spelling == spelling)
    return Draft202012Validator(closed(schema_of(spelling, named(entry.load().result))))


@cache
def options_of(spelling: str) -> frozenset[str]:
    """Options that a verb has."""
    entry = next(each for each in ENTRIES if each.spelling == spelling)
    return frozenset(flag for each in parser_of(entry, entry.load())._actions for flag in each.option_strings)


_IDENTIFIER = re.compile(r"\b[0-9a-f]{32}\b")
_OF_THE_CODE = re.compile(r"NoneType|Namespace\(|<class|object at 0x|\bErrno\b|sqlite3\.|\(Background on this error")


def complaints(outcome: Outcome, spelling: str, fitting: set[int], *, names_rows: bool = False) -> list[str]:
    """What is wrong with how a command line ended, whatever it was asked for.

    Parameters
    ----------
    outcome : Outcome
        How it ended.
    spelling : str
        Room and verb.
    fitting : set of int
        Statuses that fit what it was asked for.
    names_rows : bool
        What is told may name rows by their identifiers: of a damaged project there is nothing else to name.
    """
    found = []
    if outcome.status not in DOCUMENTED:
        found.append("status is not documented")
    if outcome.status not in fitting:
        found.append(f"status is none of {sorted(fitting)}")
    said = outcome.out + outcome.err
    found += [f"says {mark}" for mark in FAILURE_MARKS if mark in said]
    machine = "--json" in outcome.words and spelling in ENVELOPED
    messages, told = outcome.err, ""
    # Nobody reads a closed pipe, and what is stopped as it begins or cannot write tells people alone.
    silent = not outcome.out and (outcome.closed or outcome.status in (6, 130))
    if machine and not silent:
        try:
            answered = json.loads(outcome.out)
        except ValueError as error:
            found.append(f"standard output is not one JSON value: {error}")
        else:
            found += _of_envelope(answered, spelling, 0 if outcome.ended else outcome.status)
            if isinstance(answered, dict):
                told = "\n".join(str(each.get("message")) for each in answered.get("problems", ()))
    # A window that closes is a word.
    shown = outcome.ended or spelling == "project desktop"
    if outcome.status not in PASSED and not shown and not outcome.err.strip():
        found.append("refused without a word")
    messages += told
    if not names_rows and (match := _IDENTIFIER.search(messages)):
        found.append(f"names an identifier: {match[0]}")
    if match := _OF_THE_CODE.search(messages):
        found.append(f"speaks of the code: {match[0]}")
    # What is printed here does not go through the streams of a process of its own, which shorten it.
    if any(len(line) > 2000 for line in (messages if outcome.apart else told).splitlines()):
        found.append("says a line of more than 2000 letters")
    return found


def _of_envelope(told: Any, spelling: str, status: int) -> list[str]:
    if not isinstance(told, dict) or set(told) != ENVELOPE:
        return ["standard output is no envelope"]
    found = [
        f"is not of its schema: {each.json_path}: {each.message[:300]}"
        for each in _validator(spelling).iter_errors(told)
    ]
    if told["ok"] != (status in PASSED):
        found.append(f"ok is {told['ok']} at status {status}")
    if not told["ok"] and not told["problems"]:
        found.append("not ok without a problem")
    if any(not each["message"] for each in told["problems"]):
        found.append("a problem without a message")
    return found


ENVELOPED = frozenset(
    each.spelling for each in ENTRIES if "--json" in options_of(each.spelling) and not each.load().lines
)
"""Verbs that answer machines by the envelope."""


@dataclass(frozen=True)
class State:
    """A project file as it stands: its bytes, and its rows where it opens."""

    content: bytes | None
    rows: Mapping[tuple, Any] | None

    @property
    def steps(self) -> int:
        """Change sets that it has."""
        return sum(key[0] == "change_set" for key in self.rows or ())


def content_of(path: Path) -> bytes | None:
    """Return the bytes of a file; None where there is none."""
    log = Path(f"{path}-wal")
    if log.exists() and log.stat().st_size:
        return b"log"
    return path.read_bytes() if path.is_file() else None


def state_at(path: Path) -> State:
    """Return the state of a sound project."""
    content = content_of(path)
    with open_project(path) as project:
        return State(content, rows(project))


def left_wrong(path: Path, before: State, *, may_write: bool) -> list[str]:
    """What is wrong with a project that a command line left: it is as before, or whole steps after."""
    if content_of(path) == before.content:
        return []
    with open_project(path) as project:
        held = rows(project)
        if held == before.rows:
            return []
        foreign = verify(project)
    if not may_write:
        return ["something was written"]
    found = [f"changed past the journal: {each}" for each in foreign.sentences()]
    found += [f"damaged: {each}" for each in damage(path)]
    added = [row for key, row in held.items() if key[0] == "change_set" and key not in (before.rows or {})]
    if not added:
        found.append("something was written without a change set")
    for each in added:
        entries = sorted(key[2] for key in held if key[0] == "change_entry" and key[1] == each["number"])
        if entries != list(range(each["entries"])):
            found.append(f"change set {each['number']} is not whole")
    return found
