"""What documents say is what a person last read and kept: any other word, row, order or width is seen line by line."""

import difflib

import pytest

from tests.documents.kept import FOLDER, every


@pytest.fixture(scope="module")
def now():
    return every()


@pytest.mark.parametrize("name", ["quay", "powered"])
def test_documents_say_what_was_kept(now, name):
    kept = (FOLDER / f"{name}.txt").read_text(encoding="utf-8")
    found = difflib.unified_diff(kept.splitlines(), now[name].splitlines(), "kept", "now", lineterm="", n=1)
    assert kept == now[name], (
        "\n".join([*found][:60]) + "\nread this, and where it is right: python -m tests.documents.kept"
    )


def test_it_is_the_same_on_any_day_and_in_any_folder(now):
    assert not [line for text in now.values() for line in text.splitlines() if "/tmp" in line or "pytest" in line]
    assert all(text.count("====") > 12 for text in now.values())
