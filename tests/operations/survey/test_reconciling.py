"""A second delivery of the same building: what is the same, spelt otherwise, renamed, gone, emptied, set by hand."""

from dataclasses import replace

import pytest
from sqlalchemy import select

from hwsched.exchange.survey import renaming
from hwsched.exchange.survey.book import SurveyOptions
from hwsched.exchange.survey.facts import Decisions, SurveyedLeaf, SurveyedOpening
from hwsched.model.project import create_project, open_project
from hwsched.model.queries import read_inputs
from hwsched.model.tables import IMPORT_MAPPING, ITEM_TABLE
from hwsched.operations.project.history import undo
from hwsched.operations.survey.editing import add_item, add_opening, remove
from hwsched.operations.survey.survey_import import import_survey, preview_survey
from hwsched.operations.survey.typed_values import type_in
from tests.once import copied

HEADER = "Mark,Level,Room from,Room to,Hand,Width,Thickness,Rating"
FIRST = (
    "101,1,Corridor,Office,LH,36,1 3/4,90 min",
    "102,1,Corridor,Store,RH,36,1 3/4,45 min",
    "D-103,1,Corridor,Plant,RH,32,1 3/4,none",
    "104,1,Hall,Stair,LH,36,1 3/4,90 min",
    "105,2,Hall,Library,LH,34,1 3/4,none",
    "106,2,Hall,Lab,RH,36,2,none",
)


def delivery(folder, rows, header=HEADER, name="doors.csv"):
    path = folder / name
    path.write_text("\n".join([header, *rows]), encoding="utf-8")
    return path


def make(path):
    with create_project(str(path), "Second delivery", bare_unit="in") as made:
        import_survey(made, delivery(path.parent, FIRST), SurveyOptions(), who="surveyor")


@pytest.fixture
def project(tmp_path):
    copied("first delivery", tmp_path / "p.hwsched", make)
    with open_project(str(tmp_path / "p.hwsched")) as opened:
        yield opened


def with_rows(**changed):
    """The first delivery with some rows changed, by their mark; None leaves one out."""
    rows = {row.partition(",")[0]: row for row in FIRST} | {
        mark.replace("_", "-"): row for mark, row in changed.items()
    }
    return [row for row in rows.values() if row is not None]


def openings(project):
    with project.reading() as connection:
        return {given.opening.mark: given for given in read_inputs(connection)}


def seen(project, folder, rows, header=HEADER, **decided):
    options = SurveyOptions(decisions=Decisions(**decided))
    return preview_survey(project, delivery(folder, rows, header), options).preview


def taken(project, folder, rows, header=HEADER, **decided):
    options = SurveyOptions(decisions=Decisions(**decided))
    return import_survey(project, delivery(folder, rows, header), options, who="surveyor").preview


def row(mark, rest):
    return f"{mark},{rest}"


STORE = FIRST[1].partition(",")[2]
PLANT = FIRST[2].partition(",")[2]


@pytest.mark.parametrize("spelt", ["d-103", "D\u2013103", "D - 103", "D-0103", "D-103.0"])
def test_a_mark_spelt_otherwise_is_asked_about_and_makes_no_second_opening(project, tmp_path, spelt):
    rows = [*(each for each in FIRST if not each.startswith("D-103")), row(spelt, PLANT)]
    preview = taken(project, tmp_path, rows)
    assert [(each.mark, each.known, each.kind) for each in preview.undecided] == [(spelt, "D-103", "spelling")]
    assert (preview.new, preview.missing) == ((), ())
    assert len(openings(project)) == 6
    assert any(line.startswith(f"asked: {spelt} may be D-103") for line in preview.describe())


def test_the_same_opening_keeps_its_mark_and_takes_what_the_file_says(project, tmp_path):
    was = openings(project)["D-103"].opening.id
    rows = [*(each for each in FIRST if not each.startswith("D-103")), row("d-103", PLANT.replace("RH", "LH"))]
    taken(project, tmp_path, rows, same={"d-103": "D-103"})
    now = openings(project)["D-103"].opening
    assert (now.id, now.hand, len(openings(project))) == (was, "LH", 6)


def test_openings_apart_are_new_on_a_person_s_word(project, tmp_path):
    preview = taken(project, tmp_path, [*FIRST[:2], *FIRST[3:], row("d-103", PLANT)], apart=frozenset({"d-103"}))
    assert [opening.mark for opening in preview.new] == ["d-103"]
    assert len(openings(project)) == 7


