"""A deadbolt above a lock, and a pair with a lock in each leaf: surveyed, fitted, checked, fed and printed.

Every number is worked out by hand. The usual unit's plate is 80 x 160 mm; straight through, its connector at (40, 80)
stands as near to the lead's hole as its window (10 to 70, 15 to 60) lets it: the hole at (40, 60) of the plate. With a
backset of 69.85 the plate begins 29.85 from the lock edge and 60 below the cylinder.
"""

import pytest
from openpyxl import Workbook
from pypdf import PdfReader

from hwsched.documents.parts.cost_estimate import COST_ESTIMATE
from hwsched.documents.power.battery_calendar import BATTERY_CALENDAR
from hwsched.documents.release.packet import PACKET
from hwsched.documents.release.schedule import SCHEDULE
from hwsched.documents.stock.pick_list import PICK_LIST
from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.queries import read_fits, read_inputs
from hwsched.model.tables import ITEM_TABLE
from hwsched.operations.findings.checking import Checker, check_openings, look_again
from hwsched.operations.findings.waivers import waive
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.opening.hand_choices import choose_part, place_unit, release_part, release_unit
from hwsched.operations.opening.lock_points import point_named
from hwsched.operations.project.history import undo
from hwsched.operations.release.issued_documents import issue_by_name
from hwsched.operations.release.project_view import project_view
from hwsched.operations.survey.editing import edit_facts, remove
from hwsched.operations.survey.survey_forms import write_form
from hwsched.operations.survey.survey_import import import_survey
from hwsched.values.fit import together
from tests.documents.reading import blocks, lines, texts
from tests.operations.locked import (
    LOCK,
    SECOND,
    WHO,
    YARD,
    deadbolt,
    filled,
    id_of,
    points_of,
    started,
    surveyed,
    yard,
)
from tests.operations.powered import stated
from tests.rules.scenario import leaf

EACH = {
    "CYL": 1, "CAM": 1, "COL": 1, "UNIT": 1, "CELL": 6, "COIN": 1, "SCREW": 4, "LOCKER": 0.05, "SLEEVE": 1, "KEY": 1,
}  # fmt: skip
"""What one lock takes: the unit's 6 cells in series and 4 screws; a tube of thread lock serves about 20."""
BOLT = {**{number: count for number, count in EACH.items() if number != "SCREW"}, "LONG": 4}
"""What the deadbolt takes. Before a case of 25.4 in the middle of 44.45 a screw of 9.525 ends; its case, 1255
to 1345, lies between the screws of its unit, 6 inside the corners of a plate from 1240 to 1400: there 25.4 does."""
PRICE = 100.0 + 3 * 10.0 + 200.0 + 4 * 0.1 + 6 * 1.0 + 1.0 + 0.5 + 0.05 * 6.0
"""Cylinder 100; cam, collar and key 10 each; unit 200; screws 0.1; cells 1; coin cell 1; sleeve 0.5; thread lock 6."""


@pytest.fixture(scope="module")
def shop(tmp_path_factory):
    """The yard as its survey was taken in and fitted; it is only read."""
    project = yard(tmp_path_factory.mktemp("locked"))
    yield project
    project.close()


@pytest.fixture
def own(tmp_path):
    """The same, to be changed."""
    project = yard(tmp_path)
    yield project
    project.close()


def inputs(project, mark):
    with project.reading() as connection:
        return list(read_inputs(connection, [id_of(project, mark)]))


def fits(project, mark):
    """The stored fit of each lock point by its name."""
    names = points_of(project, mark)
    with project.reading() as connection:
        stored = read_fits(connection, [id_of(project, mark)])
    return {name: stored[point].fit for name, point in names.items() if point in stored}


def places(project, mark):
    """Of each lock point: leaf, face, and the lower left corner of its unit's plate."""
    return {
        name: (fit.placement.leaf, fit.placement.face, fit.placement.x_mm, fit.placement.y_mm)
        for name, fit in fits(project, mark).items()
    }


def checked(project, mark, **more):
    [found] = [each for each in check_openings(project, **more) if each.given.opening.mark == mark]
    return found


