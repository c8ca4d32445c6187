"""Headings of several readings: which one the cells below make of them, and when it is asked.

What each short heading is written for is common practice of door schedules.
"""

import pytest

from hwsched.attributes import Attribute
from hwsched.exchange.problems import causes
from hwsched.exchange.survey.answers import answered
from hwsched.exchange.survey.book import SurveyOptions, read_survey
from hwsched.exchange.survey.mapping import RememberedMapping
from hwsched.exchange.survey.two_readings import HEADINGS, NOT_READ
from hwsched.exchange.survey.words import _SHORT, _SHORT_BESIDE, Vocabulary

READS = [
    ("FR", ["FD60", "FD30", "-"], "opening.rating"),
    ("FR.", ["HM", "WD", "AL"], "opening.frame_material"),
    ("Details FR", ["90 MIN", "B LABEL", "-"], "opening.rating"),
    ("FR", ["F1", "F2", "A"], None),
    ("Frame", ["HM", "wood", "HMM"], "opening.frame_material"),
    ("FRAME TYPE", ["F1", "F2", "3"], None),
    ("MAT'L", ["HM", "SCW", "HM"], "leaf.material"),
    ("Matl.", ["HMF", "WDF", "ALF"], "opening.frame_material"),
    ("Type", ["SGL", "PR", "SGL"], "opening.form"),
    ("TYPE", ["HM", "SCW", "HM"], "leaf.material"),
    ("Door type", ["flush", "narrow stile", "flush"], "leaf.construction"),
    ("TYPE", ["FD60", "90 min", "FD30"], "opening.rating"),
    ("TYPE", ["A", "F", "B"], "opening.of_type"),
    ("ELEV.", ["flush", "narrow", "flush"], "leaf.construction"),
    ("Elevation", ["A", "F", "N"], "opening.of_type"),
    ("Size", ["3-0 x 7-0", "3068", "36 x 84"], "leaf.size"),
    ("SIZE", ["3-0", "2-8", "36 in"], "leaf.width_mm"),
    ("Hardware", ["Closer", "Exit device", "Hinge"], "existing_item.kind"),
    ("HDW", ["1", "HW-2", "3.1"], None),
    ("CL", ["X", "-", "x"], "existing_item.kind@closer"),
    ("CL.", ["B label", "C label", "-"], "opening.rating"),
    ("CL", ["32", "34", "2'-10\""], None),
    ("HT", ["84", "7-0", "96"], "leaf.height_mm"),
    ("H", ["LH", "RHR", "LHR"], "opening.hand"),
    ("HT", ["HW-1", "HW-2", "HW-3"], None),
    ("W", ["36", "2-8", "30"], "leaf.width_mm"),
    ("W", ["gypsum board", "concrete", "masonry"], "opening.wall_build"),
    ("WD", ["36", "32", "30"], "leaf.width_mm"),
    ("T", ["1 3/4", "1.75", "2"], "leaf.thickness_mm"),
    ("T", ["A", "B", "C"], "opening.of_type"),
    ("L", ["90 min", "45 MIN", "C"], "opening.rating"),
    ("L", ["1", "2", "B1"], "opening.level"),
    ("L", ["LH", "LHR", "RH"], "opening.hand"),
    ("FL", ["1", "2", "GF"], "opening.level"),
    ("FL.", ["90 min", "FD60", "B label"], "opening.rating"),
    ("F", ["90 min", "FD60", "45 min"], "opening.rating"),
    ("FL", ["20", "30", "45"], "opening.level"),
    ("F", ["HMF", "WDF", "ALF"], "opening.frame_material"),
    ("F", ["passage", "privacy", "storeroom"], "existing_item.function"),
    ("F", ["US26D", "630", "US10B"], None),
    ("GL", ["x", "", "X"], "existing_item.kind@lite"),
    ("FIN.", ["PT-1", "stain", "anod."], None),
    ("Rating", ["90", "45 min", "NR"], "opening.rating"),
    ("RATING", ["STC 35", "STC 50", "32 dB"], None),
    ("Loc", ["Hall", "Store room", "Laundry"], "opening.room_from"),
    ("LOC.", ["INT", "EXT", "INT"], "opening.exposure"),
    ("Lock", ["mortise", "rim", "bored"], "existing_item.lock_form"),
    ("LK", ["passage", "storeroom", "classroom"], "existing_item.function"),
    ("Swing", ["LH", "RHR", "LHR"], "opening.hand"),
    ("SW", ["IN", "OUT", "in-swing"], None),
    ("DIR", ["LH", "RH", "LHR"], "opening.hand"),
    ("Direction", ["key side", "inside", "both ways"], "opening.egress_toward"),
    ("Stop", ["5/8", "0.75", "1/2"], "opening.frame_stop_mm"),
    ("STOP", ["wall", "floor", "overhead"], None),
    ("Core", ["mineral", "honeycomb", "foam"], "leaf.core"),
    ("CORE", ["SFIC", "IC7", "removable"], None),
    ("Leaf", ["single", "single", "single"], "leaf.position"),
    ("LEAF", ["1", "2", "1"], "opening.form"),
    ("LEAF", ["900 x 2100 mm", "3-0 x 7-0", "36 x 84"], "leaf.size"),
    ("Lock", ["yes", "no", "yes"], "existing_item.kind@lock"),
    ("Lockset", ["mortise", "bored", "rim"], "existing_item.lock_form"),
    ("LOCK SET", ["passage", "privacy", "office"], "existing_item.function"),
    ("Locks", ["x", "", "x"], "existing_item.kind@lock"),
    ("Lockset", ["L-2", "L-3", "LK 4"], None),
    ("Group", ["business", "assembly", "storage"], "opening.occupancy_group"),
    ("Group", ["01", "02", "HW-3"], None),
    ("Code", ["IBC", "NFPA 101", "IBC"], "opening.code"),
    ("Code", ["4471#", "1234", "C-7"], None),
    ("Power", ["battery", "supply", "any"], "opening.power_wish"),
    ("Power", ["yes", "24V", "12 V DC"], None),
    ("Latch", ["roller", "latch", "deadbolt"], "existing_item.latch_form"),
    ("Side", ["key", "inside", "both"], "existing_item.face"),
    ("Prep", ["mortise", "161", "rim"], "existing_item.lock_form"),
    ("Gasket", ["stop", "edge", "none"], "opening.smoke_seal"),
    ("Seals", ["G1", "silicone", "brush"], None),
    ("Wall type", ["masonry", "hollow", "steel"], "opening.wall_build"),
    ("PARTITION TYPE", ["A1", "B2", "S-3"], None),
    ("Traffic", ["40", "120", "5"], "opening.operations_per_day"),
    ("Traffic", ["high", "low", "medium"], None),
    ("Operations", ["40", "120", "5"], "opening.operations_per_day"),
    ("OPERATIONS", ["swing", "sliding", "folding"], None),
    ("Action", ["keep", "replace", "remove"], "existing_item.disposition"),
    ("Operation", ["Single", "Pair", "Single"], "opening.form"),
    ("Action", ["Swing", "double acting", "Sliding"], None),
    ("Pair", ["x", "", "yes"], "opening.form"),
]


