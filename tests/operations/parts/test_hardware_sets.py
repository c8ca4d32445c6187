"""Hardware sets: proposed from fits that are there, kept by every fit, overridden in sight, changed with a preview."""

from collections import Counter
from dataclasses import replace

import pytest

from hwsched.model.errors import DuplicateValueError, MissingRowError, ValueRefusedError
from hwsched.model.project import open_project
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.opening.hand_choices import choose_part, release_part
from hwsched.operations.parts.hardware_sets import (
    PROPOSED_ROLES,
    Line,
    accept_sets,
    assign_set,
    change_set_lines,
    effect_between,
    effect_of_lines,
    hardware_sets,
    lines_of,
    make_set,
    propose_sets,
    remove_set,
    set_named,
)
from hwsched.operations.project.history import undo
from hwsched.operations.release.project_view import project_view
from tests.model.states import state
from tests.operations.exact import id_of, small
from tests.operations.powered import more_parts
from tests.rules.scenario import catalogue

WHO = "ann"
UNIT = Line("unit", "UNIT")
EDGE = Line("unit", "EDGE")


@pytest.fixture
def yard(tmp_path):
    made = small(tmp_path / "y.hwsched", marks="1234")
    yield made
    made.close()


def fits(project):
    return {each.given.opening.mark: each.fit for each in check_openings(project)}


def carried(found):
    """Parts as role, number, quantity: who chose them left out."""
    return Counter((p.role, p.part, p.quantity) for p in found.parts)


def refit(project):
    return fit_openings(project, who=WHO)[0]


def ids(project, marks):
    return [id_of(project, mark) for mark in marks]


# --- proposed -------------------------------------------------------------------------------------------------------


def test_proposed_and_accepted_the_sample_keeps_its_parts(sample_file):
    with open_project(sample_file) as project:
        before = fits(project)
        proposed = propose_sets(project)
        sizes = [len(each.openings) for each in proposed]
        assert sizes == sorted(sizes, reverse=True)
        assert min(sizes) >= 2
        assert sum(sizes) > 60
        assert len({each.name for each in proposed}) == len(proposed)
        members = [mark for each in proposed for mark in each.marks]
        assert len(set(members)) == len(members)
        for each in proposed:
            assert {line.role for line in each.lines} <= set(PROPOSED_ROLES)
            for mark in each.marks:
                assert sorted(lines_of(before[mark]), key=str) == sorted(each.lines, key=str)
        assert accept_sets(project, proposed, who=WHO).openings == {i for each in proposed for i in each.openings}
        refit(project)
        after = fits(project)
        for each in proposed:
            held = {(line.role, line.part) for line in each.lines}
            for mark in each.marks:
                assert after[mark].status == "fits"
                assert carried(after[mark]) == carried(before[mark]), mark
                assert after[mark].placement == before[mark].placement
                assert after[mark].holes == before[mark].holes
                for fit_part in after[mark].parts:
                    assert fit_part.source == ("set" if (fit_part.role, fit_part.part) in held else "worked-out")
        unassigned = {mark for mark in before if mark not in members}
        assert all(after[mark] == before[mark] for mark in unassigned)
        # What has a set is not proposed again, and what is proposed next has a name of its own.
        names = {each.name for each in proposed}
        again = propose_sets(project, at_least=1)
        assert not {mark for each in again for mark in each.marks} & set(members)
        assert not {each.name for each in again} & names


def test_how_many_make_a_set(yard):
    choose_part(yard, id_of(yard, "4"), "unit", "EDGE", who=WHO)
    refit(yard)
    (three,) = propose_sets(yard)
    assert three.marks == ("1", "2", "3")
    three, one = propose_sets(yard, at_least=1)
    assert (three.name, one.name, one.marks) == ("HS-01", "HS-02", ("4",))
    assert propose_sets(yard, at_least=4) == ()
    assert propose_sets(yard, ids(yard, "12"))[0].marks == ("1", "2")
    make_set(yard, "HS-01", [UNIT], who=WHO)
    assert propose_sets(yard)[0].name == "HS-02"
    assert accept_sets(yard, [], who=WHO).number is None


# --- by hand --------------------------------------------------------------------------------------------------------


