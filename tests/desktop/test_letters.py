"""The window's letters come from the package."""

from PySide6.QtGui import QFontDatabase, QFontInfo
from PySide6.QtWidgets import QApplication

from hwsched.desktop import letters
from hwsched.desktop.letters import FAMILY, use_own_letters


def test_the_window_has_the_letters_of_the_pages(qapp):
    assert isinstance(qapp, QApplication)
    before = qapp.font()
    try:
        assert use_own_letters(qapp)
        assert FAMILY in QFontDatabase.families()
        assert QFontInfo(qapp.font()).family() == FAMILY
        assert qapp.font().pointSizeF() == before.pointSizeF()
    finally:
        qapp.setFont(before)


def test_without_the_files_the_system_s_letters_stay(qapp, monkeypatch, tmp_path):
    monkeypatch.setattr(letters, "RESOURCES", tmp_path)
    before = qapp.font().toString()
    assert not use_own_letters(qapp)
    assert qapp.font().toString() == before
