"""Workbooks that are no .xlsx, measured before a spreadsheet reader may be let at them: .ods, .xlsb, .xls.

That reader allocates the rectangle that a sheet's cells span, and a file of some hundred bytes can name a cell four
thousand million columns away. Here belongs how far the cells of a file reach; reading them stands in `grid`.
"""

import io
import struct
import zipfile
import zlib
from collections.abc import Callable, Iterator
from typing import Final
from xml.parsers import expat

OLE: Final = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
_CHUNK: Final = 1 << 20
_END: Final = 0xFFFFFFFA
"""From here on a sector's number is a mark: end of chain, free, of the table itself."""
_SMALL: Final = 4096
_OLD_CELLS: Final = frozenset({0x0006, 0x00BD, 0x00BE, 0x00D6, 0x00FD, 0x0201, 0x0203, 0x0204, 0x0205, 0x027E})
"""Records of .xls that begin with the row and column of a cell."""
_OLD_COLUMNS: Final = 256
_OLD_BEGIN: Final = frozenset({0x0009, 0x0209, 0x0409, 0x0809})
_LAST_BINARY_CELL: Final = 11
"""Records 1 to 11 of a sheet of .xlsb begin with the column of a cell; 0 with the row."""
_EMPTY_BYTES: Final = 64 << 20
"""Text without a tag in it that a part may hold; a cell takes 32,767 characters."""


# Names that are no text and places before the beginning of the file are values to the library, a flag that says that a
# part is encrypted is something that it cannot do at run time.
_DAMAGE: Final = (
    zipfile.BadZipFile, zlib.error, OSError, EOFError, ValueError, RuntimeError, struct.error, IndexError
)  # fmt: skip


class SpanError(ValueError):
    """A workbook that is damaged, or reaches farther than is read."""


def check_span(content: bytes, ending: str, most_cells: int, most_bytes: int) -> None:
    """Refuse a workbook whose cells span too much.

    Parameters
    ----------
    content : bytes
        The whole file.
    ending : str
        ``.ods``, ``.xlsb`` or ``.xls``.
    most_cells : int
        Cells in the rectangles of all sheets together.
    most_bytes : int
        Bytes of the parts that are unpacked.

    Raises
    ------
    SpanError
        With what is wrong, for people.
    """
    if ending == ".xls" or content.startswith(OLE):
        _check_old(content, most_cells)
        return
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as archive:
            unpacked = sum(info.file_size for info in archive.infolist())
            if unpacked > most_bytes:
                raise SpanError(f"unpacks to {unpacked >> 20:,} MB, far more than is read")
            names = [name for name in archive.namelist() if _holds_cells(name, ending)]
            span = 0
            for name in names:
                chunks = _unpacked(archive, name)
                span += _open_document(chunks) if ending == ".ods" else _binary_sheet(b"".join(chunks))
                _check(span, most_cells)
    except SpanError:
        raise
    except _DAMAGE as error:
        raise SpanError(f"is damaged: {error}") from None
    except expat.ExpatError as error:
        raise SpanError(f"is damaged: {error}") from None


def _holds_cells(name: str, ending: str) -> bool:
    return name == "content.xml" if ending == ".ods" else name.startswith("xl/worksheets/") and name.endswith(".bin")


def _check(span: int, most_cells: int) -> None:
    if span > most_cells:
        raise SpanError(f"reaches over {span:,} cells; {most_cells:,} are read")


def _unpacked(archive: zipfile.ZipFile, name: str) -> Iterator[bytes]:
    left = archive.getinfo(name).file_size
    with archive.open(name) as stream:
        while chunk := stream.read(_CHUNK):
            left -= len(chunk)
            if left < 0:
                raise SpanError(f"is damaged: {name} is larger than stated")
            yield chunk


class _Reach:
    """How far the cells of the tables of an OpenDocument file reach."""

    def __init__(self) -> None:
        self.total = self.row = self.column = 0
        self.last_row = self.last_column = 0
        self.rows = self.columns = 1
        self.filled = False

    def start(self, name: str, attributes: dict[str, str]) -> None:
        name = name.rpartition(":")[2]
        if name == "table":
            self.row = self.last_row = self.last_column = 0
        elif name == "table-row":
            self.rows, self.column = _repeated(attributes, "rows"), 0
        elif name in ("table-cell", "covered-table-cell"):
            self.columns = _repeated(attributes, "columns")
            self.filled = any(key.endswith((":value-type", ":formula")) for key in attributes)
        elif name == "p":
            self.filled = True

    def end(self, name: str) -> None:
        name = name.rpartition(":")[2]
        if name in ("table-cell", "covered-table-cell"):
            self.column += self.columns
            if self.filled:
                self.last_column = max(self.last_column, self.column)
                self.last_row = max(self.last_row, self.row + self.rows)
            self.filled = False
        elif name == "table-row":
            self.row += self.rows
        elif name == "table":
            self.total += self.last_row * self.last_column


def _repeated(attributes: dict[str, str], of: str) -> int:
    said = next((value for key, value in attributes.items() if key.endswith(f"number-{of}-repeated")), "1")
    return int(said) if said.isascii() and said.isdigit() and len(said) < 12 else 1


