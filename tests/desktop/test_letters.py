"""The window's letters come from the package."""

from PySide6.QtGui import QFontDatabase, QFontInfo, QFontMetricsF
from PySide6.QtWidgets import QApplication

from hwsched.desktop.looks import letters
from hwsched.desktop.looks.letters import BESIDE, FAMILY, use_own_letters
from hwsched.desktop.looks.tokens import font


def test_the_window_has_the_letters_of_the_package(qapp):
    assert isinstance(qapp, QApplication)
    before = qapp.font()
    try:
        assert use_own_letters(qapp)
        assert {FAMILY, BESIDE} <= set(QFontDatabase.families())
        assert QFontInfo(qapp.font()).family() == FAMILY
        assert qapp.font().pointSizeF() == before.pointSizeF()
    finally:
        qapp.setFont(before)


def test_without_the_files_the_system_s_letters_stay(qapp, monkeypatch, tmp_path):
    monkeypatch.setattr(letters, "RESOURCES", tmp_path)
    before = qapp.font().toString()
    assert not use_own_letters(qapp)
    assert qapp.font().toString() == before


def test_figures_stand_under_one_another(qapp):
    """Numbers in a column are compared by their places: each figure is as wide as every other."""
    before = qapp.font()
    try:
        assert use_own_letters(qapp)
        for bold in (False, True):
            metrics = QFontMetricsF(font(bold=bold, tabular=True))
            assert len({round(metrics.horizontalAdvance(figure), 3) for figure in "0123456789"}) == 1
    finally:
        qapp.setFont(before)
