"""What if: nothing is stored before it is accepted, and then it is what was shown; successors of superseded parts."""

from dataclasses import replace

import pytest
from openpyxl import load_workbook

from hwsched.exchange.parts.catalogue_sheets import write_catalogue
from hwsched.exchange.problems import InputRejected
from hwsched.fitting.candidate import holes_in
from hwsched.fitting.costing import price_openings
from hwsched.model.errors import ValueRefusedError
from hwsched.model.project import open_project
from hwsched.model.queries import read_catalogue, read_fits, read_settings, read_terms
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.opening.hand_choices import choose_part
from hwsched.operations.opening.what_if import Question, accept_answer, successors, what_if
from hwsched.operations.parts.cost_terms import set_terms
from hwsched.operations.power.connecting import connect_openings
from hwsched.operations.project.history import history, undo
from hwsched.operations.project.settings import set_settings
from hwsched.values import Chosen
from tests.model.states import state
from tests.operations.exact import id_of, small
from tests.operations.powered import circuit, closet, more_parts
from tests.rules.scenario import catalogue

WHO = "ann"


@pytest.fixture
def yard(tmp_path):
    """1 to 3 alike; 4 to a stair."""
    made = small(tmp_path / "y.hwsched", marks="1234", m4={"stair": True})
    set_terms(made, who=WHO, labour_per_hour="80")
    yield made
    made.close()


def edited(project, path, *changes):
    """Write a workbook of some parts with cells changed: (part, column's heading begins with, value)."""
    with project.reading() as connection:
        held = read_catalogue(connection)
    write_catalogue(path, [held.get(number) for number in dict.fromkeys(number for number, _, _ in changes)], "mm")
    book = load_workbook(path)
    for number, heading, value in changes:
        done = False
        for sheet in book:
            heads = [str(cell.value or "") for cell in sheet[1]]
            for row in sheet.iter_rows(min_row=2):
                if row[0].value == number and any(head.startswith(heading) for head in heads):
                    row[next(i for i, head in enumerate(heads) if head.startswith(heading))].value = value
                    done = True
        assert done, (number, heading)
    book.save(path)
    return path


def seen(project):
    """Per mark what can differ: status, parts, cost, holes, findings without waivers and records."""
    with project.reading() as connection:
        catalogue, terms = read_catalogue(connection), read_terms(connection)
    checked = check_openings(project)
    costs = price_openings(((each.given, each.fit) for each in checked), catalogue, terms)
    return {
        each.given.opening.mark: (
            each.fit.status,
            {(p.role, p.part, p.quantity) for p in each.fit.parts},
            costs.get(each.given.opening.id),
            holes_in(each.fit),
            {(f.rule, f.about, f.severity, f.message) for f in each.findings},
        )
        for each in checked
    }


def as_shown(before, answer):
    """What should be there afterwards, by what was shown."""
    after = dict(before)
    for each in answer.differences:
        status, parts, cost, holes, said = before[each.mark]
        assert (each.before, each.holes_before, each.cost_before) == (status, holes, cost)
        gone = {entry for entry in parts if f"{entry[0]} {entry[1]}" in each.gone}
        kept = {f"{role} {part}" for role, part, _ in parts - gone}
        assert {f"{role} {part}" for role, part, _ in gone} == set(each.gone)
        lost = {(f.rule, f.about, f.severity, f.message) for f in each.findings_gone}
        assert lost <= said
        more = {(f.rule, f.about, f.severity, f.message) for f in each.findings_new}
        after[each.mark] = (each.after, kept | set(each.new), each.cost_after, each.holes_after, (said - lost) | more)
    return after


def named(found):
    """The same with parts by their names alone."""
    return {
        mark: (status, {p if isinstance(p, str) else f"{p[0]} {p[1]}" for p in parts}, *rest)
        for mark, (status, parts, *rest) in found.items()
    }


