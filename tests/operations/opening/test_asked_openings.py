"""Openings by building, level, mark and query: held against all that a check tells of the sample, in plain Python."""

import random
from decimal import Decimal

import pytest

from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.project import create_project, open_project
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.opening import asked_facts
from hwsched.operations.opening.asked_openings import QueryRefusedError, asked_openings
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.opening.hand_choices import choose_part
from hwsched.operations.opening.scope import Scope, missing_words
from hwsched.operations.release.project_view import project_view
from hwsched.operations.survey.editing import edit_facts
from hwsched.operations.survey.own_fields import define_field, set_own_value
from tests.operations.exact import id_of, small
from tests.operations.powered import WHO, door, write_catalogue


@pytest.fixture
def sample(sample_file):
    with open_project(str(sample_file)) as project:
        yield project


@pytest.fixture
def yard(tmp_path):
    """1 and 3 usual, 2 to a stair."""
    with small(tmp_path / "y.hwsched", m2={"stair": True}) as project:
        yield project


def where(project, text):
    return list(asked_openings(project, Scope(where=text)).marks)


def rooms(checked):
    return checked.given.opening.room_from, checked.given.opening.room_to


QUERIES = {
    "building = Mill House": lambda c: c.given.opening.building == "Mill House",
    "level in Ground, quay": lambda c: c.given.opening.level in ("Ground", "Quay"),
    "every leaf.thickness > 1 3/4": lambda c: bool(c.given.leaves) and all(
        (e.thickness_mm or 0) > 44.45 + 25.4 / 128 for e in c.given.leaves
    ),
    "leaf.material = glass or leaf.thickness is unknown": lambda c: any(
        e.material == "glass" or e.thickness_mm is None for e in c.given.leaves
    ) or not c.given.leaves,
    "not rating = none": lambda c: c.given.opening.rating not in (None, "none"),
    "rating >= 45 and item.kind = closer": lambda c: (
        c.given.opening.rating in ("45", "60", "90", "180") and any(i.kind == "closer" for i in c.given.items)
    ),
    "backset = 2 3/4": lambda c: any(i.backset_mm and abs(i.backset_mm - 69.85) < 25.4 / 128 for i in c.given.items),
    "mark >= A-13 and mark <= A-20": lambda c: c.given.opening.mark in {f"A-{n}" for n in range(13, 21)},
    "store": lambda c: any(
        "store" in (name or "").lower()
        for name in (c.given.opening.mark, c.given.opening.building, *rooms(c))
    ),
    "place contains loft": lambda c: any(
        "loft" in (name or "").lower()
        for name in (c.given.opening.level, c.given.opening.building, *rooms(c))
    ),
    "status = does-not-fit": lambda c: c.fit.status == "does-not-fit",
    "not status in fits, to-measure": lambda c: c.fit.status == "does-not-fit",
    "uses FEN-J1": lambda c: any(p.part == "FEN-J1" for p in c.fit.parts),
    "not uses FEN-J1": lambda c: c.fit.status != "to-measure" and all(p.part != "FEN-J1" for p in c.fit.parts),
    "finding = battery-life": lambda c: any(f.rule == "battery-life" for f in c.findings),
    "finding = error and building = mill house": lambda c: (
        c.given.opening.building == "Mill House" and any(f.severity == "error" for f in c.findings)
    ),
    "not finding = warning or status = to-measure": lambda c: (
        c.fit.status == "to-measure" or all(f.severity != "warning" for f in c.findings)
    ),
}  # fmt: skip


def test_queries_find_what_a_check_of_everything_says(sample):
    checked = check_openings(sample)
    assert all(each.fit is not None for each in checked)
    for text, meant in QUERIES.items():
        wanted = [each.given.opening.mark for each in checked if meant(each)]
        assert where(sample, text) == wanted, text
        assert 0 < len(wanted) < len(checked), text


def test_what_the_release_gate_holds_is_held_by_every_name(sample):
    """By the gate itself, by the state that the window shows, and by a query: one word, one meaning."""
    held = [each.mark for each in project_view(sample).openings if each.fit.status == "fits" and not each.ready]
    checked = check_openings(sample)
    assert len(held) >= 10
    assert [each.given.opening.mark for each in checked if each.kept_back] == held
    assert where(sample, "status = fits and finding = holding") == held
    # More than errors hold an opening: a fact that is missing does, and what a person has to decide.
    assert set(where(sample, "status = fits and finding = error")) < set(held)


