"""Pages that were looked at go to a printer, by the dialog that the system has for it."""

from pypdf import PdfReader
from PySide6.QtPrintSupport import QPrintDialog
from PySide6.QtWidgets import QComboBox, QLineEdit, QPushButton

from tests.desktop.walk.hands import KEY, Mouse
from tests.desktop.walk.test_opening import line_of

LETTER_PT = (612.0, 792.0)


def test_a_packet_is_looked_at_and_printed_at_its_true_size(hands, at_work, tmp_path):
    target = tmp_path / "packet.pdf"
    hands.line(*line_of(at_work, "M004"))
    hands.command("Documents")
    page = at_work.frame.pages.widgets["documents"]
    assert not page.print_it.isEnabled(), "what was not looked at is not printed"
    item = next(page.names.item(n) for n in range(page.names.count()) if page.names.item(n).text() == "Install packets")
    hands.line(page.names, item)
    hands.press(page.show_it)
    hands.done()
    count = page.view.pages.count
    assert count > 0

    def printer(asked):
        assert isinstance(asked, QPrintDialog)
        (names,) = [each for each in asked.findChildren(QComboBox) if each.objectName() == "printers"]
        hands.box(names, "Print to File (PDF)")
        (file,) = [each for each in asked.findChildren(QLineEdit) if each.objectName() == "filename"]
        hands.field(file, str(target))
        if isinstance(hands, Mouse):
            (go,) = [each for each in asked.findChildren(QPushButton) if each.text().replace("&", "") == "Print"]
            hands.press(go)
        else:
            hands.key(KEY.Key_Return)

    hands.answer(printer)
    hands.press(page.print_it)
    hands.done()
    assert page.told.text() == f"{count} of {count} pages given to the printer"
    printed = PdfReader(target)
    assert len(printed.pages) == count
    for each in printed.pages:
        assert [round(float(side)) for side in sorted(each.mediabox[2:])] == [round(side) for side in LETTER_PT]
