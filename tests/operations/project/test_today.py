"""What is to be done next: each count with the openings of the small survey that stand behind it."""

from dataclasses import replace
from datetime import date

import pytest

from hwsched.operations.findings.checking import Checker, look_again
from hwsched.operations.project.today import PERSONS, STATES, counted, read_today, state_of
from hwsched.operations.release.freezing import freeze
from hwsched.operations.release.issued_packets import write_down_packets
from hwsched.operations.release.project_view import project_view
from hwsched.operations.survey.editing import edit_fact_text
from hwsched.values import Finding
from tests.documents.quay import WHO, make

DAY = date(2026, 3, 1)


@pytest.fixture(scope="module")
def quay(tmp_path_factory):
    with make(tmp_path_factory.mktemp("today")) as project:
        yield project, project_view(project)


def found(view, **more):
    return counted(view, today=DAY, **more)


def task(today, name):
    (one,) = [each for each in today.tasks if each.name == name]
    return one


def marks(today, name):
    return [today.marks[key] for key in task(today, name).openings]


def test_every_opening_has_one_state_and_each_state_leads_to_its_openings(quay):
    _, view = quay
    today = found(view)
    assert [each.person for each in today.tasks] == sorted((e.person for e in today.tasks), key=PERSONS.index)
    behind = {"to-measure": "to-measure", "not-worked-out": "not-worked-out", "does-not-fit": "does-not-fit",
              "held": "held", "to-pick": "ready"}  # fmt: skip
    for name, state in behind.items():
        assert marks(today, name) == [each.mark for each in view.openings if state_of(each) == state], name
    # The survey leaves a thickness unseen; the plain wood leaf is in order.
    assert "UNSEEN" in marks(today, "to-measure")
    assert "WOOD" in marks(today, "to-pick")
    assert all(each.count == len(each.openings) for each in today.tasks if not each.parts and each.name != "questions")


def test_levels_add_up_to_the_openings(quay):
    _, view = quay
    levels = found(view).levels
    assert sum(each.total for each in levels) == len(view.openings)
    assert all(tuple(each.states) == STATES for each in levels)
    assert {key for each in levels for key in each.openings} == {each.given.opening.id for each in view.openings}


def test_levels_stand_by_height_and_those_of_unknown_height_below(quay):
    _, view = quay
    wood = next(each for each in view.openings if each.mark == "WOOD")

    def at(level):
        opening = replace(wood.given.opening, id=level, level=level)
        return replace(wood, given=replace(wood.given, opening=opening), points=())

    view = replace(
        view,
        openings=tuple(map(at, ("Attic", "2", "10", "Cellar"))),
        level_heights={("Quay", "2"): 3.0, ("Quay", "10"): 30.0, ("Quay", "Cellar"): -3.0},
    )
    assert [each.level for each in found(view).levels] == ["10", "2", "Cellar", "Attic"]


def test_what_goes_out_moves_from_the_storekeeper_to_the_installer(quay):
    _, view = quay
    wood = next(each for each in view.openings if each.mark == "WOOD").given.opening.id
    today = found(view, out={wood})
    assert "WOOD" not in marks(today, "to-pick")
    assert marks(today, "to-install") == ["WOOD"]


def test_a_packet_older_than_the_facts_is_told_and_not_to_be_installed_by(quay):
    _, view = quay
    old = Finding("packet-out-of-date", "documents", "warning", "Older.", "common practice", "Issue it again.")
    openings = tuple(replace(each, findings=(old,)) if each.mark == "WOOD" else each for each in view.openings)
    wood = next(each for each in view.openings if each.mark == "WOOD").given.opening.id
    today = found(replace(view, openings=openings), out={wood})
    assert marks(today, "packets-old") == ["WOOD"]
    assert marks(today, "to-install") == []