def listed(tmp_path, headings, *rows):
    path = tmp_path / "list.csv"
    lines = [["Mark", *headings], *([f"10{number}", *row] for number, row in enumerate(rows))]
    quoted = ("\t".join(line) for line in lines)
    path.write_text("\n".join(quoted) + "\n", encoding="utf-8")
    return path


def carried(found, header):
    (mapping,) = found.mapping
    return next((column.target.text() for column in mapping.columns if column.header == header), None)


@pytest.mark.parametrize(("heading", "cells", "fact"), READS)
def test_the_cells_say_what_the_heading_means(tmp_path, heading, cells, fact):
    path = listed(tmp_path, [heading, "Undercut"], *([cell, "1/4 in"] for cell in cells))
    found = read_survey(path, SurveyOptions(bare_unit="in"))
    assert carried(found, heading) == fact
    assert not [question for question in found.questions if question.kind == "column"]
    if fact is None:
        # What is no fact is named as not read, and as what it was taken for.
        assert heading in [each.header for each in found.unmapped]
        assert any(each.header == heading and "by what stands below" in each.text for each in found.assumptions)


@pytest.mark.parametrize(
    ("heading", "cells", "answers"),
    [
        ("FR", ["60", "90", "HM", "WD"], ("Fire rating", "Frame material")),
        ("FR", ["A", "B", "C"], ("Fire rating", "Frame material")),
        ("L", ["20", "45"], ("Fire rating", "Level")),
        ("F", ["60", "90"], ("Fire rating", "Level")),
        ("Panic", ["X", "-", "x"], ("Exit device on the door", "Egress, panic hardware required")),
        # A group of hardware is called A as well as a group of occupants.
        ("Group", ["A", "B", "S"], ("Occupancy group",)),
        ("Latch", ["L1", "see spec"], ("Latch form",)),
        ("Side", ["N", "S"], ("Face",)),
    ],
)
def test_what_the_cells_do_not_say_is_asked_once_with_the_readings_shown(tmp_path, heading, cells, answers):
    path = listed(tmp_path, [heading, "Undercut"], *([cell, "1/4 in"] for cell in cells))
    found = read_survey(path, SurveyOptions(bare_unit="in"))
    (question,) = [each for each in found.questions if each.kind == "column"]
    assert question.answers == (NOT_READ, *answers)
    assert (carried(found, heading), found.problems) == (None, ())
    for answer, fact in zip(question.answers, question.facts, strict=True):
        again = read_survey(path, answered(SurveyOptions(bare_unit="in"), question, answer))
        assert carried(again, heading) == (fact or None)
        assert "column" not in [each.kind for each in again.questions]


