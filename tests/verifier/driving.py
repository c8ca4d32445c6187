"""Drives the program by its command line, in a folder of its own, and reads what it answers as JSON."""

import json
import os
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Any, Final

from tests.verifier.cells import Cells, Opening, write_catalogue, write_survey

ROOT: Final = Path(__file__).resolve().parents[2]


class RefusedError(Exception):
    """The program ended with a status that is no answer."""


def _run(folder: Path, *words: str, allowed: Sequence[int] = (0,)) -> str:
    # Nothing of a person's own settings, and no log outside the folder.
    env = os.environ | {"PYTHONPATH": str(ROOT), "HWSCHED_LOG": str(folder / "log"), "QT_QPA_PLATFORM": "offscreen"}
    done = subprocess.run(
        [sys.executable, "-m", "hwsched", *words], cwd=folder, env=env, capture_output=True, text=True, check=False
    )
    if done.returncode not in allowed:
        raise RefusedError(f"{' '.join(words)}: status {done.returncode}\n{done.stdout[-2000:]}{done.stderr[-2000:]}")
    return done.stdout


def answered(folder: Path, parts: dict[str, Cells], openings: list[Opening]) -> dict[str, Any]:
    """Take a catalogue and a survey in, let the program fit, and return what it shows, by mark."""
    write_catalogue(folder / "parts.xlsx", parts)
    write_survey(folder / "survey.xlsx", openings)
    _run(folder, "project", "new", "v.hwsched", "--name", "Verified", "--bare-unit", "mm")
    _run(folder, "parts", "import", "v.hwsched", "parts.xlsx")
    _run(folder, "survey", "import", "v.hwsched", "survey.xlsx", "--as-typed")
    _run(folder, "opening", "fit", "v.hwsched", allowed=(0, 1, 5))
    shown = json.loads(_run(folder, "opening", "show", "v.hwsched", "--json"))
    return {opening["mark"]: opening for opening in shown["result"]["openings"]}