def said(project, mark, rule):
    return [(each.point, each.severity, each.waived) for each in checked(project, mark).findings if each.rule == rule]


# --- survey -----------------------------------------------------------------------------------------------------------


def known(row, without=("ordinal",)):
    return stated(row, ITEM_TABLE, without)


def test_the_form_takes_a_second_lock_on_a_leaf_with_all_its_facts(shop):
    first, second = inputs(shop, "101")
    assert (first.point.name, second.point.name) == ("lock", "deadbolt")
    by_id = {each.id: each for each in first.items}
    taken, bolt = by_id[first.point.item_id], by_id[second.point.item_id]
    assert known(taken, ("ordinal", "leaf")) == known(LOCK)
    assert known(bolt, ("ordinal", "leaf")) == known(deadbolt())


def test_the_form_takes_a_lock_in_each_leaf_of_a_pair_with_all_its_facts(shop):
    first, second = inputs(shop, "P1")
    assert (first.point.name, second.point.name) == ("active leaf", "inactive leaf")
    by_id = {each.id: each for each in first.items}
    for given, leaf_position, wanted in ((first, "active", LOCK), (second, "inactive", SECOND)):
        taken = by_id[given.point.item_id]
        assert taken.leaf == leaf_position
        assert known(taken, ("ordinal", "leaf")) == known(wanted)
    assert [leaf.width_mm for leaf in first.leaves] == [914.4, 700.0]


def test_a_form_for_a_return_visit_holds_every_lock_and_changes_nothing(own, tmp_path):
    path = tmp_path / "again.xlsx"
    assert write_form(own, path, ids=[id_of(own, mark) for mark in ("101", "P1", "S1")]) == 3
    again = import_survey(own, path, SurveyOptions(), who=WHO)
    assert again.changes.number is None
    assert sorted(again.preview.unchanged) == ["101", "P1", "S1"]


def test_the_same_form_twice_changes_nothing(own, tmp_path):
    again = import_survey(own, filled(tmp_path / "twice.xlsx", *YARD), SurveyOptions(), who=WHO)
    assert again.changes.number is None


def test_a_survey_on_one_sheet_names_further_locks_in_rows_of_their_own(tmp_path):
    book = Workbook()
    header = ["Mark", "Type", "Leaf", "Width", "Item", "Disposition", "Lock type", "Backset", "Cylinder height"]
    book.active.append(header)
    book.active.append(["1", "single", None, 36, "lock", None, "mortise", "2 3/4", 40])
    book.active.append(["1", None, None, None, "deadbolt", "replace", "bored", "2 3/8", 48])
    book.active.append(["2", "pair", "active", 36, "lock", None, "mortise", "2 3/4", 40])
    book.active.append(["2", None, "inactive", 24, "lock", None, "mortise", "2 1/2", 41])
    book.save(tmp_path / "one.xlsx")
    project = started(tmp_path)
    with project:
        import_survey(project, tmp_path / "one.xlsx", SurveyOptions(bare_unit="in"), who=WHO)
        assert list(points_of(project, "1")) == ["lock", "deadbolt"]
        assert list(points_of(project, "2")) == ["active leaf", "inactive leaf"]
        first = inputs(project, "1")[1]
        bolt = next(each for each in first.items if each.id == first.point.item_id)
        assert (bolt.lock_form, bolt.backset_mm, bolt.cylinder_height_mm) == ("bored", 60.325, 1219.2)
        other = inputs(project, "2")[1]
        second = next(each for each in other.items if each.id == other.point.item_id)
        assert (second.leaf, second.backset_mm, second.cylinder_height_mm) == ("inactive", 63.5, 1041.4)


def test_a_survey_that_comes_later_makes_a_point_and_its_undo_takes_it_away(own, tmp_path):
    later = filled(tmp_path / "later.xlsx", (surveyed("S1"), ((leaf(), LOCK),), (deadbolt(),)))
    import_survey(own, later, SurveyOptions(), who=WHO)
    assert list(points_of(own, "S1")) == ["lock", "deadbolt"]
    undo(own, who=WHO)
    assert list(points_of(own, "S1")) == [""]


