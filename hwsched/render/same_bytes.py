"""Workbooks that are the same bytes whenever they are written: the library puts the time of writing into each."""

import datetime as dt
import shutil
from pathlib import Path
from typing import IO, Any, Final
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

from openpyxl import Workbook
from openpyxl.writer.excel import ExcelWriter

_EARLIEST: Final = 1980
"""Year from which on an archive can tell the time of an entry."""


class _Archive(ZipFile):
    """An archive of which every entry has one time."""

    def __init__(self, file: IO[bytes], made: dt.datetime) -> None:
        super().__init__(file, "w", ZIP_DEFLATED)
        self._made = (max(made.year, _EARLIEST), made.month, made.day, made.hour, made.minute, made.second)

    def writestr(self, zinfo_or_arcname: Any, data: Any, *_: Any, **__: Any) -> None:
        super().writestr(self._entry(str(zinfo_or_arcname)), data)

    def write(self, filename: Any, arcname: Any = None, *_: Any, **__: Any) -> None:
        with Path(filename).open("rb") as read, self.open(self._entry(str(arcname)), "w") as written:
            shutil.copyfileobj(read, written, 1 << 16)

    def _entry(self, name: str) -> ZipInfo:
        entry = ZipInfo(name, self._made)
        entry.compress_type = ZIP_DEFLATED
        entry.external_attr = 0o600 << 16
        return entry


def save_workbook(book: Workbook, made: dt.datetime, file: IO[bytes]) -> None:
    """Pack a workbook into a file, made and changed at the time that is given."""
    book.properties.created = book.properties.modified = made
    ExcelWriter(book, _Archive(file, made)).save()
