"""Hashes of files kept from one run to the next, so that a start reads none that is as it was.

A file is taken to be as it was while its place, size, times and number on the disk are: tools that set the time of
change back cannot set the time of the last change of its record back too. One that changed within the last moments
before it was read is never taken for known, since a second change might fall into the same tick of the clock.
"""

import contextlib
import json
import os
import sys
import time
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

Stamp = list[int]
"""Size, time of change, time of the last change of its record, number on the disk."""
_YOUNG_NS = 2_000_000_000
"""The coarsest clock of a file system that is in use ticks every two seconds (FAT)."""


class Memory:
    """What is remembered of one installation.

    Parameters
    ----------
    file : Path or None
        Where what was worked out last is kept, and beside it the hashes of single files; None: nowhere.
    by : str
        What hashes; what another one has kept is not taken.
    """

    def __init__(self, file: Path | None, by: str) -> None:
        self._last = file
        self._single = file.with_suffix(".files.json") if file is not None else None
        self._by = by
        self._now_ns = time.time_ns()
        self._files: Mapping[str, Any] | None = None

    def last(self, about: str) -> Any:
        """Return what was worked out last, where every file and folder that it came from is as it was; else None.

        Parameters
        ----------
        about : str
            What else it came from.
        """
        held = self._read(self._last)
        if held.get("about") != about:
            return None
        try:
            same = all(_stamp(os.stat(path)) == stamp for path, stamp in held["stamps"])
            return held["result"] if same else None
        except (OSError, KeyError, TypeError, ValueError):
            return None

    def file(self, path: str, stamp: Stamp) -> tuple[str, tuple[str, ...]] | None:
        """Return hash and imports of a file that is as it was; else None."""
        if self._files is None:
            self._files = self._read(self._single).get("files", {})
        held = self._files.get(path)
        if not isinstance(held, list) or len(held) != 3 or held[0] != stamp:
            return None
        return str(held[1]), tuple(held[2])

    def keep(
        self,
        about: str,
        result: Any,
        files: Mapping[str, tuple[Stamp, str, tuple[str, ...]]],
        folders: Mapping[str, Stamp],
    ) -> None:
        """Keep what was worked out for the next run; where that cannot be written, nothing is kept.

        Parameters
        ----------
        about, result
            As `last`.
        files : mapping
            Path to stamp, hash, imports.
        folders : mapping
            Path to stamp of the folders that were listed.
        """
        if self._last is None or self._single is None:
            return
        old = {path: each for path, each in files.items() if not self._young(each[0])}
        self._write(self._single, {"files": old})
        if len(old) == len(files) and not any(map(self._young, folders.values())):
            stamps = [*((path, each[0]) for path, each in files.items()), *folders.items()]
            self._write(self._last, {"about": about, "result": result, "stamps": stamps})

    def _young(self, stamp: Stamp) -> bool:
        return max(stamp[1:3]) > self._now_ns - _YOUNG_NS

    def _read(self, file: Path | None) -> Mapping[str, Any]:
        try:
            held = json.loads(file.read_bytes()) if file is not None else {}
        except (OSError, ValueError):
            return {}
        return held if isinstance(held, dict) and held.get("by") == self._by else {}

    def _write(self, file: Path, held: Mapping[str, Any]) -> None:
        draft = file.with_name(f"{file.name}.{os.getpid()}")
        with contextlib.suppress(OSError):
            file.parent.mkdir(parents=True, exist_ok=True)
            try:
                draft.write_text(json.dumps({"by": self._by, **held}, separators=(",", ":")), encoding="utf-8")
                draft.replace(file)
            finally:
                draft.unlink(missing_ok=True)


def stamp_of(path: Path) -> Stamp:
    """Return what tells whether a file is as it was; raises OSError."""
    return _stamp(path.stat())


def _stamp(found: os.stat_result) -> Stamp:
    return [found.st_size, found.st_mtime_ns, found.st_ctime_ns, found.st_ino]


def folder_of_caches(environment: Mapping[str, str] = os.environ) -> Path | None:
    """Return the person's folder for what can be made again at any time; None where there is none."""
    try:
        home = Path.home()
    except RuntimeError:
        return None
    if sys.platform == "win32":
        return Path(environment.get("LOCALAPPDATA") or home / "AppData" / "Local") / "hwsched"
    if sys.platform == "darwin":
        return home / "Library" / "Caches" / "hwsched"
    return Path(environment.get("XDG_CACHE_HOME") or home / ".cache") / "hwsched"


def stamps_of(paths: Iterable[Path]) -> dict[str, Stamp]:
    """Return the stamp of each path by its name; raises OSError."""
    return {str(path): stamp_of(path) for path in paths}
