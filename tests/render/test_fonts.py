"""The bundled letters are measured by themselves as the PDF library measures them."""

import pytest
from reportlab.pdfbase.ttfonts import TTFontFile

from hwsched.paths import RESOURCES
from hwsched.render.letter_widths import letter_widths

FONTS = sorted((RESOURCES / "fonts").glob("*.ttf"))


@pytest.mark.parametrize("path", FONTS, ids=lambda path: path.stem)
def test_every_letter_is_as_wide_as_the_pdf_library_sets_it(path):
    read, set_ = letter_widths(path), TTFontFile(str(path))
    assert len(read.widths) > 2000
    assert (read.widths, read.missing) == (set_.charWidths, set_.defaultWidth)


def test_a_table_of_letters_in_another_format_is_refused(tmp_path):
    content = bytearray(FONTS[0].read_bytes())
    at = content.index(b"cmap")
    cmap = int.from_bytes(content[at + 8 : at + 12])
    for entry in range(int.from_bytes(content[cmap + 2 : cmap + 4])):
        record = cmap + 4 + 8 * entry
        start = cmap + int.from_bytes(content[record + 4 : record + 8])
        content[start : start + 2] = (13).to_bytes(2)
    strange = tmp_path / "strange.ttf"
    strange.write_bytes(content)
    with pytest.raises(ValueError, match="format 13"):
        letter_widths(strange)
