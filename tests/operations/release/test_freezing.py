"""Freezing: what is read back is what there was, whatever changed since; what has not changed is held once."""

import os
import random
from dataclasses import MISSING, dataclass, field, fields
from datetime import date, timedelta

import msgspec
import pytest
from sqlalchemy import func, select, update

from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model.errors import DamagedProjectError, MissingRowError, ValueRefusedError
from hwsched.model.frozen import RevisionInfo
from hwsched.model.project import open_project
from hwsched.model.tables import FROZEN, OPENING_TABLE, PART
from hwsched.operations.findings.checking import Checker, check_openings
from hwsched.operations.findings.waivers import waive
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.opening.pieces import pieces, record_piece
from hwsched.operations.parts.catalogue_import import import_catalogue
from hwsched.operations.parts.cost_terms import set_terms
from hwsched.operations.power.connecting import connect_openings, set_route
from hwsched.operations.power.power_import import import_power
from hwsched.operations.power.power_results import power_result
from hwsched.operations.project.engine import engine_fingerprint
from hwsched.operations.project.history import redo, undo
from hwsched.operations.project.settings import set_settings
from hwsched.operations.release import freezing, frozen_state, project_view
from hwsched.operations.release.attachments import attach_content, attachments_of, detach
from hwsched.operations.release.freezing import freeze
from hwsched.operations.release.frozen_record import (
    Frozen,
    OpeningRecord,
    PointRecord,
    bits_for,
    chunk_of,
    compact_item,
    compact_leaf,
    compact_opening,
    compacted,
)
from hwsched.operations.release.frozen_state import StoppedError, gather
from hwsched.operations.release.revisions import read_revision, revisions
from hwsched.operations.survey.editing import add_item, add_opening, edit_facts, remove
from hwsched.operations.survey.own_fields import define_field, set_own_value
from hwsched.operations.survey.survey_import import import_survey
from hwsched.paths import SAMPLE
from hwsched.rules import RULEBOOK
from hwsched.values import Catalogue, Fit, Item, Leaf, Opening, OpeningInput
from hwsched.values.piece import AT_BENCH
from hwsched.values.revision import Scope
from hwsched.values.terms import CostTerms
from tests.model.backends import furnished
from tests.model.states import state
from tests.operations.exact import TODAY, id_of, small
from tests.operations.findings.test_random_checks import Walk
from tests.operations.frozen_states import state_now, state_then
from tests.operations.powered import circuit, closet, door, fit_all, write_catalogue

