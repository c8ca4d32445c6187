"""Drawings as files: of the lock point that is meant, in the project's lengths, a riser of sheets as several files."""

import re

import pytest

from hwsched.choices import POWER_VIEWS
from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.project import open_project
from hwsched.operations.opening import drawing_views
from hwsched.operations.opening.drawing_views import VIEWS, draw
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.power.connecting import connect_openings
from hwsched.operations.project.settings import set_settings
from hwsched.operations.survey.editing import edit_facts
from hwsched.writing import UnwritableError
from tests.once import copied
from tests.operations.exact import small
from tests.operations.locked import id_of, points_of, yard
from tests.operations.powered import WHO, circuit, closet, doors


@pytest.fixture(scope="module")
def shop(tmp_path_factory):
    """A deadbolt above a lock at 101; it is only read."""
    made = yard(tmp_path_factory.mktemp("shop"))
    yield made
    made.close()


@pytest.fixture
def connected(tmp_path):
    """1 hangs on circuit C1 of the supply PS1 in the building Main, 2 on none."""

    def make(path):
        with small(path, marks="") as made:
            ids = doors(made, "12")
            connect_openings(made, circuit(made, closet(made)), [ids["1"]], who=WHO)
            fit_openings(made, who=WHO)

    copied("one connected", tmp_path / "y.hwsched", make)
    with open_project(tmp_path / "y.hwsched") as made:
        yield made


def drawn(project, tmp_path, mark, view, **how):
    path = tmp_path / "out" / f"{view}.svg"
    assert draw(project, mark, view, path, **how) == [path]
    return path.read_text(encoding="utf-8")


@pytest.mark.parametrize("view", ["inside", "detail", "section"])
def test_a_lock_point_is_drawn_by_name_or_number_and_else_the_first(shop, tmp_path, view):
    first, second = points_of(shop, "101")
    of_first, of_second = (drawn(shop, tmp_path, "101", view, point=each) for each in (first, second))
    assert of_first != of_second
    assert drawn(shop, tmp_path, "101", view) == of_first
    assert drawn(shop, tmp_path, "101", view, point="2") == of_second


def test_lengths_are_those_of_the_project(tmp_path):
    """The backset of 69.85 mm is 2 3/4 in."""
    with small(tmp_path / "y.hwsched", marks="1") as project:
        in_mm = drawn(project, tmp_path, "1", "inside")
        set_settings(project, who=WHO, length_style="fraction")
        in_inches = drawn(project, tmp_path, "1", "inside")
    assert ("69.9 mm" in in_mm, "2 3/4" in in_mm) == (True, False)
    assert ("69.9 mm" in in_inches, "2 3/4" in in_inches) == (False, True)


@pytest.mark.parametrize("view", ["inside", "key-side", "all"])
def test_an_opening_is_an_eighth_of_its_size(shop, tmp_path, view):
    """The leaf of 914.4 x 2133.6 mm is 114.3 x 266.7 mm on paper, beside letters of the size of print."""
    sizes = set()
    for points in re.findall(r'<polygon points="([^"]*)"', drawn(shop, tmp_path, "101", view)):
        corners = [tuple(map(float, each.split(","))) for each in points.split()]
        wide, tall = (max(axis) - min(axis) for axis in zip(*corners, strict=True))
        sizes.add((round(wide, 1), round(tall, 1)))
    assert (114.3, 266.7) in sizes


def test_light_is_drawn_unless_dark_is_asked(connected, tmp_path):
    for mark, view in (("1", "inside"), ("Main", "riser"), ("PS1/C1", "voltages"), ("1", "wiring")):
        light, dark = (drawn(connected, tmp_path, mark, view, dark=each) for each in (False, True))
        assert light != dark
        assert drawn(connected, tmp_path, mark, view) == light


def test_each_view_of_power_names_what_it_shows(connected, tmp_path):
    said = {
        view: drawn(connected, tmp_path, name, view)
        for view, name in (("riser", "Main"), ("wiring", "1"), ("voltages", "PS1/C1"))
    }
    assert set(said) == set(POWER_VIEWS)
    assert all("C1" in text for text in said.values())
    assert len(set(said.values())) == 3


def test_sheets_of_a_riser_are_files_beside_each_other(connected, tmp_path, monkeypatch):
    sheets = []

    def three(*asked):
        sheets.extend(real(*asked) * 3)
        return tuple(sheets)

    real = drawing_views.risers
    monkeypatch.setattr(drawing_views, "risers", three)
    draw(connected, "Main", "riser", tmp_path / "out" / "riser.svg")
    assert len(sheets) == 3
    assert {path.name for path in (tmp_path / "out").iterdir()} == {"riser.svg", "riser-2.svg", "riser-3.svg"}


@pytest.mark.parametrize(
    ("name", "view", "word"),
    [
        ("Attic", "riser", "no supply stands in Attic"),
        ("PS1/C9", "voltages", "no circuit PS1/C9 is laid; a circuit is named SUPPLY/CIRCUIT"),
        ("PS9/C1", "voltages", "no circuit PS9/C1"),
        ("2", "wiring", "2 is on no circuit"),
        ("77", "wiring", "77"),
        ("77", "detail", "77"),
    ],
)
def test_what_is_not_there_is_not_drawn(connected, tmp_path, name, view, word):
    with pytest.raises(MissingRowError, match=word):
        draw(connected, name, view, tmp_path / "out" / "x.svg")
    assert not (tmp_path / "out").exists()


def test_what_cannot_be_drawn_says_what_can(connected, tmp_path):
    with pytest.raises(ValueRefusedError) as refused:
        draw(connected, "1", "ceiling", tmp_path / "x.svg")
    assert all(view in str(refused.value) for view in (*VIEWS, *POWER_VIEWS))
    with pytest.raises(UnwritableError, match="svg"):
        draw(connected, "1", "detail", tmp_path / "x.png")
    assert list(tmp_path.glob("x.*")) == []


def test_an_opening_without_a_fit_is_drawn_as_it_stands(connected, tmp_path):
    """Nothing of a unit is drawn: it is not worked out."""
    before = drawn(connected, tmp_path, "1", "inside")
    edit_facts(connected, "opening", id_of(connected, "1"), {"hand": None}, who=WHO)
    assert drawn(connected, tmp_path, "1", "inside") != before


def test_all_views_are_one_sheet_with_the_layers_asked_for(shop, tmp_path):
    every = drawn(shop, tmp_path, "101", "all")
    assert "Inside" in every
    assert "Lock edge" in every
    assert "<title>keep-out" in every or "<title>lock case" in every
    few = drawn(shop, tmp_path, "101", "all", layers=["dimensions"])
    assert "<title>lock case" not in few
    path = tmp_path / "out" / "all.pdf"
    assert draw(shop, "101", "all", path, paper="a4") == [path]
    assert path.read_bytes().startswith(b"%PDF")