# --- fits -------------------------------------------------------------------------------------------------------------


def test_each_lock_is_fitted_where_it_is(shop):
    assert places(shop, "101") == {
        "lock": ("single", "inside", pytest.approx(29.85), pytest.approx(940.0)),
        "deadbolt": ("single", "inside", pytest.approx(29.85), pytest.approx(1240.0)),
    }
    assert places(shop, "P1") == {
        "active leaf": ("active", "inside", pytest.approx(29.85), pytest.approx(940.0)),
        "inactive leaf": ("inactive", "inside", pytest.approx(29.85), pytest.approx(950.0)),
    }
    # The first unit ends at 940 + 160 = 1100 mm: 140 mm below the second.
    bolt = fits(shop, "101")["deadbolt"].placement
    assert dict(bolt.clearances)["unit of the lock"] == pytest.approx(140.0)


def test_each_lock_takes_its_own_parts_and_costs(shop):
    for mark in ("101", "P1"):
        for name, fit in fits(shop, mark).items():
            taken = {part.part: part.quantity for part in fit.parts if part.role != "tool"}
            assert taken == pytest.approx(BOLT if name == "deadbolt" else EACH)
            assert float(fit.cost) == pytest.approx(PRICE)
        whole = checked(shop, mark).fit
        assert (whole.status, float(whole.cost)) == ("fits", pytest.approx(2 * PRICE))
    assert float(checked(shop, "S1").fit.cost) == pytest.approx(PRICE)


def test_each_lock_is_drilled_where_it_is(shop):
    for mark, heights in (("101", (1000.0, 1300.0)), ("P1", (1000.0, 1010.0))):
        for fit, height in zip(fits(shop, mark).values(), heights, strict=True):
            lead = next(hole for hole in fit.holes if hole.purpose == "cable")
            assert (lead.face, lead.x_mm, lead.y_mm, lead.diameter_mm) == ("inside", 69.85, height, 12.7)


def test_a_unit_makes_room_for_that_of_the_lock_below(tmp_path):
    """At 1150 mm its plate would begin at 1090; the one below ends at 1100, and 1/8 in are left: 1103.175."""
    with yard(tmp_path, (surveyed("101"), ((leaf(), LOCK),), (deadbolt(1150.0),))) as project:
        assert places(project, "101") == {
            "lock": ("single", "inside", pytest.approx(29.85), pytest.approx(940.0)),
            "deadbolt": ("single", "inside", pytest.approx(29.85), pytest.approx(1100.0 + 3.175)),
        }
        assert checked(project, "101").fit.status == "fits"


def test_a_unit_keeps_off_the_trim_of_the_lock_that_is_worked_out_later(tmp_path):
    """An escutcheon of 200 mm round a deadbolt at 840 ends at 940 mm, where the plate would begin: 3/16 in are left."""
    low = deadbolt(840.0, x_mm=69.85, y_mm=840.0, width_mm=60.0, height_mm=200.0, trim_inside_mm=8.0)
    with yard(tmp_path, (surveyed("101"), ((leaf(), LOCK),), (low,))) as project:
        assert places(project, "101")["lock"][2:] == (pytest.approx(29.85), pytest.approx(940.0 + 3 / 16 * 25.4))
        assert said(project, "101", "trim-clear") == []


def test_a_later_point_waits_for_the_earlier_one(own):
    """What is not known of the first lock is asked there; the deadbolt is fitted all the same."""
    lock = inputs(own, "101")[0].point.item_id
    edit_facts(own, "existing_item", lock, {"backset_mm": None}, who=WHO)
    fit_openings(own, who=WHO)
    found = fits(own, "101")
    assert found["lock"].status == "to-measure"
    whole = checked(own, "101")
    assert whole.fit.status == "to-measure"
    assert {"existing_item.backset_mm"} <= {need.fact for need in found["lock"].needs}


