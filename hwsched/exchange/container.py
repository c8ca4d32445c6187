"""The container of a workbook, opened with suspicion: what it says it is, how large it gets, whether it is whole.

Here belongs what must be known before a spreadsheet reader may be let at the file: that reader allocates a whole sheet
at once and cannot be stopped. Cells stand in `workbook`.
"""

import io
import re
import zipfile
import zlib
from collections.abc import Iterator
from pathlib import Path, PurePosixPath
from typing import Final
from xml.etree import ElementTree

from hwsched.exchange.problems import FileProblem, InputRejected
from hwsched.stopping import ask_stop

LARGEST_FILE: Final = 200 * 2**20
"""Bytes of a workbook; 10,000 openings by 30 columns take 1.3 MB."""
LARGEST_UNPACKED: Final = 512 * 2**20
LARGEST_SMALL_PART: Final = 24 * 2**20
"""Bytes of a part that is taken as a tree: lists of sheets, styles."""
MOST_SHEETS: Final = 1000
_CHUNK: Final = 4 * 2**20
_SAVE_AS: Final = "a workbook saved as .xlsx"
_OLE: Final = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
_SIGNS: Final[tuple[tuple[bytes, str], ...]] = (
    (b"%PDF", "is a PDF file, not a workbook"),
    (b"{\\rtf", "is a text document, not a workbook"),
    (b"<", "is a web page or XML file, not a workbook"),
    (b"SQLite format 3\x00", "is a database, not a workbook"),
)
_OTHER_ARCHIVES: Final[tuple[tuple[str, str], ...]] = (
    ("xl/workbook.bin", "is a binary workbook (.xlsb)"),
    ("content.xml", "is an OpenDocument file"),
    ("word/document.xml", "is a text document, not a workbook"),
    ("ppt/presentation.xml", "is a presentation, not a workbook"),
)