def _open_document(chunks: Iterator[bytes]) -> int:
    reach = _Reach()
    parser = expat.ParserCreate()
    parser.StartElementHandler = reach.start
    parser.EndElementHandler = reach.end
    parser.StartDoctypeDeclHandler = _refuse_declarations
    bare = 0
    for chunk in chunks:
        bare = bare + len(chunk) if b"<" not in chunk else 0
        if bare > _EMPTY_BYTES:
            raise SpanError("holds a cell of many megabytes")
        parser.Parse(chunk, False)
    parser.Parse(b"", True)
    return reach.total


def _refuse_declarations(*_said: object) -> None:
    raise SpanError("has a part that defines entities of its own")


def _binary_sheet(content: bytes) -> int:
    """Return how many cells a sheet of a binary workbook spans."""
    place, row, last_row, last_column = 0, 0, -1, -1
    end = len(content)
    while place < end:
        kind = content[place]
        place += 1
        if kind & 0x80:
            kind = (kind & 0x7F) | (content[place] << 7)
            place += 1
        size = shift = 0
        for _ in range(4):
            byte = content[place]
            place += 1
            size |= (byte & 0x7F) << shift
            shift += 7
            if not byte & 0x80:
                break
        if kind <= _LAST_BINARY_CELL and size >= 4:
            (number,) = struct.unpack_from("<I", content, place)
            if kind == 0:
                row = number
            else:
                last_row, last_column = max(last_row, row), max(last_column, number)
        place += size
    return (last_row + 1) * (last_column + 1)


def _check_old(content: bytes, most_cells: int) -> None:
    try:
        stream = _old_stream(content)
    except (struct.error, IndexError) as error:
        raise SpanError(f"is damaged: {error}") from None
    if stream is None:
        raise SpanError("holds no workbook")
    total, last_row, last_column = 0, -1, -1
    place = 0
    while place + 4 <= len(stream):
        kind, size = struct.unpack_from("<HH", stream, place)
        place += 4
        if kind in _OLD_BEGIN:
            total += (last_row + 1) * (last_column + 1)
            last_row = last_column = -1
        elif kind in _OLD_CELLS and size >= 4 and place + size <= len(stream):
            row, column = struct.unpack_from("<HH", stream, place)
            if kind in (0x00BD, 0x00BE) and size >= 6:
                # Several cells in one record: its last column stands at its end.
                (column,) = struct.unpack_from("<H", stream, place + size - 2)
            if column >= _OLD_COLUMNS:
                raise SpanError("names a cell that no sheet has")
            last_row, last_column = max(last_row, row), max(last_column, column)
        place += size
    _check(total + (last_row + 1) * (last_column + 1), most_cells)


def _old_stream(content: bytes) -> bytes | None:
    """Return the stream of the workbook within an old container; None where it has none."""
    if not content.startswith(OLE):
        raise SpanError("is no workbook of the old kind")
    shift, small_shift = struct.unpack_from("<HH", content, 30)
    if shift not in (9, 12) or small_shift != 6:
        raise SpanError("is damaged: its sectors have an impossible size")
    size = 1 << shift

    def sector(number: int) -> bytes:
        start = (number + 1) << shift
        if start >= len(content):
            raise SpanError("is damaged: it names a sector that is not there")
        return content[start : start + size]

    table: list[int] = []
    numbers = list(struct.unpack_from("<109I", content, 76))
    (more,) = struct.unpack_from("<I", content, 68)
    seen: set[int] = set()
    while more < _END and more not in seen:
        seen.add(more)
        *further, following = struct.unpack(f"<{size // 4}I", sector(more).ljust(size, b"\xff"))
        numbers += further
        more = following
    for number in dict.fromkeys(each for each in numbers if each < _END):
        table += struct.unpack(f"<{size // 4}I", sector(number).ljust(size, b"\xff"))
    (first_directory,) = struct.unpack_from("<I", content, 48)
    directory = _chain(first_directory, table, sector)
    root = found = None
    for place in range(0, len(directory) - 127, 128):
        entry = directory[place : place + 128]
        (length,) = struct.unpack_from("<H", entry, 64)
        name = entry[: max(min(length, 64) - 2, 0)].decode("utf-16-le", "replace").casefold()
        start, stream_size = struct.unpack_from("<II", entry, 116)
        if entry[66] == 5:
            root = start
        elif entry[66] == 2 and name in ("workbook", "book") and found is None:
            found = start, stream_size
    if found is None:
        return None
    if found[1] >= _SMALL or root is None:
        return _chain(found[0], table, sector)[: found[1]]
    inner = _chain(root, table, sector)
    (first_small,) = struct.unpack_from("<I", content, 60)
    packed = _chain(first_small, table, sector)
    small_table = list(struct.unpack(f"<{len(packed) // 4}I", packed[: len(packed) // 4 * 4]))
    return _chain(found[0], small_table, lambda number: inner[number << 6 : (number + 1) << 6])[: found[1]]


def _chain(first: int, table: list[int], sector: Callable[[int], bytes]) -> bytes:
    parts = []
    seen: set[int] = set()
    number = first
    while number < _END:
        if number in seen or number >= len(table):
            raise SpanError("is damaged: its sectors run in a circle or out of it")
        seen.add(number)
        parts.append(sector(number))
        number = table[number]
    return b"".join(parts)