@pytest.mark.parametrize("heading", ["F", "CL", "L", "Class", "TYPE"])
def test_letters_alone_make_no_label_of_a_column(tmp_path, heading):
    """A, B and C are labels against fire, and the types, classes and finishes of anything."""
    path = listed(tmp_path, [heading, "Undercut"], *([cell, "1/4 in"] for cell in "ABC"))
    found = read_survey(path, SurveyOptions(bare_unit="in"))
    assert [opening.facts.get("rating") for opening in found.openings] == [None] * 3


def test_each_heading_of_the_table_is_tried_here_in_each_reading():
    """A reading that a material or a level makes beside what is tried above is met nowhere else so short."""
    rare = {
        ("w", "leaf.material"), ("f", "opening.level"), ("gl", "opening.level"), ("gl", "leaf.material"),
        ("fl", "leaf.construction"), ("fin", "existing_item.function"), ("h", ""), ("fr", ""),
        ("panic", "existing_item.kind@exit-device"), ("panic", "opening.egress"),
    }  # fmt: skip
    of_word = {word: heading for heading in HEADINGS for word in heading.words}
    tried = set()
    for heading, _, fact in READS:
        plain = heading.casefold().replace(".", "").replace("'", "").removeprefix("details ")
        tried.add((of_word[plain].words[0], fact or ""))
    wanted = {(each.words[0], reading.fact) for each in HEADINGS for reading in each.readings}
    assert wanted - tried - rare == set()


ONE_READING = {
    # Labels of one thing, and words whose letters nothing else of a door list begins so; common practice.
    "acdc", "ada", "aff", "bks", "bs", "bldg", "blg", "cam", "cmnt", "cmnts", "cmt", "const", "constr", "cyl", "dr",
    "drs", "door", "egr", "exit", "face", "fate", "fire", "flr", "form", "frr", "from", "func", "hand", "hdg", "item",
    "lbl", "lvl", "mark", "mins", "minute", "minutes", "nbr", "no", "note", "num", "opg", "opng", "prio", "rem",
    "rise", "rm", "rmks", "room", "tag", "thick", "thk", "thkns", "to", "tt", "uc", "wave", "wdth", "wxh", "x", "y",
    "#",
}  # fmt: skip


def test_every_short_heading_that_is_read_has_one_reading_or_stands_in_the_table():
    vocabulary = Vocabulary()
    short = {word for word in vocabulary._anywhere if len(word) <= 4} | set(_SHORT) | set(_SHORT_BESIDE)
    read = {word for word in short if vocabulary.meaning(word).target is not None}
    of_table = {word for heading in HEADINGS for word in heading.words}
    assert read - of_table - ONE_READING == set()
    assert ONE_READING & of_table == set()


