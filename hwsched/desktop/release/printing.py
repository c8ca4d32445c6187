"""Pages to a printer, at their true size: a template that is drawn to be drilled by must not be scaled."""

from typing import Final

from PySide6.QtCore import QMarginsF, QRectF, QSizeF
from PySide6.QtGui import QPageLayout, QPageSize, QPainter
from PySide6.QtPrintSupport import QPrinter

from hwsched.desktop.jobs.jobs import Cancelled, Progress
from hwsched.desktop.looks.pictures import image_of
from hwsched.render.pdf_pages import PdfPages

_MOST_DPI: Final = 300
"""Of the picture of a page; printers that can do more do not need it for lines and letters."""
_INCH_MM: Final = 25.4


def print_pages(
    pages: PdfPages, wanted: range, printer: QPrinter, progress: Progress, cancelled: Cancelled
) -> tuple[int, bool]:
    """Print pages, each on paper of its own size; returns how many, and whether the printer took them.

    It touches no widget, so it runs off the screen's thread.
    """
    printer.setFullPage(True)
    painter = QPainter()
    done = 0
    for page in wanted:
        if cancelled():
            break
        _paper(printer, *pages.sizes[page])
        started = painter.begin(printer) if not done else printer.newPage()
        if not started:
            return done, False
        _draw(painter, printer, pages, page)
        done += 1
        progress(done, len(wanted))
    return done, painter.end() if done else True


def _paper(printer: QPrinter, wide: float, tall: float) -> None:
    upright = wide <= tall
    size = QPageSize(
        QSizeF(min(wide, tall), max(wide, tall)), QPageSize.Unit.Millimeter, "", QPageSize.SizeMatchPolicy.FuzzyMatch
    )
    way = QPageLayout.Orientation.Portrait if upright else QPageLayout.Orientation.Landscape
    printer.setPageLayout(QPageLayout(size, way, QMarginsF(), QPageLayout.Unit.Millimeter))
    printer.setFullPage(True)


def _draw(painter: QPainter, printer: QPrinter, pages: PdfPages, page: int) -> None:
    dpi = printer.resolution()
    image = image_of(pages.picture(page, min(dpi, _MOST_DPI) / _INCH_MM))
    wide, tall = (each * dpi / _INCH_MM for each in pages.sizes[page])
    painter.drawImage(QRectF(0, 0, wide, tall), image)