def test_fits_and_findings_are_read_only_for_what_the_survey_leaves_open(sample, monkeypatch):
    read = {"fits": [], "findings": []}

    def noting(kind, act):
        def noted(project, ids, **more):
            read[kind] += ids
            return act(project, ids, **more)

        return noted

    monkeypatch.setattr(asked_facts, "check_openings", noting("findings", check_openings))
    monkeypatch.setattr(asked_facts, "_fits", noting("fits", asked_facts._fits))
    where(sample, "building = Mill House and leaf.thickness > 1 3/4 and b")
    assert read == {"fits": [], "findings": []}
    where(sample, "building = Boat Store and status = fits")
    assert (len(read["fits"]), read["findings"]) == (45, [])
    found = where(sample, "building = Mill House or finding = error")
    assert len(read["findings"]) == 171 - 80
    assert len(found) > 80
    asked_openings(sample, Scope(buildings=("Boat Store",), marks=("X1,X2",), where="finding = note"))
    assert len(read["findings"]) == 171 - 80 + 2


def test_the_options_narrow_each_other_and_the_order_is_that_of_the_project(sample):
    everything = [each.given.opening for each in check_openings(sample)]
    shuffled = [each.mark for each in everything]
    random.Random(1).shuffle(shuffled)
    found = asked_openings(sample, Scope(listed=tuple(shuffled)))
    assert list(found.marks) == [each.mark for each in everything]
    assert list(found.ids) == [each.id for each in everything]
    some = asked_openings(
        sample, Scope(buildings=("Mill House", "Boat Store"), levels=("Ground",), where="rating is known")
    )
    assert list(some.marks) == [
        each.mark for each in everything
        if each.building in ("Mill House", "Boat Store") and each.level == "Ground" and each.rating is not None
    ]  # fmt: skip
    assert (some.of, some.said) == (171, "fire rating known")
    assert asked_openings(sample, Scope()).marks == tuple(each.mark for each in everything)


MARKS = {
    ("X1",): ["X1"],
    ("X2,X1", "X3"): ["X1", "X2", "X3"],
    ("GATE 1, GATE 2",): ["GATE 1", "GATE 2"],
    ("gate*",): ["GATE 1", "GATE 2", "GATE 3", "GATE 4"],
    ("B/[12]", "B/1?"): ["B/1", "B/2", "B/10"],
    ("A-18..A-21",): ["A-18", "A-19", "A-20", "A-21"],
    ("b/9..b/10",): ["B/9", "B/10"],
    ("x1",): ["X1"],
}


@pytest.mark.parametrize("texts", MARKS)
def test_marks_are_lists_patterns_and_ranges(sample, texts):
    assert list(asked_openings(sample, Scope(marks=texts)).marks) == MARKS[texts]


def test_a_mark_in_other_letters_is_taken_and_said(sample):
    assert asked_openings(sample, Scope(marks=("x1",))).notes == ("'x1' is taken for X1",)
    assert asked_openings(sample, Scope(buildings=("mill house",))).notes == ("'mill house' is taken for Mill House",)
    assert asked_openings(sample, Scope(marks=("X1",))).notes == ()


MISSING = {
    "no opening has the mark X11; nearest: X1": Scope(marks=("X11",)),
    "no opening has the mark Y9*": Scope(marks=("Y9*",)),
    "no opening has the mark X77, X78 and X2": Scope(listed=("X77", "X78 and X2")),
    "no opening stands in Mil House; nearest: Mill House": Scope(buildings=("Mil House",)),
    "no opening stands on a level Grund; nearest: Ground": Scope(levels=("Grund",)),
}


@pytest.mark.parametrize(
    ("count", "said"), [(1, "Q1"), (5, "Q1, Q2, Q3, Q4, Q5"), (6, "Q1, Q2, Q3, Q4, Q5 and 1 more")]
)
def test_of_many_that_are_not_there_five_are_named(count, said):
    assert missing_words([f"Q{n + 1}" for n in range(count)], []) == f"no opening has the mark {said}"


@pytest.mark.parametrize("said", MISSING)
def test_what_is_not_there_is_refused_with_the_nearest_name(sample, said):
    with pytest.raises(MissingRowError) as caught:
        asked_openings(sample, MISSING[said])
    assert str(caught.value).startswith(said)


