import pytest

from hwsched.drawings.not_drawn import unknown_drawing
from hwsched.drawings.opening.edge_view import edge_view
from hwsched.drawings.opening.elevation import elevation
from hwsched.drawings.opening.section import section
from hwsched.render.scale import DENOMINATORS, fit_row, fit_views, scale_bar
from tests.drawings.openings import ALL, FIT, GIVEN

FACES = ("inside", "key")


@pytest.mark.parametrize(
    ("name", "room"),
    [
        (name, room)
        for name in ALL
        for room in ((188.0, 110.0), (120.0, 60.0), (260.0, 200.0))
        if name != "pair" or room[0] > 180.0  # the words beside a pair alone are wider than the small room
    ],
)
def test_views_fit_at_a_standard_scale_and_the_next_larger_does_not(name, room):
    drawings = [elevation(*ALL[name], face) for face in FACES]
    row = fit_row(drawings, *room)
    assert row.denominator in DENOMINATORS
    assert row.wide + 6.0 <= room[0]
    assert row.tall <= room[1]
    larger = DENOMINATORS[DENOMINATORS.index(row.denominator) - 1]
    wide = sum(d.bounds[2] - d.bounds[0] for d in drawings) / larger
    around = row.wide - sum(d.bounds[2] - d.bounds[0] for d in drawings) / row.denominator
    tall = max(d.bounds[3] - d.bounds[1] for d in drawings) / larger
    assert wide + around > (room[0] - 6.0) * 0.9 or tall > room[1] * 0.6


def test_floors_of_views_at_one_scale_stand_on_one_level():
    row = fit_row([elevation(GIVEN, FIT, face) for face in FACES], 188.0, 110.0)
    assert len(set(row.tops)) == 1


def test_a_pair_gets_a_row_for_each_face():
    rows = fit_views([elevation(*ALL["pair"], face) for face in FACES], 188.0, 110.0)
    assert len(rows) == 2
    assert rows[0].denominator == rows[1].denominator <= 30.0


def test_views_of_own_scale_share_the_width():
    (row,) = fit_views([section(GIVEN, FIT), edge_view(GIVEN, FIT)], 188.0, 90.0, same_scale=False)
    assert len({view.scale for view in row.views}) == 2
    # Both together; what one leaves of its half the other may take.
    assert sum(view.extent[2] - view.extent[0] for view in row.views) <= 182.0


def test_words_do_not_decide_the_scale():
    alone = fit_row([elevation(GIVEN, FIT, "key")], 188.0, 110.0)
    both = fit_row([elevation(GIVEN, FIT, "key"), unknown_drawing("x", ["unknown: needs y"])], 260.0, 110.0)
    assert both.denominator == alone.denominator


@pytest.mark.parametrize("unit", ["in", "mm"])
@pytest.mark.parametrize("denominator", [0.5, 1, 2, 2.5, 5, 10, 20, 30, 50, 75, 100])
def test_a_scale_bar_is_as_long_as_it_says(denominator, unit):
    long, words = scale_bar(1 / denominator, unit)
    said = float(words.removesuffix(" mm").removesuffix('"')) * (25.4 if unit == "in" else 1.0)
    assert long * denominator == pytest.approx(said)
    # Long enough to be laid against, short enough to stand beside the scale; half an inch at 2:1 is the shortest.
    assert 5.0 <= long <= (14.0 if denominator >= 1 else 26.0)


def test_a_view_gets_more_height_rather_than_a_scale_at_which_it_says_nothing():
    drawn = section(GIVEN, FIT)
    assert drawn.coarsest == 5.0
    # Room for the letters about it and little more: by its height alone it would come out at 1:15 or smaller.
    (small,) = fit_views([drawn], 98.0, 22.0, most_mm=250.0)
    (held,) = fit_views([drawn], 98.0, 22.0, most_mm=250.0, coarse=1.0)
    (twice,) = fit_views([drawn], 98.0, 22.0, most_mm=250.0, coarse=2.0)
    assert small.denominator > 5.0
    assert held.denominator <= 5.0
    assert held.denominator <= twice.denominator <= 10.0
    assert held.tall > small.tall


def test_a_wide_view_goes_coarser_where_the_page_is_too_narrow():
    drawn = section(GIVEN, FIT)
    (row,) = fit_views([drawn], 45.0, 300.0, coarse=1.0)
    assert row.denominator > 5.0