def test_a_change_at_the_first_lock_puts_the_second_s_fit_out_of_date(own):
    lock = inputs(own, "101")[0].point.item_id
    edit_facts(own, "existing_item", lock, {"cylinder_height_mm": 990.0}, who=WHO)
    seen = checked(own, "101")
    assert [each.fit is None for each in seen.points] == [True, True]
    fit_openings(own, who=WHO)
    assert places(own, "101")["lock"][3] == pytest.approx(930.0)
    assert places(own, "101")["deadbolt"][3] == pytest.approx(1240.0)


def test_a_change_at_the_second_lock_leaves_what_it_does_not_touch(own):
    bolt = inputs(own, "101")[1].point.item_id
    edit_facts(own, "existing_item", bolt, {"cylinder_height_mm": 1310.0}, who=WHO)
    fit_openings(own, who=WHO)
    assert [place[3] for place in places(own, "101").values()] == [pytest.approx(940.0), pytest.approx(1250.0)]


def test_looking_again_at_once_says_what_fitting_and_checking_say(own):
    bolt = inputs(own, "101")[1].point.item_id
    edit_facts(own, "existing_item", bolt, {"cylinder_height_mm": 1150.0}, who=WHO)
    [seen] = look_again(own, [id_of(own, "101")], checker=Checker())
    fit_openings(own, who=WHO)
    stored = checked(own, "101")
    assert [each.fit for each in seen.points] == [each.fit for each in stored.points]
    assert seen.findings == stored.findings


def test_a_single_lock_is_worked_out_as_though_there_were_no_lock_points(shop, own):
    """The same lock alone: what a further lock on the leaf changes is nothing of it here."""
    [alone] = inputs(shop, "S1")
    assert (alone.point.others, alone.beside, alone.point.name) == ((), (), "")
    remove(own, "existing_item", inputs(own, "101")[1].point.item_id, who=WHO)
    fit_openings(own, who=WHO)
    assert fits(own, "101")[""] == fits(own, "S1")[""]
    with own.reading() as connection:
        stored = read_fits(connection)
    same = {stored[id_of(own, mark)].input_key for mark in ("101", "S1")}
    assert len(same) == 1


def test_openings_alike_share_their_fits_point_by_point(tmp_path):
    rows = [(surveyed(mark), ((leaf(), LOCK),), (deadbolt(),)) for mark in ("1", "2", "3")]
    with yard(tmp_path, *rows) as project:
        keys = []
        with project.reading() as connection:
            stored = read_fits(connection)
        for mark in ("1", "2", "3"):
            keys.append([stored[point].input_key for point in points_of(project, mark).values()])
        assert keys[0] == keys[1] == keys[2]
        assert keys[0][0] != keys[0][1]


def test_fits_put_together_are_an_opening_s_only_where_all_are_fitted():
    from hwsched.values import Fit

    good, unknown, bad = Fit("fits"), Fit("to-measure"), Fit("does-not-fit")
    assert together([good, good]).status == "fits"
    assert together([good, unknown]).status == "to-measure"
    assert together([good, bad]).status == "does-not-fit"


# --- rules ------------------------------------------------------------------------------------------------------------


def test_what_concerns_the_opening_is_said_once_and_what_concerns_a_lock_names_it(own):
    bolt = inputs(own, "101")[1].point.item_id
    edit_facts(own, "opening", id_of(own, "101"), {"accessible": True}, who=WHO)
    edit_facts(own, "existing_item", bolt, {"cylinder_height_mm": 1300.0}, who=WHO)
    fit_openings(own, who=WHO)
    # 1300 mm is above 48 in; 1000 mm is within.
    assert said(own, "101", "reach-height") == [("deadbolt", "warning", False)]
    [finding] = [each for each in checked(own, "101").findings if each.rule == "reach-height"]
    assert finding.message.startswith("Deadbolt: ")
    for rule in ("tool-known", "coin-cell-drain", "programmed-before-work"):
        assert said(own, "101", rule) == [("", "note", False)]