def test_what_is_typed_wrongly_is_refused(sample):
    for marks, word in {"X2..X1": "the lower mark goes first", "X1,,X2": "between two commas"}.items():
        with pytest.raises(ValueRefusedError, match=word):
            asked_openings(sample, Scope(marks=(marks,)))
    with pytest.raises(QueryRefusedError) as caught:
        where(sample, "leaf.thicknes > 2")
    assert caught.value.fault.near[0] == "leaf.thickness"
    assert "\n  ^^^^^^^^^^^^^" in str(caught.value)


def test_a_list_from_a_file_holds_marks_alone(yard):
    with pytest.raises(MissingRowError):
        asked_openings(yard, Scope(listed=("1,2",)))
    assert asked_openings(yard, Scope(listed=())).marks == ()


def test_two_marks_that_differ_by_letters_alone_are_not_guessed(tmp_path):
    with small(tmp_path / "l.hwsched", marks=("a1", "A1", "b")) as project:
        assert asked_openings(project, Scope(marks=("A1",))).marks == ("A1",)
        assert asked_openings(project, Scope(marks=("B",))).marks == ("b",)
        edit_facts(project, "opening", id_of(project, "b"), {"mark": "É1"}, who=WHO)
        assert asked_openings(project, Scope(marks=("é1",))).marks == ("É1",)
        edit_facts(project, "opening", id_of(project, "A1"), {"mark": "É1a"}, who=WHO)
        edit_facts(project, "opening", id_of(project, "a1"), {"mark": "É1A"}, who=WHO)
        with pytest.raises(ValueRefusedError, match="could be any of"):
            asked_openings(project, Scope(marks=("é1A",)))


def test_nothing_found_is_said_with_the_names_that_are_not_there(sample):
    found = asked_openings(sample, Scope(where="building = Mil House"))
    assert found.marks == ()
    assert found.notes == (
        "the project has no building Mil House; nearest: Mill House",
        "no opening of 171 is asked for",
    )


def test_changed_facts_make_a_fit_stale_and_unjudged(yard):
    with yard.reading():
        given = next(each.given for each in check_openings(yard) if each.given.opening.mark == "2")
    edit_facts(yard, "leaf", given.leaves[0].id, {"thickness_mm": 50.0}, who=WHO)
    assert where(yard, "status = stale") == ["2"]
    assert where(yard, "status = not-judged and status = facts-changed") == ["2"]
    assert where(yard, "status = fits") == ["1", "3"]
    # Nobody knows what the rules would say of 2, nor which parts it will use.
    assert where(yard, "finding = stair-re-entry or not finding = stair-re-entry") == ["1", "3"]
    assert where(yard, "not uses NONE") == ["1", "3"]
    fit_openings(yard, who=WHO)
    assert where(yard, "finding = stair-re-entry") == ["2"]
    assert where(yard, "status = stale") == []


def test_a_part_that_is_chosen_counts_before_anything_is_fitted(tmp_path):
    with create_project(str(tmp_path / "n.hwsched"), "New", bare_unit="mm") as project:
        write_catalogue(project)
        for mark in ("1", "2"):
            door(project, mark)
        choose_part(project, id_of(project, "1"), "unit", "EDGE", who=WHO)
        assert where(project, "uses edge") == ["1"]
        assert where(project, "status = not-worked-out") == ["1", "2"]
        assert where(project, "status = stale") == []


def test_fields_of_the_projects_own(yard):
    define_field(yard, "opening", "clear_mm", "Clear width", "length", who=WHO)
    define_field(yard, "existing_item", "price", "Price", "money", who=WHO)
    define_field(yard, "opening", "zone", "Zone", "choice", choices=("North", "South"), who=WHO)
    first = next(each.given for each in check_openings(yard) if each.given.opening.mark == "1")
    set_own_value(yard, "opening", first.opening.id, "clear_mm", 900.0, who=WHO)
    set_own_value(yard, "opening", id_of(yard, "3"), "clear_mm", 800.0, who=WHO)
    set_own_value(yard, "opening", id_of(yard, "3"), "zone", "South", who=WHO)
    set_own_value(yard, "existing_item", first.items[0].id, "price", Decimal("12.50"), who=WHO)
    assert where(yard, "Clear width > 850") == ["1"]
    assert where(yard, "clear <= 0.9 m") == ["1", "3"]
    assert where(yard, "clear is unknown") == ["2"]
    assert where(yard, "zone = south") == ["3"]
    assert where(yard, "item.price >= 12.5 and price < 13") == ["1"]
