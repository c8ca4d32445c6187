"""Project files that nobody means well with: ways in which one may come from a stranger, or from a dying disk."""

import sqlite3
from collections.abc import Callable
from contextlib import closing
from functools import partial
from pathlib import Path

from tests.model.test_stranger import FOREIGN, spoil


def _sql(path: Path, *statements: str) -> None:
    spoil(path, "PRAGMA ignore_check_constraints = ON", *statements)


def _deep(path: Path) -> None:
    deep = '{"a":' * 50_000 + "1" + "}" * 50_000
    _sql(path, f"UPDATE opening SET extra = '{deep}'", f"UPDATE project SET settings = '{deep}'")


def _cycles(path: Path) -> None:
    _sql(
        path,
        "UPDATE part SET superseded_by = number",
        "DELETE FROM kit_content",
        "INSERT INTO kit_content (id, version, part_id, number, quantity) "
        "SELECT lower(hex(randomblob(16))), 1, id, number, 2 FROM part",
        "UPDATE run SET to_node = from_node",
        "UPDATE change_set SET target = number WHERE target IS NOT NULL",
    )


def _garbled(path: Path) -> None:
    with path.open("r+b") as file:
        for page in range(2, 40):
            file.seek(page * 4096 + 100)
            file.write(bytes(range(256)) * 4)


def _cut(path: Path, to: float) -> None:
    with path.open("r+b") as file:
        file.truncate(int(path.stat().st_size * to) if to <= 1 else int(to))


def _folder(path: Path) -> None:
    path.unlink()
    path.mkdir()
    (path / "mine.txt").write_text("mine")


def _loop(path: Path) -> None:
    path.unlink()
    (path.parent / "there.hwsched").symlink_to(path)
    path.symlink_to(path.parent / "there.hwsched")


def _other(path: Path) -> None:
    path.unlink()
    with closing(sqlite3.connect(path)) as database, database:
        database.execute("PRAGMA application_id = 1196444487")
        database.execute("CREATE TABLE opening (id TEXT PRIMARY KEY, mark TEXT)")
        database.execute("INSERT INTO opening VALUES ('1', '1')")


def _text(path: Path) -> None:
    path.write_text("Mark,Hand\n1,LH\n" * 1000)


_DECLARED = (
    "a trigger", "a view", "a view without end in a table's place", "a virtual table", "a generated column",
    "another table", "another index", "rows that push others out",
)  # fmt: skip
_WRITTEN = {
    "text for a number": "UPDATE leaf SET thickness_mm = 'thick'",
    "bytes for text": "UPDATE opening SET notes = x'00ff'",
    "bytes that are no text": "UPDATE opening SET notes = CAST(x'61ff62' AS TEXT)",
    "no number at all": "UPDATE opening SET rise_m = 9e999",
    "broken JSON beside the facts": "UPDATE opening SET extra = '{'",
    "NaN among the attributes": """UPDATE part SET attributes = '{"a":NaN}'""",
    "broken settings": "UPDATE project SET settings = '{limits'",
    "a fit of another form": """UPDATE fit_content SET content = '{"status":"fits","parts":7}'""",
    "no row where one belongs": "DELETE FROM level",
    "another number of projects": "DELETE FROM project",
    "huge text": f"UPDATE opening SET notes = '{'long ' * 400_000}'",
    "text that steers a terminal": "UPDATE opening SET notes = char(27) || '[2J' || char(0x202e), room_to = char(0)",
    "a newer schema": "UPDATE alembic_version SET version_num = '9999'",
    "a change set missing": "DELETE FROM change_set WHERE number = 3",
    "an entry of the journal missing": "DELETE FROM change_entry WHERE change_set = 3",
    "a broken entry of the journal": "UPDATE change_entry SET after = '{'",
}
HOSTILE: dict[str, Callable[[Path], None]] = {
    **{name: partial(lambda path, name: spoil(path, *FOREIGN[name][0]), name=name) for name in _DECLARED},
    **{name: partial(lambda path, statement: _sql(path, statement), statement=each) for name, each in _WRITTEN.items()},
    "JSON without a bottom": _deep,
    "things that follow themselves": _cycles,
    "garbled pages": _garbled,
    "cut in half": partial(_cut, to=0.5),
    "cut in its header": partial(_cut, to=50),
    "empty": partial(_cut, to=0),
    "a folder": _folder,
    "a link to itself": _loop,
    "another application's": _other,
    "a table as text": _text,
}
"""What each does to the file at a path."""
TOLERABLE = frozenset(
    {
        "huge text", "text that steers a terminal", "things that follow themselves", "JSON without a bottom",
        "a change set missing", "an entry of the journal missing", "a broken entry of the journal",
        "a fit of another form", "no row where one belongs",
    }
)  # fmt: skip
"""Ways that leave a file which opens: verbs work on it, or say what they have met."""
DAMAGED = (_WRITTEN.keys() - {"a newer schema"} | {"garbled pages", "cut in half"}) - TOLERABLE
"""Ways that leave a file of ours of which something can be read."""
