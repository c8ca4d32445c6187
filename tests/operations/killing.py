"""A verb of the command line in a process of its own, killed at a chosen point, and the project that it leaves."""

import importlib
import json
import multiprocessing
import os
import pkgutil
import re
import signal
import sqlite3
import sys
import time
from collections import Counter
from contextlib import closing

from sqlalchemy import event, select
from sqlalchemy.engine import Engine
from sqlalchemy.pool import Pool

from hwsched import operations
from hwsched.cli.command import run
from hwsched.model.project import open_project
from hwsched.model.tables import CHANGE_ENTRY, CHANGE_SET, FIT_CONTENT, JOURNALLED

# Loaded once, in the process from which the others are forked.
for _each in pkgutil.walk_packages(operations.__path__, f"{operations.__name__}."):
    importlib.import_module(_each.name)
FORKED = multiprocessing.get_context("forkserver")
FORKED.set_forkserver_preload([__name__])

_IDENTIFIER = re.compile(r"[0-9a-f]{32}")
_MOMENT = re.compile(r"\d{4}-\d\d-\d\dT[0-9:.+]+")
_OF_THE_MOMENT = ("at", "uuid", "session", "device", "base", "number", "change_set", "target")


def _work(words, at, steps, begun):
    """Run a verb; at that step of its work with the database the process ends as if the power had gone."""
    count = 0

    def step(*_):
        nonlocal count
        count += 1
        steps.value = count
        if count == at:
            os.kill(os.getpid(), signal.SIGKILL)

    for kind, name in (
        (Engine, "before_cursor_execute"), (Engine, "after_cursor_execute"), (Engine, "commit"), (Pool, "checkin"),
    ):  # fmt: skip
        event.listen(kind, name, step)
    with open(os.devnull, "w", encoding="utf-8") as nobody:
        sys.stdout = sys.stderr = nobody
        begun.set()
        os._exit(run(words))


def run_verb(words, at=0, after_s=None):
    """Run a verb; killed at a step, or after a time; returns exit code, steps and seconds."""
    # Without a lock: whoever is killed while it holds one would never give it back.
    steps, begun = FORKED.RawValue("i", 0), FORKED.Event()
    process = FORKED.Process(target=_work, args=(words, at, steps, begun))
    process.start()
    begun.wait(60)
    start = time.monotonic()
    process.join(after_s if after_s is not None else 120)
    if process.is_alive():
        process.kill()
        process.join()
    code = process.exitcode
    process.close()
    return code, steps.value, time.monotonic() - start


def damage(path):
    """What SQLite itself finds wrong with a file."""
    with closing(sqlite3.connect(path)) as database:
        found = [row[0] for row in database.execute("PRAGMA integrity_check")]
        return [text for text in found if text != "ok"] + list(database.execute("PRAGMA foreign_key_check"))


def rows(project):
    """All journalled rows, the journal with them."""
    with project.reading() as connection:
        held = {
            (name, row[0]): dict(row._mapping)
            for name, table in JOURNALLED.items()
            for row in connection.execute(select(table))
        }
        held |= {("change_set", row.number): dict(row._mapping) for row in connection.execute(select(CHANGE_SET))}
        held |= {
            ("change_entry", row.change_set, row.sequence): dict(row._mapping)
            for row in connection.execute(select(CHANGE_ENTRY))
        }
        contents = set(connection.execute(select(FIT_CONTENT.c.key)).scalars())
    # A fit that is pointed to is there.
    assert {row["fit_key"] for (name, *_), row in held.items() if name == "opening_fit"} <= contents
    return held


def alike(held):
    """The same without what differs from run to run: identifiers, and when and where it was written."""
    said = {
        key: json.dumps({n: v for n, v in row.items() if n not in _OF_THE_MOMENT}, default=str, sort_keys=True)
        for key, row in held.items()
    }
    return Counter((key[0], _MOMENT.sub("T", _IDENTIFIER.sub("#", text))) for key, text in said.items())


def state_of(path):
    """Rows and journal of a project that somebody left; it must open, whole."""
    with open_project(path) as project:
        found = rows(project)
    assert damage(path) == []
    return found