def test_marks_of_one_file_that_are_one_but_for_their_spelling_are_asked_about(project, tmp_path):
    rows = [*FIRST, row("0101", FIRST[0].partition(",")[2]), row("d-103", PLANT.replace("RH", "LH"))]
    (oddity,) = seen(project, tmp_path, rows).oddities
    assert (oddity.id, oddity.marks) == ("spelt-alike", ("101", "0101", "D-103", "d-103"))
    # One opening of those that say the same; of the others somebody has to say which row is right.
    options = SurveyOptions(cures=frozenset({"spelt-alike"}))
    cured = preview_survey(project, delivery(tmp_path, rows), options).preview
    assert [each.marks for each in cured.oddities] == [("D-103", "d-103")]
    assert "0101" not in {each.mark for each in (*cured.new, *cured.undecided)}


def test_a_renamed_opening_is_proposed_with_its_evidence(project, tmp_path):
    preview = seen(project, tmp_path, with_rows(**{"102": row("S-2", STORE)}))
    (proposal,) = preview.undecided
    assert (proposal.mark, proposal.known, proposal.kind) == ("S-2", "102", "renamed")
    assert proposal.evidence == "the same rooms (Corridor, Store), 6 of 6 facts alike"


def test_a_renamed_opening_stays_the_same_opening(project, tmp_path):
    was = openings(project)["102"].opening.id
    preview = taken(project, tmp_path, with_rows(**{"102": row("S-2", STORE)}), proposals="take")
    assert [(f.attribute, f.before, f.after) for f in preview.changed[0].facts] == [("mark", "102", "S-2")]
    now = openings(project)
    assert (now["S-2"].opening.id, len(now), "102" in now) == (was, 6, False)


def test_where_two_are_as_like_nothing_is_proposed(project, tmp_path):
    rows = with_rows(**{"102": row("S-2", STORE)})
    preview = seen(project, tmp_path, [*rows, row("T-2", STORE)])
    assert preview.undecided == ()
    assert [opening.mark for opening in preview.new] == ["S-2", "T-2"]
    assert preview.missing == ("102",)


def test_what_vanished_is_named_to_people(project, tmp_path):
    preview = seen(project, tmp_path, with_rows(**{"104": None, "106": None}))
    assert "in the project but not in the file, kept: 104, 106" in preview.describe()


BLANK = "101,1,Corridor,Office,,36,1 3/4,90 min"


def test_a_cell_that_is_blank_now_is_said_and_keeps_the_fact(project, tmp_path):
    preview = taken(project, tmp_path, with_rows(**{"101": BLANK}))
    assert "blank in the file, kept: Hand of 1 opening (101)" in preview.describe()
    assert openings(project)["101"].opening.hand == "LH"


def test_a_blank_cell_empties_the_fact_on_a_person_s_word(project, tmp_path):
    taken(project, tmp_path, with_rows(**{"101": BLANK}), emptied=frozenset({"hand"}))
    assert openings(project)["101"].opening.hand is None


LOCKED = HEADER + ",Lock type,Backset,Lite width"


def with_locks(*told):
    return [f"{row},{lock}" for row, lock in zip(FIRST, told, strict=True)]


def test_a_blank_cell_of_an_item_is_said_too_and_emptied_on_a_person_s_word(project, tmp_path):
    all_told = with_locks(*["mortise,2 3/4,9"] * 6)
    taken(project, tmp_path, all_told, LOCKED)
    fewer = with_locks("mortise,,9", "mortise,2 3/4,", ",,9", *["mortise,2 3/4,9"] * 3)
    preview = taken(project, tmp_path, fewer, LOCKED)
    assert {(mark, fact.where, fact.attribute) for mark, fact in preview.blank} == {
        ("101", "Lock", "backset_mm"), ("102", "Lite", "width_mm"),
        ("D-103", "Lock", "lock_form"), ("D-103", "Lock", "backset_mm"),
    }  # fmt: skip
    assert not taken(project, tmp_path, all_told, LOCKED).blank
    taken(project, tmp_path, fewer, LOCKED, emptied=frozenset({"backset_mm"}))
    backsets = {
        mark: [each.backset_mm for each in given.items if each.kind == "lock"]
        for mark, given in openings(project).items()
    }
    assert [mark for mark, (backset,) in backsets.items() if backset is None] == ["101", "D-103"]


