"""Small workbooks of other kinds than .xlsx, written byte by byte: .xls (BIFF 8), .xlsb, .ods."""

import struct
import zipfile
from xml.sax.saxutils import escape

_FREE, _END, _TABLE = 0xFFFFFFFF, 0xFFFFFFFE, 0xFFFFFFFD


def xls(path, cells):
    """Write cells as (row, column, text or number), counted from 0."""
    path.write_bytes(_container(_sheets(cells)))
    return path


def _record(kind, content=b""):
    return struct.pack("<HH", kind, len(content)) + content


def _sheets(cells):
    def begin(what):
        return _record(0x809, struct.pack("<HHHHII", 0x600, what, 0x1000, 0x7CC, 0, 6))

    def bound(place):
        return _record(0x85, struct.pack("<IBBBB", place, 0, 0, 5, 0) + b"Doors")

    head = begin(5)
    sheet = begin(0x10)
    for row, column, value in cells:
        if isinstance(value, str):
            text = struct.pack("<HHHHB", row, column, 0, len(value), 0) + value.encode("latin1")
            sheet += _record(0x204, text)
        else:
            sheet += _record(0x203, struct.pack("<HHHd", row, column, 0, value))
    place = len(head) + len(bound(0)) + 4
    return head + bound(place) + _record(0xA) + sheet + _record(0xA)


def _container(stream):
    stream = stream.ljust(max(4096, -(-len(stream) // 512) * 512), b"\0")
    count = len(stream) // 512
    table = [_TABLE, _END, *range(3, count + 2), _END]
    table += [_FREE] * (128 - len(table))
    head = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + b"\0" * 16 + struct.pack("<HHHHH", 0x3E, 3, 0xFFFE, 9, 6) + b"\0" * 6
    head += struct.pack("<9I", 0, 1, 1, 0, 4096, _END, 0, _END, 0) + struct.pack("<109I", 0, *[_FREE] * 108)

    def entry(name, kind, start, size, child):
        text = name.encode("utf-16-le") + b"\0\0"
        links = struct.pack("<HBBIII", len(text), kind, 1, _FREE, _FREE, child)
        return text.ljust(64, b"\0") + links + b"\0" * 36 + struct.pack("<IQ", start, size)

    directory = entry("Root Entry", 5, _END, 0, 1) + entry("Workbook", 2, 2, len(stream), _FREE)
    return head + struct.pack("<128I", *table) + directory.ljust(512, b"\0") + stream


def xlsb(path, cells, span=(2, 3), empty_row=None):
    """Write cells as (row, column, text or number), by rows; span: how many rows and columns it says to have.

    empty_row: a row behind them in which nothing stands.
    """

    def record(kind, content=b""):
        number = bytes([kind]) if kind < 128 else bytes([kind & 0x7F | 0x80, kind >> 7])
        size, left = b"", len(content)
        while True:
            size += bytes([left & 0x7F | (0x80 if left > 127 else 0)])
            left >>= 7
            if not left:
                return number + size + content

    def wide(text):
        return struct.pack("<I", len(text)) + text.encode("utf-16-le")

    sheet = record(129) + record(148, struct.pack("<4I", 0, span[0] - 1, 0, span[1] - 1)) + record(145)
    at = None
    for row, column, value in cells:
        if row != at:
            sheet += record(0, struct.pack("<IIHHBI", row, 0, 300, 0, 0, 0))
            at = row
        head = struct.pack("<II", column, 0)
        sheet += record(6, head + wide(value)) if isinstance(value, str) else record(5, head + struct.pack("<d", value))
    if empty_row is not None:
        sheet += record(0, struct.pack("<IIHHBI", empty_row, 0, 300, 0, 0, 0))
    sheet += record(146) + record(130)
    bundle = record(156, struct.pack("<II", 0, 1) + wide("rId1") + wide("Doors"))
    kinds = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
    relations = (
        '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">'
        '<Relationship Id="rId1" Type="%s" Target="%s"/></Relationships>'
    )
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as made:
        made.writestr("[Content_Types].xml", "<Types/>")
        made.writestr("_rels/.rels", relations % (f"{kinds}/officeDocument", "xl/workbook.bin"))
        made.writestr("xl/workbook.bin", record(131) + record(143) + bundle + record(144) + record(132))
        made.writestr("xl/_rels/workbook.bin.rels", relations % (f"{kinds}/worksheet", "worksheets/sheet1.bin"))
        made.writestr("xl/worksheets/sheet1.bin", sheet)
    return path


def ods(path, rows, *, repeated=(1, 1), prologue=""):
    """Write rows of texts and numbers; the last row and its last cell stand there as often as `repeated` says."""
    lines = ""
    for number, row in enumerate(rows, 1):
        cells = ""
        for place, text in enumerate(row, 1):
            many = repeated[1] if number == len(rows) and place == len(row) else 1
            kind = ' office:value-type="string"' if text else ""
            if isinstance(text, float):
                kind, text = f' office:value-type="float" office:value="{text!r}"', f"{text:.2f}"
            inner = f"<text:p>{escape(text)}</text:p>" if text else ""
            cells += f'<table:table-cell{kind} table:number-columns-repeated="{many}">{inner}</table:table-cell>'
        many = repeated[0] if number == len(rows) else 1
        lines += f'<table:table-row table:number-rows-repeated="{many}">{cells}</table:table-row>'
    named = "urn:oasis:names:tc:opendocument:xmlns"
    spaces = " ".join(f'xmlns:{short}="{named}:{short}:1.0"' for short in ("office", "table", "text", "manifest"))
    content = (
        f'<?xml version="1.0"?>{prologue}<office:document-content {spaces}><office:body><office:spreadsheet>'
        f'<table:table table:name="Doors">{lines}</table:table>'
        "</office:spreadsheet></office:body></office:document-content>"
    )
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as made:
        made.writestr("mimetype", "application/vnd.oasis.opendocument.spreadsheet")
        made.writestr("content.xml", content)
        made.writestr("META-INF/manifest.xml", f"<manifest:manifest {spaces}/>")
    return path