def test_a_set_decides_and_an_opening_overrides_it_in_sight(yard):
    before = fits(yard)["4"]
    changes, _ = make_set(yard, " HS  A ", [EDGE, Line("cam", "CAM")], who=WHO, notes="n", openings=ids(yard, "123"))
    assert changes.openings == set(ids(yard, "123"))
    assert all(each.fit is None for each in check_openings(yard, ids(yard, "123")))
    refit(yard)
    for mark in "123":
        assert {p.role: p.source for p in fits(yard)[mark].parts if p.source != "worked-out"} == {
            "unit": "set", "cam": "set",
        }  # fmt: skip
    assert fits(yard)["4"] == before
    choose_part(yard, id_of(yard, "2"), "unit", "UNIT", who=WHO)
    held = set_named(yard, "HS A")
    assert (held.marks, dict(held.overridden), held.notes) == (("1", "2", "3"), {"2": ("unit",)}, "n")
    refit(yard)
    two = {p.role: (p.part, p.source) for p in fits(yard)["2"].parts}
    assert (two["unit"], two["cam"]) == (("UNIT", "by-hand"), ("CAM", "set"))
    assert {p.part for p in fits(yard)["1"].parts if p.role == "unit"} == {"EDGE"}
    release_part(yard, id_of(yard, "2"), "unit", who=WHO)
    refit(yard)
    assert fits(yard)["2"] == fits(yard)["1"]
    assert project_view(yard).openings[0].set_name == "HS A"


def test_a_changed_set_shows_first_what_it_changes(yard):
    _, held = make_set(yard, "A", [EDGE], who=WHO, openings=ids(yard, "123"))
    choose_part(yard, id_of(yard, "3"), "unit", "EDGE", who=WHO)
    refit(yard)
    before, rows = fits(yard), state(yard)
    effects = effect_of_lines(yard, held, [UNIT])
    assert state(yard) == rows
    # 3 decides for itself.
    assert [each.mark for each in effects] == ["1", "2"]
    assert all("unit UNIT" in each.new and "unit EDGE" in each.gone for each in effects)
    assert change_set_lines(yard, held, [UNIT], who=WHO).openings == set(ids(yard, "123"))
    refit(yard)
    after = fits(yard)
    really = [effect_between(mark, before[mark], after[mark]) for mark in "1234"]
    assert tuple(each for each in really if each is not None) == effects
    assert effect_of_lines(yard, held, [UNIT]) == ()
    for _ in range(2):
        undo(yard, who=WHO)
    assert fits(yard) == before


def test_what_no_longer_fits_says_why(yard):
    usual = catalogue().get("CYL")
    more_parts(yard, replace(usual, number="LONG", attributes={**usual.attributes, "length_mm": 60.0}))
    _, held = make_set(yard, "A", [Line("cylinder", "CYL")], who=WHO, openings=ids(yard, "12"))
    refit(yard)
    effects = effect_of_lines(yard, held, [Line("cylinder", "LONG")])
    assert [each.mark for each in effects] == ["1", "2"]
    for each in effects:
        assert "cylinder LONG" in each.new
        # 60 mm of shell less half of the leaf of 44.45, a collar of 3.175, the three rings of 1.5875 that are the most,
        # and two turns of 1/32 in: 28.25 mm are left.
        assert "28.3 mm off its collar" in each.why
    change_set_lines(yard, held, [Line("cylinder", "LONG")], who=WHO)
    refit(yard)
    # Kept since it is chosen, and the rules say that it stands proud.
    (one,) = check_openings(yard, ids(yard, "1"))
    assert one.fit.part("cylinder").part == "LONG"
    assert any(f.severity == "error" and f.discipline == "lock-and-cylinder" for f in one.findings)