def test_what_a_file_adds_comes_after_what_is_there_though_something_was_removed(project, tmp_path):
    one = openings(project)["101"].opening.id
    viewer, _ = (add_item(project, one, {"kind": kind}, who="ann")[1] for kind in ("viewer", "pull"))
    remove(project, "existing_item", viewer, who="ann")
    taken(project, tmp_path, with_locks(*["mortise,2 3/4,9"] * 6), LOCKED)
    first, *more = [item.kind for item in openings(project)["101"].items]
    assert (first, sorted(more)) == ("pull", ["lite", "lock"])
    with project.reading() as connection:
        numbered = connection.execute(select(ITEM_TABLE.c.ordinal).where(ITEM_TABLE.c.opening_id == one)).scalars()
        # The pull has kept its own; two of one number would stand now this way, now that.
        assert sorted(numbered) == [1, 2, 3]


def by_hand(project, mark, fact, text):
    given = openings(project)[mark]
    type_in(project, "opening", given.opening.id, fact, text, who="foreman")


def test_what_was_set_by_hand_is_not_emptied(project, tmp_path):
    by_hand(project, "101", "hand", "RH")
    taken(project, tmp_path, with_rows(**{"101": BLANK}), emptied=frozenset({"all"}))
    assert openings(project)["101"].opening.hand == "RH"


def test_a_file_that_says_what_it_said_before_leaves_an_edit_by_hand_alone(project, tmp_path):
    by_hand(project, "101", "hand", "RH")
    preview = taken(project, tmp_path, FIRST)
    assert (preview.changed, preview.by_hand, len(preview.unchanged)) == ((), (), 6)
    assert openings(project)["101"].opening.hand == "RH"


def test_a_file_that_says_something_new_is_shown_beside_the_edit_by_hand_which_stands(project, tmp_path):
    by_hand(project, "101", "hand", "RH")
    rows = with_rows(**{"101": FIRST[0].replace("LH", "LHR")})
    preview = taken(project, tmp_path, rows)
    (line,) = [each for each in preview.describe() if "set by hand" in each]
    assert line.startswith("101: Opening, Hand: RH stays, set by hand (foreman, ")
    assert line.endswith("the file says LHR")
    assert openings(project)["101"].opening.hand == "RH"
    taken(project, tmp_path, rows, over_hand=frozenset({"hand"}))
    assert openings(project)["101"].opening.hand == "LHR"


def test_a_level_set_by_hand_stands_too(project, tmp_path):
    by_hand(project, "101", "level", "1M")
    assert taken(project, tmp_path, FIRST).changed == ()
    assert openings(project)["101"].opening.level == "1M"


def test_what_was_taken_back_comes_in_again(project, tmp_path):
    rows = with_rows(**{"101": FIRST[0].replace("LH", "RH")})
    taken(project, tmp_path, rows)
    undo(project, who="surveyor")
    assert openings(project)["101"].opening.hand == "LH"
    taken(project, tmp_path, rows)
    assert openings(project)["101"].opening.hand == "RH"


def test_what_was_entered_by_hand_altogether_takes_the_file_s_word_and_says_whose_it_was(project, tmp_path):
    add_opening(project, {"mark": "900", "hand": "LH"}, who="foreman")
    preview = taken(project, tmp_path, [*FIRST, "900,1,,,RH,36,1 3/4,none"])
    assert openings(project)["900"].opening.hand == "RH"
    assert any("900: Opening, Hand: LH -> RH (was set by hand, foreman, " in line for line in preview.describe())