def test_a_deadlock_above_a_latch_on_an_escape_route(own):
    """Two things hold the leaf, and the deadlock takes a key from inside: it may not stay so."""
    edit_facts(own, "opening", id_of(own, "101"), {"egress": "egress", "egress_toward": "key"}, who=WHO)
    fit_openings(own, who=WHO)
    assert said(own, "101", "one-motion") == [("", "warning", False)]
    assert said(own, "101", "free-inside") == [("deadbolt", "error", False)]
    # Each leaf of the pair is held by its own lock alone.
    edit_facts(own, "opening", id_of(own, "P1"), {"egress": "egress"}, who=WHO)
    fit_openings(own, who=WHO)
    assert said(own, "P1", "one-motion") == []


def test_a_waiver_of_what_concerns_one_lock_waives_that(own):
    edit_facts(own, "opening", id_of(own, "101"), {"accessible": True}, who=WHO)
    fit_openings(own, who=WHO)
    waive(own, "reach-height", opening_id=id_of(own, "101"), person="Ann", reason="seen", who=WHO, scope="opening")
    assert said(own, "101", "reach-height") == [("deadbolt", "warning", True)]
    bolt = inputs(own, "101")[1].point.item_id
    edit_facts(own, "existing_item", bolt, {"cylinder_height_mm": 1310.0}, who=WHO)
    fit_openings(own, who=WHO)
    assert said(own, "101", "reach-height") == [("deadbolt", "warning", False)]


# --- by hand ----------------------------------------------------------------------------------------------------------


def test_a_part_is_chosen_for_one_lock(own):
    opening, points = id_of(own, "101"), points_of(own, "101")
    choose_part(own, opening, "unit", "NARROW", who=WHO, point=points["deadbolt"])
    fit_openings(own, who=WHO)
    units = {name: fit.part("unit").part for name, fit in fits(own, "101").items()}
    assert units == {"lock": "UNIT", "deadbolt": "NARROW"}
    choose_part(own, opening, "unit", "NARROW", who=WHO)
    release_part(own, opening, "unit", who=WHO, point=points["deadbolt"])
    fit_openings(own, who=WHO)
    units = {name: fit.part("unit").part for name, fit in fits(own, "101").items()}
    assert units == {"lock": "NARROW", "deadbolt": "UNIT"}


def test_a_unit_is_placed_for_one_lock(own):
    opening, points = id_of(own, "101"), points_of(own, "101")
    where = {"leaf": "single", "face": "inside", "pattern": "straight", "x_mm": 25.0}
    place_unit(own, opening, **where, y_mm=1250.0, who=WHO, point=points["deadbolt"])
    fit_openings(own, who=WHO)
    assert places(own, "101")["deadbolt"][2:] == (25.0, 1250.0)
    assert places(own, "101")["lock"][2:] == (pytest.approx(29.85), pytest.approx(940.0))
    # Placed over the lower unit, the upper one says so; the lower one has done nothing.
    place_unit(own, opening, **where, y_mm=1098.0, who=WHO, point=points["deadbolt"])
    fit_openings(own, who=WHO)
    assert ("deadbolt", "error", False) in said(own, "101", "item-clear")
    release_unit(own, opening, who=WHO, point=points["deadbolt"])
    fit_openings(own, who=WHO)
    assert places(own, "101")["deadbolt"][3] == pytest.approx(1240.0)


def test_the_upper_unit_makes_way_where_the_lower_one_is_placed_higher(tmp_path):
    """The cylinder of the deadbolt is 205 mm above the lock's: its unit stands 60 mm below it, 45 mm above the other.

    With the lower unit placed from 985 to 1145 mm the upper one begins where it is 3.175 mm clear of it.
    """
    one = surveyed("101"), ((leaf(), LOCK),), (deadbolt(1205.0),)
    with yard(tmp_path, one) as project:
        assert [places(project, "101")[name][3] for name in ("lock", "deadbolt")] == [
            pytest.approx(940.0), pytest.approx(1145.0),
        ]  # fmt: skip
        where = {"leaf": "single", "face": "inside", "pattern": "straight", "x_mm": 29.85, "y_mm": 985.0}
        place_unit(project, id_of(project, "101"), **where, who=WHO, point=points_of(project, "101")["lock"])
        fit_openings(project, who=WHO)
        assert places(project, "101")["lock"][3] == 985.0
        assert places(project, "101")["deadbolt"][3] == pytest.approx(1145.0 + 3.175)
        assert said(project, "101", "item-clear") == []