@pytest.mark.parametrize(
    ("heading", "cells", "fact"),
    [
        ("Room", ["Office", "Store"], "opening.room_to"),
        ("ROOM NO.", ["101", "102"], "opening.room_to"),
        ("Rm. #", ["101", "102"], "opening.room_to"),
        ("Room name", ["Office", "Store"], "opening.room_to"),
        ("Location", ["Corridor to office", "Lobby, north"], "opening.room_from"),
        ("Note", ["new lever", "see photograph"], "opening.notes"),
        ("UL label", ["90 min", "B"], "opening.rating"),
        ("Ext/Int", ["EXT", "INT"], "opening.exposure"),
    ],
)
def test_a_heading_that_the_trade_reads_in_one_way_needs_no_word_of_a_person(tmp_path, heading, cells, fact):
    path = listed(tmp_path, [heading, "Undercut"], *([cell, "1/4 in"] for cell in cells))
    found = read_survey(path, SurveyOptions(bare_unit="in"))
    assert (carried(found, heading), found.problems, found.questions) == (fact, (), ())


HELD_BY_NO_FACT = (
    "Head", "Sill", "Jamb", "Threshold", "Hdw set", "Hardware group", "Detail", "Keying", "Keyset", "Signage", "STC",
    "Door finish", "Manufacturer", "Status", "Zone", "Area", "Department", "Condition",
    # Of a door the rooms on both sides, in what models hand over.
    "Space",
)  # fmt: skip


@pytest.mark.parametrize("heading", HELD_BY_NO_FACT)
def test_a_heading_of_what_the_survey_does_not_hold_is_named_and_makes_nothing(tmp_path, heading):
    path = listed(tmp_path, [heading, "Undercut"], ["X1", "1/4 in"], ["X2", "1/4 in"])
    found = read_survey(path, SurveyOptions(bare_unit="in"))
    assert (carried(found, heading), found.problems, found.questions) == (None, (), ())
    assert [(each.header, each.filled) for each in found.unmapped] == [(heading, 2)]


def test_the_room_to_goes_before_a_room_alone_and_number_before_it_stays_named(tmp_path):
    path = listed(tmp_path, ["Room", "Room from", "Room to"], ["101", "Hall", "Office"], ["102", "Hall", "Store"])
    found = read_survey(path, SurveyOptions())
    assert [opening.facts["room_to"] for opening in found.openings] == ["Office", "Store"]
    assert [opening.facts["room_from"] for opening in found.openings] == ["Hall", "Hall"]
    assert [each.header for each in found.unmapped] == ["Room"]
    path = listed(tmp_path, ["Room No.", "Room name"], ["101", "Office"], ["102", "Store"])
    found = read_survey(path, SurveyOptions())
    assert [opening.facts["room_to"] for opening in found.openings] == ["Office", "Store"]
    assert [each.header for each in found.unmapped] == ["Room No."]


@pytest.mark.parametrize(
    ("heading", "fact", "answer", "value"),
    [
        ("Gasket", "smoke_seal", "on the frame's stop", "stop"),
        ("Latch", "latch_form", "a latch bolt with guard", "deadlatch"),
    ],
)
def test_that_there_is_one_does_not_say_which(tmp_path, heading, fact, answer, value):
    path = listed(tmp_path, [heading, "Undercut"], ["yes", "1/4 in"], ["no", "1/4 in"])
    found = read_survey(path, SurveyOptions(bare_unit="in"))
    (question,) = found.questions
    again = read_survey(path, answered(SurveyOptions(bare_unit="in"), question, answer))
    told = [{**opening.facts, **(opening.items[0].facts if opening.items else {})} for opening in again.openings]
    assert ([each.get(fact) for each in told], again.problems) == ([value, "none"], ())


def test_a_second_heading_of_one_word_is_asked_about(tmp_path):
    path = listed(tmp_path, ["MATL", "Level", "MATL"], ["HM", "1", "WD"], ["HM", "1", "HM"])
    found = read_survey(path, SurveyOptions())
    assert [opening.leaves[0].facts["material"] for opening in found.openings] == ["hollow-metal", "hollow-metal"]
    (question,) = found.questions
    assert (question.column, question.answers) == ("D", (NOT_READ, "Frame material"))
    # The answer is that of this column, not of the other of the same heading.
    again = read_survey(path, answered(SurveyOptions(), question, "Frame material"))
    assert [opening.leaves[0].facts["material"] for opening in again.openings] == ["hollow-metal", "hollow-metal"]
    assert [opening.facts["frame_material"] for opening in again.openings] == ["wood", "hollow-metal"]
    assert again.questions == ()


