"""Kinds of files by how they begin, whatever their names say."""

import doctest
import io
import zipfile

import pytest
from openpyxl import Workbook
from PIL import Image

from hwsched.exchange import media_types
from hwsched.exchange.media_types import UNKNOWN, media_type_of
from hwsched.paths import SAMPLE


def test_docs():
    assert doctest.testmod(media_types).failed == 0


@pytest.mark.parametrize(
    ("form", "kind"),
    [
        ("PNG", "image/png"),
        ("JPEG", "image/jpeg"),
        ("GIF", "image/gif"),
        ("TIFF", "image/tiff"),
        ("BMP", "image/bmp"),
        ("WEBP", "image/webp"),
        ("PDF", "application/pdf"),
    ],
)
def test_what_another_library_writes_is_recognised(form, kind):
    held = io.BytesIO()
    Image.new("RGB", (8, 8), "white").save(held, form)
    assert media_type_of(held.getvalue()) == kind


def test_workbooks_and_other_archives():
    book, plain = io.BytesIO(), io.BytesIO()
    Workbook().save(book)
    with zipfile.ZipFile(plain, "w") as archive:
        archive.writestr("xl/notes.txt", "no workbook")
    assert media_type_of(book.getvalue()).endswith("spreadsheetml.sheet")
    assert media_type_of((SAMPLE / "survey.xlsx").read_bytes()).endswith("spreadsheetml.sheet")
    assert media_type_of(plain.getvalue()) == "application/zip"


@pytest.mark.parametrize(
    ("content", "kind"),
    [
        (b"<svg xmlns='http://www.w3.org/2000/svg'/>", "image/svg+xml"),
        (b"\xef\xbb\xbf<?xml version='1.0'?>\n<svg/>", "image/svg+xml"),
        ("Tür 12, von innen".encode(), "text/plain"),
        ("Tür 12".encode("latin-1"), UNKNOWN),
        (b"\x00\x00\x00\x18ftypheic\x00\x00", "image/heic"),
        (b"\x00\x00\x00\x18ftypisom\x00\x00", "video/mp4"),
        (b"\x89PN", UNKNOWN),
        (b"", UNKNOWN),
    ],
)
def test_other_beginnings(content, kind):
    assert media_type_of(content) == kind
