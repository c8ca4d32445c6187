"""The report of a failure inside the program: a text that a person can read, judge and send.

It holds versions, the place in the code and what the program did last, and nothing of the project: no marks, names or
paths of the person's, and of the failure's own words only those that are not quoted.
"""

import logging
import platform
import re
import sys
import traceback
from datetime import UTC, datetime
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from secrets import token_hex
from typing import Final

from hwsched import __version__
from hwsched.telling.log import last_lines, log_folder
from hwsched.telling.masking import masked, without_person

_PACKAGES: Final = (
    "PySide6-Essentials", "SQLAlchemy", "alembic", "openpyxl", "python-calamine", "pint", "reportlab",
    "pypdfium2", "numpy", "highspy", "psycopg", "platformdirs",
)  # fmt: skip
_QUOTED: Final = re.compile(r"""'[^'\n]*'|"[^"\n]*"|\([^()\n]*\)|\[[^\[\]\n]*\]""")
_KEPT_REPORTS: Final = 20
_LOG: Final = logging.getLogger(__name__)


def crash_report(error: BaseException, doing: str = "") -> str:
    """Write the report of a failure.

    Parameters
    ----------
    error : BaseException
        As it was raised; causes are told too.
    doing : str
        The program's own name for what it was at, such as a verb.

    Returns
    -------
    str
        Lines for people, to be sent as they are.
    """
    packages = ", ".join(f"{name} {_version(name)}" for name in _PACKAGES)
    lines = [
        "hwsched failed inside the program. This report holds nothing of the project; read it before you send it.",
        "",
        f"When      {datetime.now(UTC).isoformat(timespec='seconds')}",
        f"Version   hwsched {__version__}",
        f"Doing     {doing or 'not known'}",
        f"Python    {platform.python_version()} ({sys.implementation.name})",
        f"System    {platform.platform()}",
        f"Packages  {packages}",
        "",
        *_frames(error),
        "",
        "The last that it did:",
        *(last_lines() or ["nothing was logged"]),
    ]
    return without_person(masked("\n".join(lines))) + "\n"


def save_report(text: str) -> Path | None:
    """Put a report beside the log; the oldest make room. None where that folder cannot be written."""
    folder = log_folder() / "reports"
    when = datetime.now(UTC).strftime("%Y%m%d-%H%M%S")
    path = folder / f"report-{when}-{token_hex(2)}.txt"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
        for old in sorted(folder.glob("report-*.txt"))[:-_KEPT_REPORTS]:
            old.unlink(missing_ok=True)
    except OSError:
        _LOG.warning("a report could not be written", exc_info=True)
        return None
    return path


def without_data(error: BaseException) -> str:
    """Return kind and words of a failure without what stands in quotes or brackets: that may be a person's.

    Examples
    --------
    >>> without_data(KeyError("M004")), without_data(ValueError("could not convert string to float: 'thick'"))
    ("KeyError: '...'", "ValueError: could not convert string to float: '...'")
    """
    if type(error).__module__.startswith("hwsched"):
        # Our own errors speak to people, of marks and names.
        return type(error).__name__
    words = _QUOTED.sub(lambda found: f"{found[0][0]}...{found[0][-1]}", str(error).split("\n", 1)[0])
    return f"{type(error).__name__}: {words}" if words else type(error).__name__


def _frames(error: BaseException) -> list[str]:
    lines: list[str] = []
    told: set[int] = set()
    chain: BaseException | None = error
    # Causes can be tied into a circle by hand.
    while chain is not None and id(chain) not in told:
        told.add(id(chain))
        if lines:
            lines += ["", "which came of:"]
        for frame in traceback.extract_tb(chain.__traceback__):
            lines.append(f'  File "{_short(frame.filename)}", line {frame.lineno}, in {frame.name}')
            # What was given to the interpreter to run is no line of a program: it may hold anything.
            lines.append("    ..." if frame.filename.startswith("<") else f"    {frame.line}")
        lines.append(without_data(chain))
        # As Python's own traceback follows it: "from None" says that what came before is no part of the story.
        chain = chain.__cause__ or (None if chain.__suppress_context__ else chain.__context__)
    return lines


def _short(path: str) -> str:
    """Return where a file lies within the installed packages, without the folders above them."""
    for mark in ("site-packages", "hwsched"):
        parts = Path(path).parts
        if mark in parts:
            at = len(parts) - 1 - parts[::-1].index(mark)
            return "/".join(parts[at:])
    return path


def _version(name: str) -> str:
    try:
        return version(name)
    except PackageNotFoundError:
        return "missing"