def test_parts_run_short_by_what_the_openings_to_pick_take(quay):
    _, view = quay
    wood = tuple(each for each in view.openings if each.mark in ("WOOD", "METRIC"))
    lock = wood[0].fit.part("unit").part
    assert wood[1].fit.part("unit").part == lock

    def stocked(stock):
        parts = {number: replace(part, stock=100.0) for number, part in view.catalogue.parts.items()}
        parts[lock] = replace(parts[lock], stock=stock)
        return found(replace(view, openings=wood, catalogue=type(view.catalogue)(parts, "x")))

    # Two openings take one each.
    assert task(stocked(2.0), "short").parts == ()
    assert task(stocked(1.0), "short").parts == (lock,)
    assert task(stocked(None), "short").parts == ()
    assert task(stocked(None), "stock-unknown").parts == (lock,)


def test_errors_that_somebody_accepted_are_not_told(quay):
    _, view = quay
    wood = next(each for each in view.openings if each.mark == "WOOD")
    error = Finding("made-up", "egress", "error", "It would lock people in.", "common practice", "Do not.")
    for waived, told in ((False, ["WOOD"]), (True, [])):
        only = replace(view, openings=(replace(wood, findings=(replace(error, waived=waived),)),))
        assert marks(found(only), "errors") == told


@pytest.mark.parametrize(
    ("told", "asked"),
    [
        ([], []),
        ([((), False)], []),
        ([(("opening.hand",), False)], ["WOOD"]),
        ([(("opening.hand",), True)], []),
        ([(("opening.hand",), True), (("opening.level",), False)], ["WOOD"]),
    ],
)
def test_a_fact_that_is_missing_is_asked_for_until_somebody_accepted_it(quay, told, asked):
    _, view = quay
    wood = next(each for each in view.openings if each.mark == "WOOD")
    error = Finding("made-up", "egress", "error", "It would lock people in.", "common practice", "Do not.")
    # An error that nobody accepted holds it back in any case.
    findings = (error, *(replace(error, severity="unknown", needs=needs, waived=waived) for needs, waived in told))
    today = found(replace(view, openings=(replace(wood, findings=findings),)))
    assert (marks(today, "held"), marks(today, "unknown")) == (["WOOD"], asked)


def test_cells_are_told_of_sixty_days_before_they_are_due(quay):
    _, view = quay
    wood = next(each for each in view.openings if each.mark == "WOOD")
    # Unknown while nobody said when the cells went in.
    assert marks(found(view), "cells") == []
    given = replace(wood.given, opening=replace(wood.given.opening, installed_on="2020-01-01"))
    only = replace(view, openings=(replace(wood, given=given, points=()),))
    assert marks(found(only), "cells") == ["WOOD"]
    fresh = replace(given, opening=replace(given.opening, installed_on=DAY.isoformat()))
    only = replace(view, openings=(replace(wood, given=fresh, points=()),))
    assert marks(found(only), "cells") == []


def test_what_is_otherwise_since_the_last_revision(quay):
    project, view = quay
    assert found(view).since is None
    freeze(project, purpose="first", who=WHO)
    wood = next(each.given for each in view.openings if each.mark == "WOOD")
    write_down_packets(project, view, who=WHO, only=[wood.opening.id])
    today = read_today(project)
    assert (today.since.letter, today.since.new, today.since.changed, today.since.gone) == ("A", (), (), 0)
    assert marks(today, "to-install") == ["WOOD"]
    edit_fact_text(project, "leaf", wood.leaves[0].id, "thickness_mm", "1 5/8", who=WHO)
    today = read_today(project)
    assert [today.marks[key] for key in today.since.changed] == ["WOOD"]
    # A fact that the fit follows from: it is to be worked out anew, and the packet is older than the facts.
    assert marks(today, "not-worked-out") == ["WOOD"]
    assert marks(today, "packets-old") == ["WOOD"]
    # As the desktop hands over what it shows: what it worked out on the spot is not stored, and does not count.
    assert read_today(project, look_again(project, None, checker=Checker())) == today