def test_a_second_delivery_with_a_bit_of_everything(project, tmp_path):
    """Two renamed, one gone, three changed, one blank, one set by hand: no opening twice, and by hand stands."""
    ids = {mark: given.opening.id for mark, given in openings(project).items()}
    by_hand(project, "106", "hand", "RHR")
    rows = [
        "101,1,Corridor,Office,RH,36,1 3/4,90 min",
        row("S-2", STORE),
        row("D\u2013103", PLANT),
        "105,2,Hall,Library,,32,1 3/4,20 min",
        "106,2,Hall,Lab,RH,36,1 3/4,none",
    ]
    preview = seen(project, tmp_path, rows)
    assert {(each.mark, each.known, each.kind) for each in preview.undecided} == {
        ("S-2", "102", "renamed"), ("D\u2013103", "D-103", "spelling"),
    }  # fmt: skip
    assert (preview.new, preview.missing) == ((), ("104",))
    done = taken(project, tmp_path, rows, proposals="take")
    now = openings(project)
    assert {mark: given.opening.id for mark, given in now.items()} == {
        {"102": "S-2"}.get(mark, mark): row_id for mark, row_id in ids.items()
    }
    assert (now["101"].opening.hand, now["105"].opening.rating, now["105"].opening.hand) == ("RH", "20", "LH")
    assert (now["106"].opening.hand, round(now["106"].leaves[0].thickness_mm, 2)) == ("RHR", 44.45)
    assert [(mark, fact.attribute) for mark, fact in done.blank] == [("105", "hand")]
    again = taken(project, tmp_path, rows, proposals="take")
    assert (again.new, again.changed) == ((), ())


def test_a_mark_one_sign_off_with_all_facts_alike_is_asked_about(project, tmp_path):
    header = "Mark,Level,Hand,Width,Thickness,Rating"
    rows = [
        "112,1,RH,36,1 3/4,45 min",
        "124,1,LH,36,1 3/4,none",
        *(f"{m},1,,,," for m in ("101", "D-103", "105", "106")),
    ]
    preview = seen(project, tmp_path, rows, header)
    # 104 is rated, and 124 is not: that one is another door.
    assert [(each.mark, each.known) for each in preview.undecided] == [("112", "102")]
    assert "marks that differ in one sign, 4 of 4 facts alike" in preview.undecided[0].evidence
    assert ([each.mark for each in preview.new], preview.missing) == (["124"], ("104",))


@pytest.mark.parametrize(("more", "proposed"), [(0, [("N-4", "102")]), (1, [])])
def test_all_facts_alike_speak_for_a_new_mark_where_no_other_opening_is_so(project, more, proposed):
    found = openings(project)["102"]
    opening = replace(found.opening, room_from=None, room_to=None, form="single")
    gone = [replace(found, opening=replace(opening, mark=mark)) for mark in ("102", "B-9")[: 1 + more]]
    facts = {"level": "1", "form": "single", "hand": "RH", "rating": "45"}
    leaf = SurveyedLeaf("single", {"width_mm": 914.4, "thickness_mm": 44.45}, "")
    made = renaming.renamed([SurveyedOpening("N-4", facts, (leaf,), (), "")], gone)
    assert [(each.mark, each.known) for each in made] == proposed
    assert all("no other opening like these, 5 of 5 facts alike" in each.evidence for each in made)


def test_marks_are_not_laid_each_beside_each(project, monkeypatch):
    """Four times as many openings cost at most five times as many comparisons."""
    (given,) = [each for mark, each in openings(project).items() if mark == "102"]
    counted = []
    likeness = renaming._likeness
    monkeypatch.setattr(renaming, "_likeness", lambda *told: counted.append(1) or likeness(*told))

    def comparisons(count):
        gone = [
            replace(given, opening=replace(given.opening, mark=f"{n}", room_to=f"Room {n}", id=f"{n}"))
            for n in range(count)
        ]
        new = [
            SurveyedOpening(f"N-{n}", {"level": "1", "room_from": "Corridor", "room_to": f"Room {n}"}, (), (), "")
            for n in range(count)
        ]
        counted.clear()
        assert len(renaming.renamed(new, gone)) == count
        return len(counted)

    assert comparisons(400) <= 5 * comparisons(100)


@pytest.mark.parametrize(
    ("name", "word"),
    [("decimal", "comma"), ("counts", "one"), ("pairs", "leaf"), ("tables", "left-out"), ("openings_in", "rows")],
)
def test_how_a_file_is_read_is_remembered_though_it_changes_nothing(project, tmp_path, name, word):
    def remembered():
        with project.reading() as connection:
            (mapping,) = connection.execute(select(IMPORT_MAPPING.c.mapping)).scalars()
        return mapping.get(name, "")

    path, before = delivery(tmp_path, FIRST), remembered()
    assert import_survey(project, path, SurveyOptions(), who="surveyor").preview.changed == ()
    # Nothing was said, and nothing is kept.
    assert remembered() == before != word
    import_survey(project, path, SurveyOptions(**{name: word}), who="surveyor")
    assert remembered() == word