class Container:
    """The parts of a workbook file, checked as they are read.

    Parameters
    ----------
    path : Path
        The file; it is read once and never written.

    Raises
    ------
    InputRejected
        Where it is no workbook that can be read, or a dangerous one.
    """

    def __init__(self, path: Path) -> None:
        self.file = path.name
        self.content = self._bytes_of(path)
        self._refuse_other_kinds()
        try:
            self._zip = zipfile.ZipFile(io.BytesIO(self.content))
            self._stated = {info.filename: info for info in self._zip.infolist()}
        except (zipfile.BadZipFile, ValueError, OSError, NotImplementedError, EOFError) as error:
            raise self.rejected(f"is damaged: {error}") from None
        self._refuse_by_contents()

    def rejected(self, message: str, accepted: str = _SAVE_AS, sheet: str = "") -> InputRejected:
        """Return the refusal of this file."""
        return InputRejected([FileProblem(self.file, message, sheet, accepted)])

    def _bytes_of(self, path: Path) -> bytes:
        try:
            if path.is_dir():
                raise self.rejected("is a folder", "a workbook (.xlsx)")
            if not path.is_file():
                raise self.rejected("does not exist, or is no ordinary file", "a workbook (.xlsx)")
            with path.open("rb") as stream:
                # Read whole first, and once: what was checked is what is parsed, though somebody saves the file
                # meanwhile. One byte more than is taken tells whether there was more.
                content = stream.read(LARGEST_FILE + 1)
        except (OSError, ValueError) as error:
            reason = error.strerror if isinstance(error, OSError) and error.strerror else error
            raise self.rejected(f"cannot be opened: {reason}", "a workbook that may be read") from None
        if len(content) > LARGEST_FILE:
            raise self.rejected(f"is larger than {LARGEST_FILE // 2**20} MB", "a workbook with the data alone")
        return content

    def _refuse_other_kinds(self) -> None:
        start = self.content[:4096]
        if not self.content:
            raise self.rejected("is empty")
        if start.startswith(b"PK"):
            return
        if start.startswith(_OLE):
            # An encrypted workbook is an OLE file with a stream of this name; an old one holds sheets in it.
            if "EncryptedPackage".encode("utf-16-le") in self.content:
                raise self.rejected("is protected by a password", "a workbook saved without one")
            raise self.rejected("is a workbook of the old kind (.xls), or another old document")
        for sign, message in _SIGNS:
            # Web pages and XML saved as workbooks often begin with a byte order mark or an empty line.
            if start.lstrip(b"\xef\xbb\xbf \r\n\t").startswith(sign):
                raise self.rejected(message)
        if b"\x00" not in start and any(mark in start for mark in (b",", b";", b"\t")):
            raise self.rejected("is a text file (such as CSV), not a workbook", "the same data saved as .xlsx")
        raise self.rejected("is not a workbook")

    def _refuse_by_contents(self) -> None:
        if any(info.flag_bits & 1 for info in self._stated.values()):
            raise self.rejected("is protected by a password", "a workbook saved without one")
        if len({name.casefold() for name in self._stated}) < len(self._zip.infolist()):
            # Two readers of such a file may each see another part.
            raise self.rejected("is damaged: it holds two parts of one name")
        if "xl/workbook.xml" not in self._stated and "_rels/.rels" not in self._stated:
            for name, message in _OTHER_ARCHIVES:
                if name in self._stated:
                    raise self.rejected(message)
            raise self.rejected("is an archive without a workbook in it")
        for name, message in _OTHER_ARCHIVES:
            if name in self._stated and "xl/workbook.xml" not in self._stated:
                raise self.rejected(message)
        # As stated; whether the parts keep to it is seen as they are unpacked.
        unpacked = sum(info.file_size for info in self._stated.values())
        if unpacked > LARGEST_UNPACKED or len(self._stated) > 20000:
            size = f"{unpacked / 2**20:,.0f} MB in {len(self._stated):,} parts"
            raise self.rejected(f"unpacks to {size}, far more than is read", "a workbook with the data alone")

    def names(self) -> list[str]:
        """Return the names of all parts."""
        return list(self._stated)

    def has(self, name: str) -> bool:
        """Tell whether a part is in the file."""
        return name in self._stated

    def chunks(self, name: str) -> Iterator[bytes]:
        """Yield the bytes of a part, checked against its check sum and stated size."""
        left = self._stated[name].file_size if name in self._stated else 0
        try:
            with self._zip.open(name) as stream:
                while chunk := stream.read(_CHUNK):
                    ask_stop()
                    left -= len(chunk)
                    if left < 0:
                        raise self.rejected(f"is damaged: {name} is larger than stated")
                    # A cell takes 32,767 characters; the reader of sheets holds a text whole, however long it is.
                    if len(chunk) == _CHUNK and b"<" not in chunk:
                        raise self.rejected(f"holds a text of more than {_CHUNK >> 20} MB without a cell ({name})")
                    yield chunk
        except KeyError:
            raise self.rejected(f"is damaged: {name} is missing") from None
        except (zipfile.BadZipFile, zlib.error, ValueError, OSError, NotImplementedError, EOFError) as error:
            raise self.rejected(f"is damaged: {error}") from None

    def xml(self, name: str) -> ElementTree.Element:
        """Return a small part as a tree."""
        if name in self._stated and self._stated[name].file_size > LARGEST_SMALL_PART:
            raise self.rejected(f"has a list of more than {LARGEST_SMALL_PART >> 20} MB ({name})")
        content = b"".join(self.chunks(name))
        self.refuse_declarations(name, content)
        try:
            return ElementTree.fromstring(content)
        except ElementTree.ParseError as error:
            raise self.rejected(f"is damaged: {name}: {error}") from None

    def refuse_declarations(self, name: str, content: bytes) -> None:
        """Refuse what no spreadsheet program writes and what a scan of bytes would not see through."""
        # The scans below look for bytes of UTF-8, and would find nothing in UTF-16.
        if b"\x00" in content[:400]:
            raise self.rejected(f"has a part in another encoding than UTF-8 ({name})")
        # Entities that are defined in each other unpack a small file to more than any memory holds.
        if b"<!DOCTYPE" in content or b"<!ENTITY" in content:
            raise self.rejected(f"has a part that defines entities of its own ({name})")

    def workbook_part(self) -> str:
        """Return the name of the part that lists the sheets."""
        for target in self._related("_rels/.rels", PurePosixPath()).values():
            if target[0].endswith("/officeDocument"):
                return target[1]
        return "xl/workbook.xml"

    def sheet_parts(self) -> dict[str, str]:
        """Return the part of each worksheet by its name, in the book's order."""
        book = self.workbook_part()
        folder = PurePosixPath(book).parent
        related = self._related(f"{folder}/_rels/{PurePosixPath(book).name}.rels", folder)
        parts: dict[str, str] = {}
        entries = 0
        for element in self.xml(book).iter():
            if _local(element.tag) == "sheet":
                entries += 1
                if entries > MOST_SHEETS:
                    raise self.rejected(f"has more than {MOST_SHEETS:,} sheets", "a workbook with the data alone")
                identifier = next((v for k, v in element.attrib.items() if _local(k) == "id"), "")
                kind, part = related.get(identifier, ("", ""))
                if kind.endswith("/worksheet"):
                    # Each would be unpacked and read again.
                    if part in parts.values():
                        raise self.rejected("is damaged: two sheets are one and the same part")
                    parts[element.get("name", "")] = part
        return parts

    def related_parts(self, ending: str) -> list[str]:
        """Return the parts of the book of one kind, such as ``/styles``."""
        book = self.workbook_part()
        folder = PurePosixPath(book).parent
        related = self._related(f"{folder}/_rels/{PurePosixPath(book).name}.rels", folder)
        return [part for kind, part in related.values() if kind.endswith(ending) and self.has(part)]

    def _related(self, name: str, folder: PurePosixPath) -> dict[str, tuple[str, str]]:
        if not self.has(name):
            return {}
        related = {}
        for element in self.xml(name).iter():
            # A workbook may name files elsewhere; what is read is the one that was handed over.
            if _local(element.tag) == "Relationship" and element.get("TargetMode") != "External":
                target = element.get("Target", "")
                path = target[1:] if target.startswith("/") else _resolved(folder / target)
                related[element.get("Id", "")] = (element.get("Type", ""), path)
        return related


def _resolved(path: PurePosixPath) -> str:
    parts: list[str] = []
    for part in path.parts:
        if part == "..":
            del parts[-1:]
        elif part != ".":
            parts.append(part)
    return "/".join(parts)


def _local(tag: str) -> str:
    return re.sub(r"\{.*\}", "", tag)