QUESTIONS = {
    "limit": Question(limits={"battery-life.days": 301.0}),
    "rule off": Question(rules_off={"stair-re-entry": True}),
    "holes": Question(prefer="holes"),
    "preferred": Question(prefer="preferred"),
    "choice": Question(choices=(Chosen("unit", "EDGE"),)),
    "refused choice": Question(choices=(Chosen("cylinder", "HALF"),)),
    "all together": Question(
        limits={"battery-life.days": 301.0, "clear-width.clear_mm": 900.0}, rules_off={"coin-cell-drain": True},
        prefer="stock", choices=(Chosen("unit", "EDGE"),),
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", ["limit", "rule off", "holes", "all together"])
def test_what_holds_for_all_openings_is_not_accepted_from_a_look_at_some(yard, name):
    rows = state(yard)
    answer = what_if(yard, QUESTIONS[name], [id_of(yard, "1")])
    with pytest.raises(ValueRefusedError, match="3 openings more than were looked at"):
        accept_answer(yard, answer, who=WHO)
    assert state(yard) == rows
    accept_answer(yard, what_if(yard, QUESTIONS["choice"], [id_of(yard, "1")]), who=WHO)


@pytest.mark.parametrize("name", QUESTIONS)
def test_accepted_it_is_what_was_shown(yard, name):
    before, rows = seen(yard), state(yard)
    answer = what_if(yard, QUESTIONS[name])
    assert state(yard) == rows
    assert set(answer.asked) == {id_of(yard, mark) for mark in "1234"}
    steps = len(history(yard))
    accept_answer(yard, answer, who=WHO)
    assert len(history(yard)) == steps + 1
    assert named(seen(yard)) == named(as_shown(before, answer))
    assert what_if(yard, QUESTIONS[name]).differences == ()
    undo(yard, who=WHO)
    assert state(yard) == rows
    assert seen(yard) == before


def test_a_limit_by_hand(yard):
    # 300.96 days: see test_exact_findings.
    answer = what_if(yard, Question(limits={"battery-life.days": 301.0}))
    assert [each.mark for each in answer.differences] == ["1", "2", "3", "4"]
    for each in answer.differences:
        assert (each.gone, each.new, each.findings_gone) == ((), (), ())
        assert [(f.rule, f.severity) for f in each.findings_new] == [("battery-life", "error")]
        assert each.cost_before == each.cost_after
    # A tenth over 270 days, 297, it lasts; of 300 it lasts less than a tenth more, which is told.
    assert what_if(yard, Question(limits={"battery-life.days": 270.0})).differences == ()
    told = what_if(yard, Question(limits={"battery-life.days": 300.0})).differences
    assert {(f.rule, f.severity) for each in told for f in each.findings_new} == {("battery-life", "warning")}
    assert what_if(yard, Question()).differences == ()


def test_only_the_openings_that_are_asked_about(yard):
    one = id_of(yard, "1")
    answer = what_if(yard, Question(choices=(Chosen("unit", "EDGE"),)), [one])
    assert (answer.asked, [each.mark for each in answer.differences]) == ((one,), ["1"])
    # By hand: 300 for 200, and other holes; the rest stays.
    (each,) = answer.differences
    assert "unit UNIT" in each.gone
    assert "unit EDGE" in each.new
    before = seen(yard)
    accept_answer(yard, answer, who=WHO)
    assert {mark: said for mark, said in seen(yard).items() if mark != "1"} == {
        mark: said for mark, said in before.items() if mark != "1"
    }


def test_another_catalogue(yard, tmp_path):
    before, rows = seen(yard), state(yard)
    path = edited(yard, tmp_path / "c.xlsx", ("UNIT", "List price", 150), ("CELL", "Capacity", 1000))
    answer = what_if(yard, Question(catalogue=path))
    assert state(yard) == rows
    for each in answer.differences:
        # 50 less for the unit; 1000 mAh * 0.8 over 1.44 + 5 + 1000 * 0.03 / 365.25 mAh a day are 122.7 days.
        assert each.cost_before.parts - each.cost_after.parts == 50
        assert [f.rule for f in each.findings_new] == ["battery-life"]
        assert "123 days" in each.findings_new[0].message
    assert len(answer.differences) == 4
    accept_answer(yard, answer, who=WHO)
    assert named(seen(yard)) == named(as_shown(before, answer))


def test_another_catalogue_keeps_stock_and_preference_that_it_does_not_tell(yard, tmp_path):
    usual = catalogue()
    more_parts(yard, replace(usual.get("EDGE"), preferred=1), replace(usual.get("UNIT"), stock=0.0))
    for prefer in ("preferred", "stock"):
        set_settings(yard, who=WHO, prefer=prefer)
        fit_openings(yard, who=WHO)
        path = edited(yard, tmp_path / "c.xlsx", ("EDGE", "Preferred", None), ("UNIT", "In stock", None))
        answer = what_if(yard, Question(catalogue=path))
        before = seen(yard)
        accept_answer(yard, answer, who=WHO)
        assert named(seen(yard)) == named(as_shown(before, answer))
        assert answer.differences == ()


def test_a_catalogue_in_which_a_part_no_longer_fits_says_by_which_numbers(yard, tmp_path):
    path = edited(yard, tmp_path / "c.xlsx", ("UNIT", "Takes plug", "p9"), ("EDGE", "Takes plug", "p9"))
    answer = what_if(yard, Question(catalogue=path))
    for each in answer.differences:
        assert (each.before, each.after) == ("fits", "does-not-fit")
        assert "p9" in each.why or "p4" in each.why
    assert len(answer.differences) == 4
    path = edited(yard, tmp_path / "c.xlsx", ("CYL", "Lead length", 60))
    answer = what_if(yard, Question(catalogue=path), [id_of(yard, "1")])
    assert all(each.after == "fits" or "mm" in each.why for each in answer.differences)
    assert answer.differences


def test_what_the_rules_of_circuits_would_say(yard):
    supply = closet(yard)
    more_parts(yard, *catalogue(LOOP={"length_mm": 500.0}).parts.values())
    connect_openings(yard, circuit(yard, supply), [id_of(yard, "1"), id_of(yard, "2")], who=WHO, length_m=400.0)
    fit_openings(yard, who=WHO)
    before = seen(yard)
    assert all("circuit-voltage" in {rule for rule, *_ in before[mark][4]} for mark in "12")
    question = Question(rules_off={"circuit-voltage": True})
    answer = what_if(yard, question)
    assert [each.mark for each in answer.differences] == ["1", "2"]
    assert all({f.rule for f in each.findings_gone} == {"circuit-voltage"} for each in answer.differences)
    # One alone is asked about; what hangs beside it counts all the same.
    assert what_if(yard, question, [id_of(yard, "1")]).differences == answer.differences[:1]
    other = what_if(yard, Question(limits={"clear-width.clear_mm": 5.0}), [id_of(yard, "2")])
    assert other.differences == ()
    accept_answer(yard, answer, who=WHO)
    assert named(seen(yard)) == named(as_shown(before, answer))


def test_what_a_chosen_part_draws_counts_on_its_circuit(yard):
    """30 m of 18 AWG at 2 A and 0.0222 ohm/m lose 2.7 V, at 0.4 A 0.5 V: of 11.4 V the unit's 10 V are left or not."""
    usual = catalogue().get("UNIT")
    hungry = replace(usual, number="HUNGRY", list_price=900.0, attributes={**usual.attributes, "supply_a": 2.0})
    more_parts(yard, *catalogue(LOOP={"length_mm": 500.0}).parts.values(), hungry)
    supply = closet(yard)
    connect_openings(yard, circuit(yard, supply), [id_of(yard, "1")], who=WHO, length_m=30.0)
    connect_openings(yard, circuit(yard, supply, "C2"), [id_of(yard, "2")], who=WHO, length_m=1.0)
    connect_openings(yard, circuit(yard, closet(yard, "PS2")), [id_of(yard, "3")], who=WHO, length_m=1.0)
    fit_openings(yard, who=WHO)
    before = seen(yard)
    assert not [said for mark in "123" for said in before[mark][4] if said[0] == "circuit-voltage"]
    for asked in (["1"], ["1", "2", "3"]):
        answer = what_if(yard, Question(choices=(Chosen("unit", "HUNGRY"),)), [id_of(yard, mark) for mark in asked])
        low = [each.mark for each in answer.differences if "circuit-voltage" in {f.rule for f in each.findings_new}]
        assert low == ["1"]
    accept_answer(yard, answer, who=WHO)
    assert named(seen(yard)) == named(as_shown(before, answer))


REFUSED = {
    "preference": (Question(prefer="luck"), "there is no 'luck'"),
    "limit": (Question(limits={"battery-life.hours": 1.0}), "there is no 'battery-life.hours'"),
    "rule": (Question(rules_off={"luck": True}), "there is no 'luck'"),
    "role": (Question(choices=(Chosen("hat", "UNIT"),)), "'hat' is no role"),
    "part": (Question(choices=(Chosen("unit", "NONE"),)), "the catalogue has no part 'NONE'"),
}


@pytest.mark.parametrize("name", REFUSED)
def test_what_cannot_be_is_refused_before_it_is_shown(yard, name):
    question, word = REFUSED[name]
    with pytest.raises(ValueRefusedError, match=word):
        what_if(yard, question)


def test_a_bad_workbook_is_refused_whole(yard, tmp_path):
    path = edited(yard, tmp_path / "c.xlsx", ("UNIT", "List price", "dear"))
    with pytest.raises(InputRejected, match="dear"):
        what_if(yard, Question(catalogue=path))


def test_stopped(yard):
    told = []
    answer = what_if(yard, Question(prefer="holes"), cancelled=lambda: True, progress=lambda *at: told.append(at))
    assert (answer.asked, answer.differences, told) == ((), (), [])
    assert what_if(yard, Question(), progress=lambda *at: told.append(at)).asked
    assert told == [(4, 4)]


def test_accepted_it_is_one_step_of_the_journal(yard, tmp_path):
    path = edited(yard, tmp_path / "c.xlsx", ("UNIT", "List price", 150))
    question = Question(path, {"battery-life.days": 301.0}, choices=(Chosen("unit", "UNIT"),))
    before = state(yard)
    changes = accept_answer(yard, what_if(yard, question), who=WHO)
    step = history(yard)[-1]
    assert (step.number, step.verb) == (changes.number, "accept-what-if")
    for word in ("Import catalogue c.xlsx: 0 new, 1 changed", "Change settings", "Choose as asked", "fit 4 openings"):
        assert word in step.summary
    assert changes.entities >= {"part", "project", "chosen_part", "opening_fit"}
    undo(yard, who=WHO)
    assert state(yard) == before


def test_a_corner_of_the_sample_under_another_preference(corner_file):
    with open_project(corner_file) as project:
        before, rows = seen(project), state(project)
        answer = what_if(project, Question(prefer="holes"))
        assert state(project) == rows
        accept_answer(project, answer, who=WHO)
        assert named(seen(project)) == named(as_shown(before, answer))
        with project.reading() as connection:
            assert read_settings(connection).prefer == "holes"


# --- successors -----------------------------------------------------------------------------------------------------


def supersede(project, number, by, *more):
    usual = catalogue().get(number)
    more_parts(project, replace(usual, superseded_by=by), *more)


def test_nothing_is_superseded(yard):
    assert successors(yard) == ()


def test_every_opening_that_uses_a_superseded_part_is_tried_with_its_successor(yard):
    """A new fit takes no superseded part, so it is the stored fits that say who uses it."""
    newer = replace(catalogue().get("CYL"), number="CYL-2", list_price=120.0)
    supersede(yard, "CYL", "CYL-2", newer)
    found = successors(yard)
    assert [each.mark for each in found] == ["1", "2", "3", "4"]
    for each in found:
        assert (each.gone, each.new, each.why) == (("cylinder CYL",), ("cylinder CYL-2",), "")
        assert each.cost_after.parts - each.cost_before.parts == 20
        assert "superseded-part" in {f.rule for f in each.findings_gone}
    fit_openings(yard, who=WHO)
    assert successors(yard) == ()
    with yard.reading() as connection:
        assert {each.fit.part("cylinder").part for each in read_fits(connection).values()} == {"CYL-2"}


def test_a_successor_that_does_not_fit_says_why(yard):
    usual = catalogue().get("CYL")
    longer = replace(usual, number="CYL-2", attributes={**usual.attributes, "length_mm": 60.0})
    supersede(yard, "CYL", "CYL-2", longer)
    found = successors(yard)
    assert len(found) == 4
    assert all("28.3 mm off its collar" in each.why for each in found)


def test_a_successor_of_which_a_fact_is_missing_says_what_is_needed(yard):
    usual = catalogue().get("CYL")
    untold = {name: value for name, value in usual.attributes.items() if name != "length_mm"}
    supersede(yard, "CYL", "CYL-2", replace(usual, number="CYL-2", attributes=untold))
    found = successors(yard)
    assert [(each.before, each.after) for each in found] == [("fits", "to-measure")] * 4
    assert all(each.why.startswith("needs ") and "CYL-2" in each.why for each in found)


def test_a_chosen_part_and_a_chain_of_successors(yard):
    choose_part(yard, id_of(yard, "2"), "cam", "CAM", who=WHO)
    newer = replace(catalogue().get("CAM"), number="CAM-3")
    supersede(yard, "CAM", "CAM-2", replace(catalogue().get("CAM"), number="CAM-2", superseded_by="CAM-3"), newer)
    found = successors(yard)
    assert [each.mark for each in found] == ["1", "2", "3", "4"]
    assert all(each.new == ("cam CAM-3",) for each in found)


def test_a_circle_of_successors_ends(yard):
    supersede(yard, "CAM", "CAM-2", replace(catalogue().get("CAM"), number="CAM-2", superseded_by="CAM"))
    assert len(successors(yard)) == 4


def test_a_successor_that_the_catalogue_lacks(yard):
    supersede(yard, "CAM", "CAM-9")
    found = successors(yard)
    assert len(found) == 4
    assert all(each.why for each in found)
    assert successors(yard, cancelled=lambda: True) == ()
