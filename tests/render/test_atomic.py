import pytest

from hwsched.render.atomic import replacing


def test_the_file_appears_when_all_is_written(tmp_path):
    path = tmp_path / "a.txt"
    with replacing(path) as beside:
        beside.write_text("new")
        assert beside.parent == tmp_path
        assert not path.exists()
    assert path.read_text() == "new"
    assert list(tmp_path.iterdir()) == [path]


@pytest.mark.parametrize("error", [ValueError, KeyboardInterrupt])
def test_a_failure_keeps_the_old_file_and_nothing_else(tmp_path, error):
    path = tmp_path / "a.txt"
    path.write_text("old")

    def fail():
        with replacing(path) as beside:
            beside.write_text("half")
            raise error

    with pytest.raises(error):
        fail()
    assert path.read_text() == "old"
    assert list(tmp_path.iterdir()) == [path]


def test_a_folder_that_is_not_there_is_an_error(tmp_path):
    with pytest.raises(OSError), replacing(tmp_path / "no" / "a.txt") as beside:
        beside.write_text("x")
