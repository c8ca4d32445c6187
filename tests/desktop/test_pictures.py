"""Pictures from contents that came from anywhere: small enough, of a PDF the first page, of what is none nothing."""

import io

import pytest
from PySide6.QtCore import QBuffer, QIODevice, Qt
from PySide6.QtGui import QColor, QImage
from reportlab.pdfgen.canvas import Canvas

from hwsched.desktop.looks.pictures import picture_of


def photograph(wide, tall, kind):
    image = QImage(wide, tall, QImage.Format.Format_RGB32)
    image.fill(QColor(10, 120, 200))
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    assert image.save(buffer, kind)
    return bytes(buffer.data())


@pytest.mark.parametrize("kind", ["JPEG", "PNG"])
def test_a_large_picture_is_read_small_and_keeps_its_shape(qapp, kind):
    shown = picture_of(photograph(800, 400, kind), f"image/{kind.lower()}", 200)
    assert (shown.width(), shown.height()) == (200, 100)
    assert abs(shown.pixelColor(100, 50).blue() - 200) < 5
    assert picture_of(photograph(80, 40, kind), f"image/{kind.lower()}", 200).width() == 80


def test_a_data_sheet_shows_its_first_page(qapp):
    kept = io.BytesIO()
    canvas = Canvas(kept, pagesize=(400, 800))
    canvas.rect(0, 0, 400, 400, fill=1)
    canvas.showPage()
    canvas.showPage()
    canvas.save()
    shown = picture_of(kept.getvalue(), "application/pdf", 400)
    assert (shown.width(), shown.height()) == (200, 400)
    assert shown.pixelColor(100, 390) == QColor(Qt.GlobalColor.black)
    assert shown.pixelColor(100, 10) == QColor(Qt.GlobalColor.white)


@pytest.mark.parametrize("media_type", ["image/png", "image/jpeg", "application/pdf", "text/plain"])
def test_what_is_no_picture_gives_none(qapp, media_type):
    assert picture_of(b"\x89PNG\r\n\x1a\n rest", media_type) is None