WHO = "ann"
STEPS = max(25, int(os.environ.get("HWSCHED_FUZZ", "0")) // 200)


@furnished
def yard(project):
    """Three openings, on each kind of database."""
    write_catalogue(project)
    for mark in "123":
        door(project, mark, power_wish=None)
    fit_all(project)
    return project


def contents(project, kind=None):
    with project.reading() as connection:
        query = select(func.count()).select_from(FROZEN)
        return connection.execute(query if kind is None else query.where(FROZEN.c.kind == kind)).scalar()


def froze(project, **more):
    return freeze(project, who=WHO, today=TODAY, **more)


def test_what_is_read_back_is_what_there_was(yard):
    define_field(yard, "opening", "key_group", "Key group", "text", who=WHO)
    set_own_value(yard, "opening", id_of(yard, "1"), "key_group", "AA", who=WHO)
    set_terms(yard, who=WHO, currency="USD", labour_per_hour="80", rates={"EUR": "1.08"})
    set_settings(yard, who=WHO, limits={"battery-life.days": 400.0}, rules_off={"tool-known": True})
    waive(yard, "case-offset-taken", person="p", reason="seen", who=WHO, opening_id=id_of(yard, "2"), today=TODAY)
    fit_openings(yard, who=WHO)
    expected = state_now(yard)
    made = froze(yard, purpose=" for approval ")
    assert (made.letter, made.openings) == ("A", 3)
    # Everything is otherwise afterwards.
    for mark in "123":
        edit_facts(yard, "opening", id_of(yard, mark), {"rating": "90", "building": "Other"}, who=WHO)
    write_catalogue(yard, UNIT={"plate_width_mm": 80.0})
    set_terms(yard, who=WHO, currency="SEK", labour_per_hour="")
    set_settings(yard, who=WHO, name="Renamed", limits={"battery-life.days": None})
    fit_openings(yard, who=WHO)
    remove(yard, "opening", id_of(yard, "3"), who=WHO)
    then = read_revision(yard, "a")
    assert state_then(then) == expected
    assert (then.letter, then.person, then.purpose, then.scope) == ("A", WHO, "for approval", Scope())
    assert then.day == TODAY.isoformat()
    assert then.engine == engine_fingerprint()
    assert then.terms == CostTerms("USD", {}, {"EUR": "1.08"}, "80")
    assert [finding.waived for finding in then.openings[1].findings].count(True) == 1
    assert {rule.id for rule in then.rules} == {rule.id for rule in RULEBOOK}
    assert all(rule.title and rule.basis and rule.cure for rule in then.rules)
    used = {part.number for part in then.used}
    assert used >= {part.part for each in then.openings for part in each.fit.parts}
    assert used <= set(then.catalogue.parts)
    assert "STRIKE" not in used


def test_files_and_bench_work_come_back_whatever_was_done_since(yard):
    opening = id_of(yard, "1")
    attach_content(yard, "opening", opening, "front.txt", b"as seen", who=WHO)
    with yard.reading() as connection:
        part = connection.execute(select(PART.c.id)).scalar()
    attach_content(yard, "part", part, "sheet.txt", b"as printed", who=WHO)
    (unit,) = [each for each in pieces(yard, opening) if each.role == "unit"]
    record_piece(yard, opening, unit.id, who=WHO, done=["built", "tested"], serial="S-1")
    froze(yard)
    (base,) = revisions(yard)
    expected = state_now(yard)
    detach(yard, [each.id for each in attachments_of(yard)], who=WHO)
    record_piece(yard, opening, unit.id, who=WHO, done=[], serial="")
    same_both_ways(yard, base)
    froze(yard)
    then, now = (state_then(read_revision(yard, letter)) for letter in "AB")
    assert {**then, "change_set": 0} == {**expected, "change_set": 0}
    assert then["openings"][0]["serials"]
    assert not now["openings"][0]["files"] + now["others"]
    assert not now["openings"][0]["bench"]


def place(said):
    return said.supply_id, said.circuit_id, said.finding.rule, said.finding.message


def test_the_sample_with_its_circuits_comes_back_whole(sample_file):
    with open_project(sample_file) as project:
        import_power(project, SAMPLE / "power.xlsx", who=WHO)
        fit_openings(project, who=WHO)
        expected, power = state_now(project), power_result(project, fresh=False)
        froze(project)
        then = read_revision(project, "A")
        assert state_then(then) == expected
        assert {each.supply.id: each for each in then.power.supplies} == {s.supply.id: s for s in power.supplies}
        assert [each.supply.id for each in then.power.supplies] == [each.supply.id for each in power.supplies]
        assert sorted(then.power.findings, key=place) == sorted(power.findings, key=place)
        assert len(then.power.supplies) > 1


def test_several_lock_points_come_back_with_what_stands_beside_each(yard):
    opening = id_of(yard, "2")
    dead = {"kind": "deadbolt", "leaf": "single", "lock_form": "mortise", "disposition": "replace", "y_mm": 1300.0}
    add_item(yard, opening, dead, who=WHO)
    fit_openings(yard, who=WHO)
    expected = state_now(yard)
    froze(yard)
    remove(yard, "opening", opening, who=WHO)
    then = read_revision(yard, "A")
    assert state_then(then) == expected
    assert [len(each.points) for each in then.openings] == [1, 2, 1]
    assert then.openings[1].points[1].given.beside


def test_undo_takes_the_letter_and_leaves_the_contents(yard):
    before = state(yard)
    froze(yard)
    held, connected_devices = contents(yard), state(yard)
    undo(yard, who=WHO)
    assert revisions(yard) == []
    assert state(yard) == before
    assert contents(yard) == held
    redo(yard, who=WHO)
    assert state(yard) == connected_devices
    assert state_then(read_revision(yard, "A"))["title"] == yard.title
    undo(yard, who=WHO)
    # The same again costs its root alone: it says of another step of the journal.
    assert froze(yard).letter == "A"
    assert contents(yard) == held + 1


def test_what_has_not_changed_is_held_once(yard):
    froze(yard)
    first = contents(yard)
    second = froze(yard)
    assert (second.letter, second.contents, contents(yard)) == ("B", 1, first + 1)
    # One opening in a hundred: its own content, its chunk, a fit and findings that are new, the root.
    edit_facts(yard, "opening", id_of(yard, "1"), {"notes": "seen again"}, who=WHO)
    assert froze(yard).contents == 3
    assert contents(yard, "opening") == 4


def test_openings_alike_share_fit_and_findings(yard):
    froze(yard)
    assert contents(yard, "opening") == 3
    assert contents(yard, "fit") == contents(yard, "findings") == 1


@pytest.mark.parametrize(
    ("asked", "words"),
    [
        ("I", "is none"),
        ("1", "is none"),
        ("", "is none"),
        ("B", "there is a revision B already; the next is E"),
        ("A", "comes before D"),
    ],
)
def test_letters_that_are_refused(yard, asked, words):
    for letter in ("B", None, "d"):
        froze(yard, letter=letter)
    before, held = state(yard), contents(yard)
    assert [each.letter for each in revisions(yard)] == ["B", "C", "D"]
    with pytest.raises(ValueRefusedError, match=words):
        froze(yard, letter=asked)
    assert (state(yard), contents(yard)) == (before, held)
    assert froze(yard, letter=" aa ").letter == "AA"
    assert froze(yard).letter == "AB"


def test_a_part_of_the_project(yard):
    door(yard, "4", building="Annexe", level="2", power_wish=None)
    door(yard, "5", building="Annexe", level="3", power_wish=None)
    for scope, marks in (
        (Scope("Annexe"), ["4", "5"]),
        (Scope("Annexe", "2"), ["4"]),
        (Scope(marks=("5", "1")), ["5", "1"]),
        (Scope(), ["4", "5", "1", "2", "3"]),
    ):
        made = froze(yard, scope=scope)
        then = read_revision(yard, made.letter)
        assert [each.mark for each in then.openings] == marks
        assert then.scope == scope
    (one,) = read_revision(yard, "D", ["2"]).openings
    assert one.mark == "2"
    with pytest.raises(MissingRowError, match="revision B has no opening 1"):
        read_revision(yard, "B", ["1"])


@pytest.mark.parametrize(
    "scope", [Scope("Nowhere"), Scope("Main", "99"), Scope(marks=("1", "99")), Scope("Annexe", "1")]
)
def test_nothing_to_freeze_is_refused(yard, scope):
    before = state(yard)
    with pytest.raises(MissingRowError):
        froze(yard, scope=scope)
    assert (state(yard), contents(yard)) == (before, 0)


def test_a_project_without_openings_has_nothing_to_freeze(project):
    with pytest.raises(MissingRowError, match="no opening"):
        froze(project)


def test_what_somebody_writes_meanwhile_is_in_it(yard, monkeypatch):
    """Between reading and writing another person edits: the revision is of one state, the later one."""
    froze(yard)
    real, calls = freezing.gather, []

    def meanwhile(project, *arguments, **more):
        found = real(project, *arguments, **more)
        calls.append(found.change_set)
        if len(calls) == 1:
            edit_facts(project, "opening", id_of(project, "1"), {"notes": "meanwhile"}, who="ben")
        return found

    monkeypatch.setattr(freezing, "gather", meanwhile)
    made = froze(yard)
    assert len(calls) == 2
    then = read_revision(yard, made.letter)
    assert then.change_set == calls[1] == made.changes.number - 1
    assert {each.mark: each.given.opening.notes for each in then.openings}["1"] == "meanwhile"


def test_stopped_nothing_is_frozen(yard):
    before = state(yard)
    with pytest.raises(StoppedError):
        froze(yard, cancelled=lambda: True)
    assert (state(yard), contents(yard)) == (before, 0)


def test_a_content_changed_from_outside_is_told(yard):
    froze(yard)
    with yard.writing() as connection:
        connection.execute(update(FROZEN).where(FROZEN.c.kind == "fit").values(content=b"{}"))
    with pytest.raises(DamagedProjectError, match="not what was frozen"):
        read_revision(yard, "A")


def test_what_json_cannot_hold_is_never_frozen():
    made = Frozen()
    with pytest.raises(ValueError, match="cannot be frozen"):
        made.put("supply", {"worked": float("inf")})
    key = made.put("fit", Fit("fits"))
    assert made[key][0] == "fit"


@dataclass(frozen=True)
class Told:
    name: str
    width_mm: float | None = None
    words: dict[str, str] = field(default_factory=dict)


def test_what_a_revision_leaves_out_is_what_the_program_takes_for_unsaid():
    """Facts at their default are not written out: what is read back where nothing stands is the default again."""
    seen = set()
    for kind, record in (
        (OpeningInput, PointRecord),
        (Opening, type(compact_opening(Opening("o", "1")))),
        (Leaf, type(compact_leaf(Leaf("l")))),
        (Item, type(compact_item(Item("i", "lock")))),
        (Told, type(compacted(Told)(Told("a")))),
    ):
        held = {each.name: each for each in msgspec.structs.fields(record)}
        for each in fields(kind):
            if each.name not in held:
                continue
            if each.default_factory is not MISSING:
                assert held[each.name].default_factory() == each.default_factory(), each.name
                seen.add("made")
            elif each.default is not MISSING:
                assert held[each.name].default == each.default, each.name
                seen.add("given")
            else:
                assert held[each.name].required, each.name
                seen.add("needed")
    assert seen == {"made", "given", "needed"}
    assert msgspec.json.encode(compacted(Told)(Told("a"))) == b'{"name":"a"}'
    # Of lock points and openings too: a fact that a later program adds makes nothing other than it was.
    assert msgspec.json.encode(PointRecord()) == b"{}"
    bare = OpeningRecord(compact_opening(Opening("o", "1")), (), (), (), "f")
    assert msgspec.json.encode(bare) == (
        b'{"opening":{"id":"o","mark":"1"},"leaves":[],"items":[],"points":[],"findings":"f"}'
    )
    assert msgspec.json.decode(b'{"name":"a"}', type=type(compacted(Told)(Told("b")))).words == {}


def test_chunks_are_small_and_keep_their_openings():
    ids = [f"{number:032x}" for number in range(10_000)]
    bits = bits_for(len(ids))
    sizes = {}
    for each in ids:
        sizes[chunk_of(each, bits)] = sizes.get(chunk_of(each, bits), 0) + 1
    assert max(sizes.values()) < 64
    # With half of the openings gone those that stay are where they were.
    assert {chunk_of(each, bits) for each in ids[::2]} <= set(sizes)


def test_one_in_a_hundred_changed_adds_little(yard):
    """A hundred openings more, one of them changed: as many contents as one opening, its chunk and the root."""
    with yard.change("add", "Many", WHO) as change:
        change.insert(OPENING_TABLE, [{"mark": f"M{number}", "form": "cabinet"} for number in range(400)])
    first = froze(yard)
    assert first.contents > 403
    edit_facts(yard, "opening", id_of(yard, "M7"), {"notes": "seen"}, who=WHO)
    assert froze(yard).contents == 3


def test_a_chunk_comes_and_goes_with_its_only_opening(project):
    """Forty openings stand in two chunks; here all of them in the first, and one that comes later in the second."""
    ids = [f"{number:032x}" for number in range(200)]
    first = [each for each in ids if chunk_of(each, 1) == "0"][:40]
    (later,) = [each for each in ids if chunk_of(each, 1) == "1"][:1]
    assert bits_for(40) == bits_for(41) == 1

    def add(*new):
        with project.change("add", "Many", WHO) as change:
            change.insert(OPENING_TABLE, [{"id": each, "mark": each[-3:], "form": "cabinet"} for each in new])

    add(*first)
    froze(project)
    for step, count in ((lambda: add(later), 41), (lambda: remove(project, "opening", later, who=WHO), 40)):
        step()
        same_both_ways(project, revisions(project)[-1])
        then = read_revision(project, froze(project).letter)
        assert len(then.openings) == count
        assert (later in {each.given.opening.id for each in then.openings}) == (count == 41)


def test_of_a_part_of_the_project_is_held_what_feeds_it(yard):
    """1 and 2 hang on one supply, 3 on another: a revision of 1 says of the first supply with all that hangs on it."""
    near, far = closet(yard, "PS1"), closet(yard, "PS2")
    one, two, three = (id_of(yard, mark) for mark in "123")
    c1, c2 = circuit(yard, near), circuit(yard, far)
    connect_openings(yard, c1, [one, two], who=WHO, length_m=9.0)
    connect_openings(yard, c2, [three], who=WHO, length_m=9.0)
    set_route(yard, one, far, who=WHO, length_m=7.0)
    set_route(yard, two, far, who=WHO, length_m=8.0)
    fit_openings(yard, who=WHO)
    froze(yard, scope=Scope(marks=("1",)))
    present = read_revision(yard, "A").present
    assert [each.id for each in present.supplies] == [near]
    assert [each.id for each in present.circuits] == [c1]
    assert {each.opening_id for each in present.runs} == {one, two}
    assert [(each.opening_id, each.length_m) for each in present.routes] == [(one, 7.0)]
    froze(yard)
    present = read_revision(yard, "B").present
    assert [len(each) for each in (present.supplies, present.circuits, present.runs, present.routes)] == [2, 2, 3, 2]


def test_both_ways_of_gathering_are_one(yard):
    """From an earlier revision or from nothing: the same contents, so the same root."""
    froze(yard)
    (base,) = revisions(yard)
    steps = [
        lambda: edit_facts(yard, "opening", id_of(yard, "1"), {"rating": "90"}, who=WHO),
        lambda: fit_openings(yard, who=WHO),
        lambda: add_opening(yard, {"mark": "9", "building": "New", "level": "7"}, who=WHO),
        lambda: remove(yard, "opening", id_of(yard, "2"), who=WHO),
        lambda: undo(yard, who=WHO),
        lambda: set_settings(yard, who=WHO, prefer="holes"),
        lambda: connect_openings(yard, circuit(yard, closet(yard)), [id_of(yard, "3")], who=WHO, length_m=9.0),
        lambda: edit_facts(yard, "opening", id_of(yard, "3"), {"mark": "33"}, who=WHO),
        lambda: fit_openings(yard, who=WHO),
    ]
    for step in steps:
        step()
        same_both_ways(yard, base)
        froze(yard)
        base = revisions(yard)[-1]


def same_both_ways(project, base, scope=None, today=TODAY):
    scope = scope or Scope()
    bare = gather(project, scope, today)
    onto = gather(project, scope, today, base=base)
    assert bare.root == onto.root
    return len(onto.contents), len(bare.contents)


def beside(walk, rng):
    """Do something to what hangs at openings and parts, or to the bench's record."""
    project = walk.project
    opening = rng.choice(walk.openings())
    held = attachments_of(project)
    if held and rng.random() < 0.4:
        one = rng.choice(held)
        detach(project, [one.id], who=WHO)
        walk.log.append(f"detach {one.name} of {one.about}")
    elif rng.random() < 0.6:
        (entity, row) = rng.choice([("opening", opening), ("leaf", walk.given(opening).leaves[0].id)])
        if rng.random() < 0.2:
            with project.reading() as connection:
                entity, row = "part", connection.execute(select(PART.c.id)).scalar()
        name = f"{rng.randrange(10**6)}.txt"
        attach_content(project, entity, row, name, name.encode(), who=WHO)
        walk.log.append(f"attach {name} to {entity} {row}")
    else:
        there = [each for each in pieces(project, opening) if each.role in AT_BENCH]
        if there:
            piece = rng.choice(there)
            done = [word for word in AT_BENCH[piece.role] if rng.random() < 0.5]
            record_piece(project, opening, piece.id, who=WHO, done=done, serial=rng.choice([None, "", piece.id[:6]]))
            walk.log.append(f"bench {piece.role} of {opening}: {done}")


def same_after_a_check(project, checker, today=TODAY):
    """Whole, and with what that checker found earlier."""
    assert gather(project, Scope(), today, checker=checker).root == gather(project, Scope(), today).root


def test_what_was_just_checked_is_not_checked_again(yard, monkeypatch):
    checker, asked = Checker(), []
    found = check_openings(yard, checker=checker, today=TODAY)
    real = frozen_state.check_openings

    def counted(project, ids=None, **more):
        asked.append(None if ids is None else sorted(ids))
        return real(project, ids, **more)

    def frozen(today=TODAY):
        asked.clear()
        gather(yard, Scope(), today, checker=checker)
        return list(asked)

    monkeypatch.setattr(frozen_state, "check_openings", counted)
    assert frozen() == []
    edit_facts(yard, "opening", id_of(yard, "2"), {"notes": "read again"}, who=WHO)
    assert frozen() == [[id_of(yard, "2")]]
    same_after_a_check(yard, checker)
    assert frozen(TODAY + timedelta(days=1)) == [None]
    set_settings(yard, who=WHO, limits={"battery-life.days": 400.0})
    assert frozen() == [None]
    same_after_a_check(yard, checker)
    found = check_openings(yard, checker=checker, today=TODAY)
    assert frozen() == []
    assert found
    # Nobody looks at it any more: it is not kept for a freeze that may never come.
    found = None
    assert frozen() == [None]


def test_documents_are_built_from_what_was_just_checked_until_something_is_written(yard, monkeypatch):
    checker, asked = Checker(), []
    real = project_view.check_openings
    monkeypatch.setattr(project_view, "check_openings", lambda *said, **more: asked.append(1) or real(*said, **more))
    found = check_openings(yard, checker=checker)
    view = project_view.project_view(yard, checker=checker)
    assert (asked, [each.given for each in view.openings]) == ([], [each.given for each in found])
    # Some of them are not all, and a written fact is read.
    project_view.project_view(yard, [id_of(yard, "1")], checker=checker)
    edit_facts(yard, "opening", id_of(yard, "2"), {"notes": "read again"}, who=WHO)
    view = project_view.project_view(yard, checker=checker)
    assert asked == [1, 1]
    assert "read again" in {each.given.opening.notes for each in view.openings}
    # What nobody holds any more is not taken for all that there is.
    found = check_openings(yard, checker=checker)
    del found[1]
    assert len(project_view.project_view(yard, checker=checker).openings) == len(found) + 1


def test_what_was_checked_within_a_step_that_was_taken_back_is_not_taken(yard):
    checker = Checker()
    seen = []

    def tried():
        with yard.change("freeze", "Tried", WHO):
            edit_facts(yard, "opening", id_of(yard, "2"), {"notes": "never"}, who=WHO)
            seen.extend(check_openings(yard, checker=checker, today=TODAY))
            raise RuntimeError

    with pytest.raises(RuntimeError):
        tried()
    edit_facts(yard, "opening", id_of(yard, "3"), {"notes": "instead"}, who=WHO)
    same_after_a_check(yard, checker)
    assert "never" in {each.given.opening.notes for each in seen}


def test_a_waiver_that_ends_between_two_revisions_is_seen(yard):
    until = (TODAY + timedelta(days=5)).isoformat()
    waive(yard, "case-offset-taken", person="p", reason="seen", who=WHO, opening_id=id_of(yard, "2"), today=TODAY,
          until=until)  # fmt: skip
    froze(yard)
    (base,) = revisions(yard)
    later = TODAY + timedelta(days=9)
    same_both_ways(yard, base, today=later)
    freeze(yard, who=WHO, today=later)
    findings = {each.mark: each.findings for each in read_revision(yard, "B").openings}["2"]
    assert not any(finding.waived for finding in findings)
    assert "waiver-past" in {finding.rule for finding in findings}


def test_another_program_judges_everything_anew(yard, monkeypatch):
    froze(yard)
    (base,) = revisions(yard)
    few, _ = same_both_ways(yard, base)
    monkeypatch.setattr("hwsched.operations.release.frozen_state.engine_fingerprint", lambda: {"program": "another"})
    all_of_it, bare = same_both_ways(yard, base)
    assert few < all_of_it == bare
    froze(yard)
    assert read_revision(yard, "B").engine == {"program": "another"}
    assert read_revision(yard, "A").engine == engine_fingerprint()


@pytest.mark.turns(2)
@pytest.mark.parametrize(
    "seed", [11, pytest.param(12, marks=pytest.mark.slow), pytest.param(13, marks=pytest.mark.slow)]
)
def test_random_edits_between_revisions(tmp_path, seed):
    """Freeze now and then on a walk of edits of every kind: each revision says for ever what there was."""
    walk = Walk(tmp_path / "w.hwsched", seed)
    rng = random.Random(seed)
    expected: dict[str, object] = {}
    bases: dict[Scope, RevisionInfo] = {}
    checker, found = Checker(), None
    for number in range(STEPS):
        walk.step()
        if rng.random() < 0.3:
            beside(walk, rng)
        if found is None or rng.random() < 0.2:
            found = check_openings(walk.project, checker=checker, today=TODAY)
        if rng.random() > 0.35 and number != STEPS - 1:
            continue
        scope = rng.choice([Scope(), Scope(), Scope("Main")])
        ids = None
        if scope != Scope():
            ids = [
                each.given.opening.id for each in check_openings(walk.project) if each.given.opening.building == "Main"
            ]
        if ids == []:
            continue
        if scope in bases:
            same_both_ways(walk.project, bases[scope], scope)
        same_after_a_check(walk.project, checker)
        now = state_now(walk.project, ids)
        made = froze(walk.project, scope=scope)
        bases[scope] = revisions(walk.project)[-1]
        expected[made.letter] = now if ids is None else {**now, "laid": None}
        walk.log.append(f"freeze {made.letter}")
    assert len(expected) > 3
    walk.project.close()
    with open_project(tmp_path / "w.hwsched") as anew:
        for letter, held in expected.items():
            if letter not in {each.letter for each in revisions(anew)}:
                # The walk took it back.
                continue
            then = state_then(read_revision(anew, letter))
            if held["laid"] is None:
                then["laid"] = None
            assert then == held, (letter, walk.log)


def test_a_survey_taken_in_again_adds_what_it_changed(sample_file, tmp_path):
    with open_project(sample_file) as project:
        first = froze(project)
        import_catalogue(project, SAMPLE / "catalogue.xlsx", who=WHO)
        import_survey(project, SAMPLE / "survey.xlsx", SurveyOptions(), who=WHO, accept="good-rows")
        second = froze(project)
        assert first.contents > 250
        assert second.contents <= 1


def test_a_revision_is_read_without_the_parts_it_does_not_name(yard):
    froze(yard, scope=Scope(marks=("1",)))
    then = read_revision(yard, "A")
    assert isinstance(then.catalogue, Catalogue)
    assert len(then.openings) == 1
    assert then.present.supplies == ()


def test_days_are_those_of_the_person_at_work(yard):
    freeze(yard, who=WHO)
    assert read_revision(yard, "A").day == date.today().isoformat()


def test_a_small_project_from_a_file(tmp_path):
    with small(tmp_path / "s.hwsched") as project:
        froze(project)
        assert len(read_revision(project, "A").openings) == 3