def test_ticks_below_the_name_of_an_item_say_that_it_is_there(tmp_path):
    headings = ["Closer", "Kick plates", "Panic", "Viewer"]
    path = listed(tmp_path, headings, ["x", "1", "X", "PV-1"], ["no", "", "-", ""], ["", "Y", "x", ""])
    found = read_survey(path, SurveyOptions(columns={"Panic": "existing_item.kind@exit-device"}))
    kinds = [sorted(item.facts["kind"] for item in opening.items) for opening in found.openings]
    assert kinds == [["closer", "exit-device", "kick-plate"], [], ["exit-device", "kick-plate"]]
    # What is no tick may be anything: the column is named, and nothing is made of it.
    assert [each.header for each in found.unmapped] == ["Viewer"]


def test_panic_hardware_that_is_required_is_the_part_in_egress(tmp_path):
    path = listed(tmp_path, ["Panic", "Level"], ["X", "1"], ["", "1"])
    found = read_survey(path, SurveyOptions(columns={"Panic": "opening.egress"}))
    assert [opening.facts.get("egress") for opening in found.openings] == ["panic", None]


def test_the_cells_go_before_what_such_a_list_said_the_last_time(tmp_path):
    known = RememberedMapping({"mark": "opening.mark", "fr": "opening.rating"}, headers=("mark", "fr"))
    for cells, fact in ((["HM", "WD"], "opening.frame_material"), (["90", "none of it"], "opening.rating")):
        path = listed(tmp_path, ["FR"], *([cell] for cell in cells))
        for told in ({"remembered": {"": known}}, {"plan": known}):
            assert carried(read_survey(path, SurveyOptions(**told)), "FR") == fact
    path = listed(tmp_path, ["FR"], ["HM"], ["WD"])
    told = read_survey(path, SurveyOptions(columns={"FR": "opening.notes"}, plan=known))
    assert carried(told, "FR") == "opening.notes"


def test_a_word_with_a_slip_is_refused_with_the_one_that_is_near(tmp_path):
    path = listed(tmp_path, ["Material", "Hand"], ["timbr", "LH"], ["timbr", "qqqq"])
    found = read_survey(path, SurveyOptions())
    said = [cause.describe() for cause in causes(found.problems)]
    assert "2 rows (2-3)" in said[0]
    assert "Leaf material; nearest: Wood, solid core; accepted: " in said[0]
    assert "nearest" not in said[1]


def test_a_field_of_the_projects_own_is_what_its_heading_says_whatever_the_table_has(tmp_path):
    finish = Attribute("finish_code", "Finish")
    path = listed(tmp_path, ["Finish", "Undercut"], ["PT-1", "1/4 in"], ["ST", "1/4 in"])
    found = read_survey(path, SurveyOptions(bare_unit="in", own_fields={"opening": (finish,)}))
    assert [opening.facts["finish_code"] for opening in found.openings] == ["PT-1", "ST"]


@pytest.mark.parametrize(
    ("rating", "frame", "read"),
    [
        ("90", "90 min", ("90", "90")), ("90", "45", ("90", "45")), ("", "60", (None, "60")), ("45", "", ("45", None)),
        ("45", "-", ("45", None)), ("NR", "NR", ("none", "none")), ("45", "NR", ("45", "none")),
        # A frame with a label is not taken for one that may be cut, because the leaf in it has none.
        ("NR", "60", (None, "60")),
    ],
)  # fmt: skip
def test_a_frames_own_label_counts_beside_that_of_the_leaf(tmp_path, rating, frame, read):
    path = listed(tmp_path, ["Fire rating", "Frame label"], [rating, frame], ["20", "20"])
    found = read_survey(path, SurveyOptions())
    told = [(each.facts.get("rating"), each.facts.get("frame_rating")) for each in found.openings]
    assert told == [read, ("20", "20")]
    named = [each.text for each in found.assumptions if "fire rating left unknown" in each.text]
    assert len(named) == ((rating, frame) == ("NR", "60"))
    assert all("rows 2" in text for text in named)
