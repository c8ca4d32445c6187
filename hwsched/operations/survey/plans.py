"""Column plans kept under a name: text files in a folder of the person's own, which every project can use.

A plan is found by its name in that folder, or by the path of a file anywhere; who sends one sends a text file.
"""

import os
import re
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Final

from hwsched.exchange.problems import InputRejected
from hwsched.exchange.survey.plan import ENDING, ColumnPlan, read_plan, written
from hwsched.model.errors import ValueRefusedError
from hwsched.writing import made_folder, replacing

_NAME: Final = re.compile(r"[\w][\w .-]{0,59}")


def plans_folder(environment: Mapping[str, str] | None = None) -> Path:
    """Return where plans are kept: ``HWSCHED_PLANS``, else the folder where the system keeps what a person has set."""
    told = os.environ if environment is None else environment
    if told.get("HWSCHED_PLANS"):
        return Path(told["HWSCHED_PLANS"])
    home = told.get("APPDATA") or told.get("XDG_CONFIG_HOME") or str(Path.home() / ".config")
    return Path(home) / "hwsched" / "plans"


def plan_path(named: str) -> Path:
    """Return the file of a plan that is named, or given by its path.

    Raises
    ------
    ValueRefusedError
        For a name that cannot be that of a file.
    """
    if named.casefold().endswith(ENDING) or os.sep in named or "/" in named:
        return Path(named)
    if not _NAME.fullmatch(named):
        raise ValueRefusedError("plan", f"{named!r} can be no name; letters, digits, blanks, points, - and _ are taken")
    return plans_folder() / f"{named}{ENDING}"


def find_plan(named: str) -> ColumnPlan:
    """Return a plan by its name or the path of its file; raises InputRejected or ValueRefusedError."""
    return read_plan(plan_path(named))


def keep_plan(named: str, plan: ColumnPlan) -> Path:
    """Write a plan under a name or to a file, whole or not at all; returns where."""
    path = plan_path(named)
    made_folder(path.parent)
    with replacing(path) as beside:
        beside.write_text(written(plan), encoding="utf-8")
    return path


def list_plans() -> list[tuple[str, Path, ColumnPlan | None]]:
    """Return the plans that are kept under a name: name, file, and the plan; None for a file that is none."""
    folder = plans_folder()
    found: list[tuple[str, Path, ColumnPlan | None]] = []
    try:
        paths = sorted(folder.glob(f"*{ENDING}"))
    except OSError:
        return []
    for path in paths:
        try:
            found.append((path.stem, path, read_plan(path)))
        except InputRejected:
            found.append((path.stem, path, None))
    return found


def edit_plan(named: str, change: Callable[[ColumnPlan], ColumnPlan]) -> Path:
    """Change a plan; returns its file.

    Raises
    ------
    InputRejected
        Where there is none, or what it would say no plan can; nothing is changed then.
    """
    return keep_plan(named, change(find_plan(named)))


def remove_plan(named: str) -> Path:
    """Remove a plan that is kept under a name, or a plan's file; returns where it was."""
    path = plan_path(named)
    # Only what is a plan: a slip of the pen must not cost another file.
    read_plan(path)
    path.unlink()
    return path