def test_assigned_freed_removed(yard):
    before = fits(yard)
    _, first = make_set(yard, "A", [EDGE], who=WHO)
    _, second = make_set(yard, "B", [UNIT], who=WHO)
    assign_set(yard, first, ids(yard, "12"), who=WHO)
    assign_set(yard, second, ids(yard, "2"), who=WHO)
    assert [(each.name, each.marks) for each in hardware_sets(yard)] == [("A", ("1",)), ("B", ("2",))]
    assign_set(yard, None, ids(yard, "2"), who=WHO)
    assert set_named(yard, "B").openings == ()
    refit(yard)
    assert fits(yard)["1"].part("unit").part == "EDGE"
    assert remove_set(yard, first, who=WHO).openings == set(ids(yard, "1"))
    refit(yard)
    assert fits(yard) == before
    undo(yard, who=WHO)
    undo(yard, who=WHO)
    assert set_named(yard, "A").marks == ("1",)
    # The fit that was made for the set is in force again.
    assert fits(yard)["1"].part("unit").part == "EDGE"


def test_one_step_each(yard):
    before = state(yard)
    make_set(yard, "A", [EDGE, Line("cam", "CAM")], who=WHO, openings=ids(yard, "123"))
    undo(yard, who=WHO)
    assert state(yard) == before
    accept_sets(yard, propose_sets(yard), who=WHO)
    undo(yard, who=WHO)
    assert state(yard) == before


def test_sets_are_counted_as_people_count(yard):
    for name in ("HS-10", "HS-9", "HS-1"):
        make_set(yard, name, [UNIT], who=WHO)
    assert [each.name for each in hardware_sets(yard)] == ["HS-1", "HS-9", "HS-10"]


BAD_LINES = {
    "no line": ([], "at least one line"),
    "no such role": ([Line("hat", "CYL")], "'hat' is no role"),
    "no such part": ([Line("unit", "NONE")], "no part 'NONE'"),
    "none of it": ([Line("unit", "UNIT", 0.0)], "0 of UNIT"),
    "not a number": ([Line("unit", "UNIT", float("nan"))], "of UNIT cannot be"),
    "twice": ([UNIT, UNIT], "stands twice"),
}


@pytest.mark.parametrize("name", BAD_LINES)
def test_lines_that_cannot_be_are_refused_everywhere(yard, name):
    lines, word = BAD_LINES[name]
    _, held = make_set(yard, "A", [EDGE], who=WHO, openings=ids(yard, "12"))
    before = state(yard)
    for refused in (
        lambda: make_set(yard, "B", lines, who=WHO),
        lambda: change_set_lines(yard, held, lines, who=WHO),
        lambda: effect_of_lines(yard, held, lines),
    ):
        with pytest.raises(ValueRefusedError, match=word):
            refused()
    assert state(yard) == before


def test_what_there_is_not(yard):
    make_set(yard, "A", [UNIT], who=WHO)
    with pytest.raises(DuplicateValueError):
        make_set(yard, "A", [UNIT], who=WHO)
    with pytest.raises(ValueRefusedError, match="needs a name"):
        make_set(yard, "  ", [UNIT], who=WHO)
    for refused in (
        lambda: set_named(yard, "Z"),
        lambda: remove_set(yard, "nothing", who=WHO),
        lambda: assign_set(yard, "nothing", ids(yard, "1"), who=WHO),
        lambda: change_set_lines(yard, "nothing", [UNIT], who=WHO),
        lambda: effect_of_lines(yard, "nothing", [UNIT]),
    ):
        with pytest.raises(MissingRowError):
            refused()


def test_stopped_previews_give_what_they_have(yard):
    _, held = make_set(yard, "A", [EDGE], who=WHO, openings=ids(yard, "123"))
    told = []
    assert effect_of_lines(yard, held, [UNIT], cancelled=lambda: True) == ()
    assert len(effect_of_lines(yard, held, [UNIT], progress=lambda *at: told.append(at))) == 3
    assert told == [(1, 3), (2, 3), (3, 3)]
    assert propose_sets(yard, cancelled=lambda: True) == ()


def test_several_lines_of_one_role(yard):
    extra = catalogue().get("STRIKE")
    assert extra is not None
    lines = [Line("consumable", "PAD"), Line("consumable", "SCREW", 3.0)]
    make_set(yard, "A", lines, who=WHO, openings=ids(yard, "1"))
    refit(yard)
    found = {(p.part, p.quantity, p.source) for p in fits(yard)["1"].parts if p.role == "consumable"}
    assert found == {("PAD", 1.0, "set"), ("SCREW", 3.0, "set")}
