"""Trying a place for the unit: its lock point alone is moved, what forbids the place is said, and nothing is stored.

By hand, as in `test_lock_points`: the plate of 80 x 160 mm stands 29.85 mm from the lock edge and 60 mm below its
cylinder; its window, 10 to 70 by 15 to 60 mm, has to lie over the lead's hole at the backset of 69.85 mm.
"""

import pytest

from hwsched.operations.findings.checking import Checker, look_again, waiver_book
from hwsched.operations.findings.waivers import waive
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.opening.hand_choices import choose_part, place_unit
from hwsched.operations.opening.trial_placement import against_place, place_costs, with_unit_at
from tests.model.states import state
from tests.operations.exact import TODAY, small
from tests.operations.locked import WHO, id_of, yard


@pytest.fixture(scope="module")
def shop(tmp_path_factory):
    """A deadbolt above a lock at 101; it is only read."""
    made = yard(tmp_path_factory.mktemp("shop"))
    yield made
    made.close()


@pytest.fixture(scope="module")
def plain(tmp_path_factory):
    """Two usual openings, for which there is one unit alone; it is only read."""
    with small(tmp_path_factory.mktemp("plain") / "y.hwsched", marks="12") as made:
        yield made


def looked(project, mark):
    (checked,) = look_again(project, [id_of(project, mark)], checker=Checker())
    return checked


def places(checked):
    return [(each.fit.placement.x_mm, each.fit.placement.y_mm, each.fit.placement.source) for each in checked.points]


def against(project, x_mm, y_mm):
    tried = with_unit_at(looked(project, "1"), x_mm, y_mm, Checker(), waiver_book(project, TODAY))
    return {finding.rule for finding in against_place(tried)}


def test_the_unit_of_one_lock_point_is_moved_and_nothing_is_stored(shop):
    before, checked = state(shop), looked(shop, "101")
    lock, bolt = (pytest.approx(29.85), 940, "worked-out"), (pytest.approx(29.85), 1240, "worked-out")
    assert places(checked) == [lock, bolt]
    assert checked.stored
    for more, expected in (
        ({}, [(31.0, 950.0, "by-hand"), bolt]),
        ({"number": 1}, [(31.0, 950.0, "by-hand"), bolt]),
        ({"number": 2}, [lock, (31.0, 950.0, "by-hand")]),
    ):
        tried = with_unit_at(checked, 31.0, 950.0, Checker(), None, **more)
        assert places(tried) == expected
        assert not tried.stored
    assert state(shop) == before


@pytest.mark.parametrize(
    ("x_mm", "y_mm", "covers"),
    [
        # The cylinder is 1000 mm above the floor: its hole is within the window from 940 to 985, and up to 59.85.
        (29.85, 940.0, True),
        (29.85, 985.0, True),
        (59.85, 950.0, True),
        (29.85, 939.9, False),
        (29.85, 985.1, False),
        (59.95, 950.0, False),
    ],
)
def test_the_window_has_to_lie_over_the_hole(plain, x_mm, y_mm, covers):
    assert against(plain, x_mm, y_mm) == (set() if covers else {"plate-covers-hole"})


def test_what_a_place_costs_is_told_as_it_stands_and_as_it_is_tried(plain):
    checked = looked(plain, "1")
    stands = place_costs(checked)
    # The lead's hole, and one screw at each corner of the plate; the lock edge is nearest.
    assert (stands.holes, stands.errors, stands.against) == (5, 0, "")
    assert stands.nearest == ("lock edge", pytest.approx(29.85))
    lead = checked.points[0].fit.cable
    assert (stands.lead_mm, stands.spare_mm) == (lead.length_mm, pytest.approx(228.6 - lead.length_mm))
    tried = place_costs(with_unit_at(checked, 39.85, 950.0, Checker(), None))
    assert (tried.holes, tried.nearest) == (5, ("lock edge", pytest.approx(39.85)))
    assert tried.spare_mm == pytest.approx(228.6 - tried.lead_mm)
    # The window's upper border is 60 mm up the plate: 0.1 mm below the hole.
    low = place_costs(with_unit_at(checked, 29.85, 939.9, Checker(), None))
    assert low.errors == 1
    assert "0.1 mm" in low.against


def test_notes_and_what_is_waived_forbid_no_place(tmp_path):
    """Every usual opening has notes on tools and keys."""
    with small(tmp_path / "y.hwsched", marks="1") as project:
        tried = with_unit_at(looked(project, "1"), 29.85, 950.0, Checker(), None)
        assert tried.findings
        assert against_place(tried) == ()
        one = id_of(project, "1")
        place = {"leaf": "single", "face": "inside", "pattern": "straight", "x_mm": 29.85, "y_mm": 900.0}
        place_unit(project, one, **place, who=WHO)
        fit_openings(project, who=WHO)
        assert [finding.rule for finding in against_place(looked(project, "1"))] == ["plate-covers-hole"]
        waive(project, "plate-covers-hole", person="p", reason="seen", who=WHO, opening_id=one)
        assert against_place(looked(project, "1")) == ()


def test_what_the_whole_project_waives_forbids_no_place_that_is_tried(tmp_path):
    with small(tmp_path / "y.hwsched", marks="1") as project:
        assert against(project, 29.85, 939.9) == {"plate-covers-hole"}
        waive(project, "plate-covers-hole", person="p", reason="seen", who=WHO, scope="project", today=TODAY)
        assert against(project, 29.85, 939.9) == set()
        tried = with_unit_at(looked(project, "1"), 29.85, 939.9, Checker(), waiver_book(project, TODAY))
        (said,) = [finding for finding in tried.findings if finding.rule == "plate-covers-hole"]
        assert (said.waived, said.severity) == (True, "error")
        costs = place_costs(tried)
        assert (costs.errors, costs.against) == (0, "")


def test_a_waiver_of_another_place_forbids_on(tmp_path):
    """It was given for that place: at another one somebody has to decide again, as when the unit has been moved."""
    with small(tmp_path / "y.hwsched", marks="1") as project:
        one = id_of(project, "1")
        place = {"leaf": "single", "face": "inside", "pattern": "straight", "x_mm": 29.85, "y_mm": 900.0}
        place_unit(project, one, **place, who=WHO)
        fit_openings(project, who=WHO)
        waive(project, "plate-covers-hole", person="p", reason="seen", who=WHO, opening_id=one, today=TODAY)
        assert against(project, 29.85, 900.0) == set()
        assert against(project, 29.85, 901.0) == {"plate-covers-hole"}


def test_a_unit_within_the_leaf_or_none_cannot_be_moved(tmp_path):
    with small(tmp_path / "y.hwsched", marks="12") as project:
        choose_part(project, id_of(project, "1"), "unit", "EDGE", who=WHO)
        choose_part(project, id_of(project, "2"), "unit", "EDGE", who=WHO)
        fit_openings(project, [id_of(project, "1")], who=WHO)
        for mark in "12":
            with pytest.raises(ValueError, match="no unit stands on a face"):
                with_unit_at(looked(project, mark), 29.85, 950.0, Checker(), None)