def test_a_lock_point_is_named_by_its_name_or_its_number(shop):
    opening, points = id_of(shop, "101"), points_of(shop, "101")
    assert point_named(shop, opening, None) is None
    assert point_named(shop, opening, "deadbolt") == point_named(shop, opening, "2") == points["deadbolt"]
    assert point_named(shop, opening, "Lock") == points["lock"]
    with pytest.raises(ValueRefusedError, match=r"accepted: lock \(1\), deadbolt \(2\)"):
        point_named(shop, opening, "bolt")
    assert point_named(shop, id_of(shop, "S1"), "1") == id_of(shop, "S1")


def test_what_is_not_locked_any_more_is_not_chosen_for(own):
    opening, points = id_of(own, "101"), points_of(own, "101")
    remove(own, "existing_item", inputs(own, "101")[1].point.item_id, who=WHO)
    with pytest.raises(MissingRowError):
        choose_part(own, opening, "unit", "NARROW", who=WHO, point=points["deadbolt"])
    with pytest.raises(MissingRowError):
        choose_part(own, opening, "unit", "NARROW", who=WHO, point=id_of(own, "S1"))


# --- print ------------------------------------------------------------------------------------------------------------


DROPS = {"LOCKER": "-"}
"""Of the tube one opening takes some drops: no quantity of it stands on a schedule."""


def quantities(rows):
    return {row["Catalogue number"]: "-" if row["Qty"] == "-" else float(row["Qty"]) for row in rows}


def test_the_schedule_has_a_heading_an_opening_with_the_lines_of_each_lock(shop):
    document = SCHEDULE.build(project_view(shop), None)
    index = {line["Mark"]: line["Heading"] for line in lines(document, "Opening index")}
    assert sorted(index) == ["101", "P1", "S1"]
    for mark, names in (("101", ("lock", "deadbolt")), ("P1", ("active leaf", "inactive leaf"))):
        rows = lines(document, f"Heading {index[mark]}")
        heads = [row["Item"] for row in rows if not row["Qty"]]
        assert heads == [f"At the {name}" for name in names]
        middle = [row["Item"] for row in rows].index(heads[1])
        for name, part in zip(names, (rows[1:middle], rows[middle + 1 :]), strict=True):
            assert quantities(part) == (BOLT if name == "deadbolt" else EACH) | DROPS
        assert [row["No."] for row in rows if row["No."]] == list(range(1, 21))
    alone = lines(document, f"Heading {index['S1']}")
    assert quantities(alone) == EACH | DROPS


def test_the_pick_list_holds_what_all_locks_take(shop):
    """Five locks in three openings."""
    totals = lines(PICK_LIST.build(project_view(shop), None), "Totals")
    # A twentieth of a bottle each: the warehouse takes one.
    expected = {number: 5 * count for number, count in EACH.items()} | {"SCREW": 16, "LONG": 4, "LOCKER": 1}
    assert {line["Part"]: float(line["Qty"]) for line in totals} == pytest.approx(expected)


def packet(project, mark):
    view = project_view(project)
    [opening] = [each for each in view.openings if each.mark == mark]
    return PACKET.build(view, opening)


def test_a_packet_has_a_part_a_lock_and_one_box(shop):
    document = packet(shop, "101")
    titles = [block.text for block in blocks(document) if type(block).__name__ == "Heading" and block.level == 1]
    assert [title for title in titles if title.startswith("Lock point")] == [
        "Lock point 1: lock",
        "Lock point 2: deadbolt",
    ]
    rows = lines(document, "Box contents")
    heads = [row["Description"] for row in rows if not row["Part"]]
    assert heads == ["For the lock:", "For the deadbolt:"]
    middle = [row["Description"] for row in rows].index(heads[1])
    for each, part in ((EACH, rows[1:middle]), (BOLT, rows[middle + 1 :])):
        # Of what is carried and not counted out some drops, or a bead, is said; the pick list counts the bottles.
        counted = {row["Part"]: float(row["Qty"]) for row in part if row["Qty"] != "-"}
        assert counted == pytest.approx({number: count for number, count in each.items() if number in counted})
        assert {row["Part"] for row in part} == set(each)
        assert all(each[number] < 1 for number in set(each) - set(counted))


