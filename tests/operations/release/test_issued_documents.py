"""Documents that are issued: by their names, one an opening, and as far as nobody stops them."""

import pytest

from hwsched.model.errors import ValueRefusedError
from hwsched.operations.release.issued_documents import issue_by_name
from hwsched.operations.release.project_view import project_view
from tests.operations.exact import small


@pytest.fixture(scope="module")
def view(tmp_path_factory):
    """Three usual openings."""
    with small(tmp_path_factory.mktemp("yard") / "y.hwsched", marks="123") as yard:
        return project_view(yard)


def test_who_stops_has_the_sheets_that_were_done(view, tmp_path):
    told = []

    def issued(name, stopped_after):
        told.clear()
        return issue_by_name(
            view, "packets", tmp_path / name, progress=lambda *far: told.append(far),
            cancelled=lambda: len(told) == stopped_after,
        )  # fmt: skip

    whole = [path.name for path in issued("whole", -1)]
    assert (len(whole), told) == (3, [(1, 3), (2, 3), (3, 3)])
    assert [path.name for path in issued("some", 2)] == whole[:2]
    assert told == [(1, 3), (2, 3)]
    assert issued("none", 0) == []
    assert sorted(path.name for path in (tmp_path / "some").rglob("*.pdf")) == sorted(whole[:2])


def test_a_document_that_there_is_not(view, tmp_path):
    with pytest.raises(ValueRefusedError, match=r"there is no 'novel'; accepted: .*packets"):
        issue_by_name(view, "novel", tmp_path)
