"""Drives the program by its command line, in a folder of its own, and reads what it answers as JSON."""

import json
import os
import subprocess
import sys
import tempfile
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Final

from tests.verifier.cells import Cells, Opening, write_catalogue, write_survey

ROOT: Final = Path(__file__).resolve().parents[2]


class RefusedError(Exception):
    """The program ended with a status that is no answer."""


class Line:
    """The program, loaded once, that runs one command line after the other in a folder."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        # Nothing of a person's own settings, and no log outside the folder.
        env = os.environ | {"PYTHONPATH": str(ROOT), "HWSCHED_LOG": str(folder / "log"), "QT_QPA_PLATFORM": "offscreen"}
        script = str(Path(__file__).with_name("line.py"))
        self._process = subprocess.Popen(
            [sys.executable, script], cwd=folder, env=env, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
        )

    def run(self, *words: str, allowed: Sequence[int] = (0,)) -> str:
        """Run one command line and return what it printed."""
        written = self.folder / "written.txt"
        sent, answered = self._process.stdin, self._process.stdout
        if sent is None or answered is None:
            raise RefusedError("the process has no streams")
        print(json.dumps([str(written), *words]), file=sent, flush=True)
        status = answered.readline().strip()
        text, said = (Path(f"{written}{end}").read_text(encoding="utf-8") for end in ("", ".said"))
        if status not in map(str, allowed):
            raise RefusedError(f"{' '.join(words)}: status {status or 'none'}\n{text[-2000:]}{said[-2000:]}")
        return text

    def end(self) -> None:
        """End the process."""
        self._process.communicate()


@dataclass
class Project:
    """One project, made once, that takes in catalogues one after the other and answers of openings."""

    line: Line
    parts: dict[str, Cells] = field(default_factory=dict)
    """What its catalogue holds; of a part that a shop no longer has the answer never speaks."""

    def __post_init__(self) -> None:
        self.line.run("project", "new", "v.hwsched", "--name", "Verified", "--bare-unit", "mm")

    def survey(self, openings: list[Opening]) -> None:
        """Take a survey in."""
        write_survey(self.line.folder / "survey.xlsx", openings)
        self.line.run("survey", "import", "v.hwsched", "survey.xlsx", "--as-typed")

    def stock(self, parts: dict[str, Cells]) -> None:
        """Make the catalogue that of another shop: only what differs is written; what it lacks is superseded."""
        changed = {number: part for number, part in parts.items() if self.parts.get(number) != part}
        instead = next(iter(parts))
        for number in set(self.parts) - set(parts):
            gone = {**self.parts[number], "instead": instead}
            if self.parts[number] != gone:
                changed[number] = gone
        if changed:
            write_catalogue(self.line.folder / "parts.xlsx", changed)
            self.line.run("parts", "import", "v.hwsched", "parts.xlsx")
        self.parts = {**self.parts, **changed}

    def answers(self, *marks: str) -> dict[str, Any]:
        """Let the program fit openings, all without marks, and return what it shows, by mark."""
        chosen = ("--mark", ",".join(marks)) if marks else ()
        self.line.run("opening", "fit", "v.hwsched", *chosen, allowed=(0, 1, 5))
        shown = json.loads(self.line.run("opening", "show", "v.hwsched", "--json", *chosen))
        return {opening["mark"]: opening for opening in shown["result"]["openings"]}


@contextmanager
def project() -> Iterator[Project]:
    """Give an empty project in a folder of its own, for as long as it is wanted."""
    with tempfile.TemporaryDirectory(prefix="hwsched-verifier-") as folder:
        line = Line(Path(folder))
        try:
            yield Project(line)
        finally:
            line.end()


def answered(parts: dict[str, Cells], openings: list[Opening]) -> dict[str, Any]:
    """Take a catalogue and a survey in, let the program fit, and return what it shows, by mark."""
    with project() as made:
        made.stock(parts)
        made.survey(openings)
        return made.answers()