def tables(document, title):
    found = [block for block in blocks(document) if type(block).__name__ == "Table" and block.title == title]
    return [[dict(zip([c.title for c in each.columns], row, strict=True)) for row in each.rows] for each in found]


def test_a_packet_drills_each_lock_s_holes_and_tests_each_lock(shop):
    for mark in ("101", "P1"):
        document = packet(shop, mark)
        holes = tables(document, "Holes")
        assert [next(row["Hole"] for row in each) for each in holes] == ["access hole for the lead"] * 2
        assert [next(row["From lock edge"] for row in each) for each in holes] == ["69.9 mm"] * 2
        assert len(tables(document, "Test sheet")) == 2
        said = [block.text for block in blocks(document) if type(block).__name__ == "Heading"]
        assert said.count("What the rules say") <= 1


def test_a_packet_says_what_each_leaf_is(shop):
    every = [pair for block in blocks(packet(shop, "P1")) if hasattr(block, "pairs") for pair in block.pairs]
    assert [value for label, value in every if label == "Leaf size"] == [
        "914.4 mm × 2133.6 mm",
        "700 mm × 2133.6 mm",
    ]
    assert [value for label, value in every if label == "Cylinder above floor"] == ["1000 mm", "1010 mm"]
    # The inactive leaf of a pair is hinged on the other side (SDI 111).
    assert [value for label, value in every if label == "Hand of this leaf"] == ["RHR"]


def test_a_job_is_begun_and_ended_once(shop):
    """A packet of two locks lays out its box once and is signed once; each lock is opened and tested."""
    words = texts(packet(shop, "101"))
    assert len([each for each in words if each.startswith("Lay out the box contents")]) == 1
    assert len([each for each in words if each.startswith("Fill in serial numbers")]) == 1
    assert len([each for each in words if each.startswith("Test everything on the test sheet")]) == 2


def test_every_document_is_printed_with_all_locks(shop, tmp_path):
    view = project_view(shop)
    pages = {}
    for name in ("schedule", "pick-list", "packets", "battery-calendar", "cost-estimate", "templates"):
        for path in issue_by_name(view, name, tmp_path, None):
            if path.suffix == ".pdf":
                pages[path.name] = "\n".join(page.extract_text() for page in PdfReader(path).pages)
    assert "At the deadbolt" in pages["schedule.pdf"]
    assert "Lock point 2: deadbolt" in pages["101.pdf"]
    assert "Lock point 2: inactive leaf" in pages["P1.pdf"]
    assert "Lock point" not in pages["S1.pdf"]
    # Three packets, three openings.
    assert sorted(name for name in pages if name[0] in "1PS" and name[1:3] in ("01", "1.")) == [
        "101.pdf", "P1.pdf", "S1.pdf",
    ]  # fmt: skip


def test_costs_are_those_of_all_locks(shop):
    document = COST_ESTIMATE.build(project_view(shop), None)
    told = {str(cell) for block in blocks(document) if hasattr(block, "rows") for row in block.rows for cell in row}
    # Materials of five locks: 5 x 338.20.
    assert pytest.approx(338.2) == PRICE
    assert "1691.0" in told


def test_the_battery_calendar_tells_each_unit(shop):
    document = BATTERY_CALENDAR.build(project_view(shop), None)
    marks = [row for block in blocks(document) if hasattr(block, "rows") for row in block.rows]
    told = [" ".join(map(str, row)) for row in marks]
    assert sum("101" in each and "deadbolt" in each for each in told) >= 1
    assert sum("P1" in each and "inactive leaf" in each for each in told) >= 1
