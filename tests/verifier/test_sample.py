"""The program's own sample against the verifier: what is fitted can be installed, what is refused has no witness.

Openings are what the command line shows of the finished sample, sizes and parts the cells of its workbooks. So that
nothing passes by not being looked at, forms are counted, the search must find a way for whatever is fitted and for what
is refused once what its reason names is put right, and what is changed in an answer must be found.
"""

import re
from collections import Counter
from collections.abc import Callable
from copy import deepcopy
from fractions import Fraction
from typing import Any

import pytest

from tests.verifier import sample
from tests.verifier.cells import Cells, Opening
from tests.verifier.judging import Violation, judge, passed, refused, to_measure
from tests.verifier.sample import SURVEYED, Sample, length_mm, surveyed
from tests.verifier.searching import search
from tests.verifier.standing import footprint

FITTED = {
    "mortise, wood": 42,
    "mortise, hollow metal": 32,
    "mortise, narrow stile": 10,
    "mortise, other aluminium": 2,
    "mortise, glass": 4,
    "rim, wood": 9,
    "rim, hollow metal": 3,
    "bored": 12,
    "euro": 4,
    "cabinet": 8,
    "gate": 3,
    "wall reader": 3,
}
"""How many openings of each form the sample has fitted: each is judged."""


@pytest.fixture(scope="module")
def read(sample_folder, tmp_path_factory) -> Sample:
    """What the command line says of the finished sample."""
    (project,) = sample_folder.glob("*.hwsched")
    return sample.read(project, tmp_path_factory.mktemp("read"))


def form_of(opening: Opening) -> str:
    form, material = opening.lock["lock"].split()[0].strip(",").lower(), opening.leaf().get("material", "wall")
    if form in ("mortise", "rim"):
        if material == "Aluminium":
            narrow = opening.leaf()["construction"] == "Narrow stile"
            return f"{form}, {'narrow stile' if narrow else 'other aluminium'}"
        return f"{form}, {material.split(',')[0].lower()}"
    return "wall reader" if form == "reader" else form


def that_fit(read: Sample) -> list[str]:
    return [mark for mark, answer in read.answers.items() if passed(answer)]


def not_fitted(read: Sample) -> list[str]:
    """What is refused, and what fits with an error that nobody accepted."""
    return [mark for mark, answer in read.answers.items() if not passed(answer) and not to_measure(answer)]


def found_in(read: Sample, mark: str, answer: dict[str, Any] | None = None) -> list[Violation]:
    return judge(read.openings[mark], read.parts, answer or read.answers[mark], read.laid.get(mark))


# --- as it is ---------------------------------------------------------------------------------------------------------


def test_the_lengths_that_are_judged_are_those_that_were_surveyed(read):
    compared = 0
    for mark, cells in surveyed().items():
        if mark not in read.openings:
            continue
        opening = read.openings[mark]
        shown = opening.facts | opening.leaf() | opening.lock
        for heading, name in SURVEYED.items():
            if heading in cells:
                assert shown[name] == pytest.approx(length_mm(cells[heading]), abs=0.01), f"{mark}: {heading}"
                compared += 1
    assert compared > 1500


def test_no_fitted_opening_has_a_violation(read):
    judged = Counter[str]()
    powers = Counter[str]()
    for mark in that_fit(read):
        assert found_in(read, mark) == []
        judged[form_of(read.openings[mark])] += 1
        point = read.answers[mark]["lock_points"][0]
        face = point["placement"]["face"]
        powers[face, point["power"], "laid" if mark in read.laid else "own"] += 1
    assert judged == FITTED
    assert powers == {
        ("inside", "battery", "own"): 122,
        ("edge", "battery", "own"): 2,
        ("inside", "supply", "own"): 1,
        ("inside", "supply", "laid"): 4,
        ("wall", "supply", "own"): 1,
        ("wall", "supply", "laid"): 2,
    }


def test_for_no_refused_opening_is_there_a_way(read):
    marks = not_fitted(read)
    assert Counter(refused(read.answers[mark]) for mark in marks) == {True: 30, False: 2}
    ways = {mark: search(read.openings[mark], read.parts) for mark in marks}
    assert {mark: str(way) for mark, way in ways.items() if way is not None} == {}


def test_there_is_a_way_for_each_fitted_opening(read):
    """A search that is blind for a form would say of each refusal that it is right."""
    assert [mark for mark in that_fit(read) if search(read.openings[mark], read.parts) is None] == []


# --- a changed answer -------------------------------------------------------------------------------------------------

Answered = dict[str, Any]
Change = Callable[[Sample, str, Answered], None]


def point_of(answer: Answered) -> dict[str, Any]:
    return answer["lock_points"][0]


def slid(read: Sample, mark: str, answer: Answered) -> None:
    """Move the stored unit 3 mm up; its screws and its lead are told where they were."""
    point_of(answer)["placement"]["y_mm"] += 3.0


def moved(answer: Answered, dx: float, dy: float) -> None:
    """Move the unit whole, with its screws and the end of its lead."""
    point = point_of(answer)
    point["placement"]["x_mm"] += dx
    point["placement"]["y_mm"] += dy
    lead = point["lead"]["points_mm"]
    for place in [*(place for entry in point["screws"] for place in entry["places_mm"] or ()), lead[-1]]:
        place[0] += dx
        place[1] += dy


def three_into(rect: Callable[[Sample, Opening, Answered], tuple[float, float, float, float]]) -> Change:
    """Move the unit from where it stands 3 mm into a rectangle below it, or beside it toward the lock edge."""

    def change(read: Sample, mark: str, answer: Answered) -> None:
        x0, _, x1, y1 = rect(read, read.openings[mark], answer)
        place = point_of(answer)["placement"]
        beside = place["x_mm"] - x1
        if beside >= 0.0:
            moved(answer, -beside - 3.0, 0.0)
        else:
            assert x0 < place["x_mm"] + place["width_mm"], "it stands under the unit"
            moved(answer, 0.0, y1 - place["y_mm"] - 3.0)

    return change


def item(kind: str) -> Callable[[Sample, Opening, Answered], tuple[float, float, float, float]]:
    def rect(read: Sample, opening: Opening, answer: Answered) -> tuple[float, float, float, float]:
        there = [each for each in opening.items if each["kind"] == kind and each["face"] in ("Inside", "Both faces")]
        return footprint(there[0])

    return rect


def new_lock(read: Sample, opening: Opening, answer: Answered) -> tuple[float, float, float, float]:
    """What the new lock covers on the inside face: its rose, its case, the thread for its nut."""
    part = part_of(read, answer, "lock")
    x, y = opening.lock["backset"], opening.lock["y"]
    wide = next(part[name] for name in ("trim", "case_width", "thread") if part.get(name))
    high = part.get("case_height", wide)
    return x - wide / 2, y - high / 2, x + wide / 2, y + high / 2


def rim_case(read: Sample, opening: Opening, answer: Answered) -> tuple[float, float, float, float]:
    lock = opening.lock
    top = lock["y"] + lock["case_above"]
    return 0.0, top - lock["case_height"], lock["case_depth"], top


def patch(read: Sample, opening: Opening, answer: Answered) -> tuple[float, float, float, float]:
    return footprint(opening.lock)


def part_of(read: Sample, answer: Answered, role: str) -> Cells:
    return read.parts[next(each["part"] for each in point_of(answer)["parts"] if each["role"] == role)]


def without(role: str) -> Change:
    def change(read: Sample, mark: str, answer: Answered) -> None:
        parts = point_of(answer)["parts"]
        kept = [each for each in parts if each["role"] != role]
        assert len(kept) == len(parts) - 1
        parts[:] = kept

    return change


def in_place(old: str, new: str) -> Change:
    """Give another part in the place of one."""

    def change(read: Sample, mark: str, answer: Answered) -> None:
        (each,) = (each for each in point_of(answer)["parts"] if each["part"] == old)
        assert read.parts[new]["kind"] == read.parts[old]["kind"]
        each["part"] = new

    return change


CHANGED = (
    # The unit as it is stored stands elsewhere than its screws, where it has any, and its lead.
    *(
        (mark, slid, family)
        for mark, family in (
            ("M002", "screws-told-elsewhere"),  # mortise, wood
            ("M001", "screws-told-elsewhere"),  # hollow metal
            ("A-02", "screws-told-elsewhere"),  # narrow stile, three screws
            ("0011", "screws-told-elsewhere"),  # rim
            ("B/1", "screws-told-elsewhere"),  # bored
            ("E1", "screws-told-elsewhere"),  # euro
            ("GATE 1", "screws-told-elsewhere"),  # six screws
            ("CAB-1", "screws-told-elsewhere"),  # two screws
            ("CAB-8", "screws-told-elsewhere"),
            ("A-02", "narrow-stile-plate-place"),
            ("GL-2", "lead-ends-elsewhere"),
            ("LIFT-1", "lead-ends-elsewhere"),
            ("TURN-1", "lead-ends-elsewhere"),
        )
    ),
    # It stands 3 mm in what is there.
    ("M002", three_into(item("Lever or knob")), "unit-on-item"),
    ("M001", three_into(item("Lever or knob")), "unit-on-item"),
    ("M003", three_into(item("Lever or knob")), "unit-on-item"),
    ("M016", three_into(item("Lever or knob")), "unit-on-item"),
    ("M002", three_into(item("Trim or escutcheon")), "unit-on-item"),
    ("E1", three_into(item("Trim or escutcheon")), "unit-on-item"),
    ("GL-2", three_into(patch), "unit-on-item"),
    ("0011", three_into(rim_case), "unit-on-case"),
    ("X1", three_into(item("Exit device")), "unit-on-exit-device"),
    ("B/1", three_into(new_lock), "unit-on-rose"),
    ("M112", three_into(new_lock), "unit-on-rose"),
    ("GATE 1", three_into(new_lock), "unit-on-case"),
    ("CAB-1", three_into(new_lock), "unit-on-cylinder"),
    ("CAB-8", three_into(new_lock), "unit-on-cylinder"),
    # Without its collar of 1/8 in or more the cam stands past the case's middle by as much: two turns are 1/16 in.
    *((mark, without("collar"), "cam-off-case") for mark in ("M002", "M001", "M003", "A-02", "A-05", "GL-2", "M308")),
    # Longer screws: from a case of 1 in the leaf of 1-3/4 in has 3/8 in on each side; a panel is 3/4 in thick.
    ("M002", in_place("FEN-W6T", "FEN-W6S"), "screw-in-case"),
    ("M001", in_place("FEN-S6T", "FEN-S6"), "screw-in-case"),
    ("M003", in_place("FEN-W6MT", "FEN-W6M"), "screw-in-case"),
    ("M016", in_place("FEN-S6T", "FEN-S6"), "screw-in-case"),
    ("M314", in_place("FEN-W6S", "FEN-W6"), "screw-in-case"),
    ("CAB-1", in_place("FEN-W6S", "FEN-W6"), "screw-through-leaf"),
    ("GATE 1", in_place("FEN-B9", "FEN-B5"), "gate-bolt-short"),
    # Screws for another material.
    ("M002", in_place("FEN-W6T", "FEN-S6T"), "screw-for-other-material"),
    ("M001", in_place("FEN-S6T", "FEN-W6T"), "screw-for-other-material"),
    ("M003", in_place("FEN-W6MT", "FEN-W6T"), "screw-for-other-material"),
    ("A-02", in_place("FEN-S8A", "FEN-S8"), "screw-for-other-material"),
    ("B/1", in_place("FEN-W6", "FEN-W6M"), "screw-for-other-material"),
    ("E1", in_place("FEN-W6", "FEN-W6M"), "screw-for-other-material"),
    ("0011", in_place("FEN-W6", "FEN-S6"), "screw-for-other-material"),
    ("X1", in_place("FEN-S6", "FEN-S6A"), "screw-for-other-material"),
    ("GATE 1", in_place("FEN-S8G", "FEN-S8"), "screw-for-other-material"),
    ("CAB-1", in_place("FEN-W6S", "FEN-S6"), "screw-for-other-material"),
    ("GL-2", in_place("FEN-AD", "FEN-W6"), "screw-for-other-material"),
    ("LIFT-1", in_place("FEN-P6", "FEN-H6"), "fixing-for-other-wall"),
    ("TURN-1", in_place("FEN-T6", "FEN-P6"), "fixing-for-other-wall"),
    # Another lock of its kind.
    ("0011", in_place("ARC-R76C", "ARC-R114F"), "cam-mismatch"),
    ("0011", in_place("ARC-R76C", "ARC-R114F"), "tail-bottoms"),
    ("B/1", in_place("ARC-B70S", "ARC-B60S"), "backset-off"),
    ("B/1", in_place("ARC-B70S", "ARC-B70O"), "function-changed"),
    ("E1", in_place("ARC-E3535", "ARC-E3035"), "euro-half"),
    ("CAB-1", in_place("ARC-C22", "ARC-C32"), "cabinet-grip"),
    # What feeds it.
    ("OF-1", without("supply"), "supply-missing"),
    ("LIFT-2", without("supply"), "supply-missing"),
    ("M002", without("battery"), "cells-missing"),
)


@pytest.mark.parametrize(
    ("mark", "change", "family"), CHANGED, ids=[f"{m}-{f}-{i}" for i, (m, _, f) in enumerate(CHANGED)]
)
def test_a_changed_answer_is_found(read, mark, change, family):
    answer = deepcopy(read.answers[mark])
    change(read, mark, answer)
    assert family in {each.family for each in found_in(read, mark, answer)}


# --- a refusal --------------------------------------------------------------------------------------------------------


def facts(**right: Any) -> Callable[[Opening], None]:
    return lambda opening: opening.facts.update(right)


def leaf(**right: Any) -> Callable[[Opening], None]:
    return lambda opening: opening.leaves[0].update(right)


def lock(**right: Any) -> Callable[[Opening], None]:
    return lambda opening: opening.lock.update(right)


RIGHT = (
    # A lock of the backset and the function is in the catalogue for an office, for a classroom there is none.
    (("B/4",), lock(function="Office or entry")),
    (("B/7",), leaf(thick=44.45)),
    # In 1-3/8 in the cylinder leaves too little behind it for a channel.
    (("0014", "0018", "0022"), leaf(thick=44.45)),
    (("CAB-9",), leaf(thick=32.0)),
    (("X4", "X5"), facts(exposure="Interior")),
    # As wide as the case, and the unit of 88 with what it keeps to the edges.
    (("GATE 4",), leaf(stile=95.0)),
    # 1-1/8 in less half of 40.
    (("A-01", "A-08", "A-11", "A-12", "A-14", "A-17", "A-19"), facts(stop=8.575)),
    (("A-10",), leaf(stile=107.95)),
    (("E2", "E3", "E10", "E13", "E15", "M008", "M108"), facts(rating="Not rated")),
    # Half of 45 and this are 30.
    (("E4", "E5", "E8", "E9", "E12", "E14"), lock(trim_key=7.5)),
    # Two that fit with an error: a deadlock without a turn in a way out, a magnet that only a sensor releases.
    (("GL-1",), lock(function="Storeroom")),
    (("OF-2",), facts(group="B")),
)
"""Marks, and the one cell which their refusal says is wrong, put right."""


def test_each_refusal_has_its_cell(read):
    assert sorted(mark for marks, _ in RIGHT for mark in marks) == sorted(not_fitted(read))


@pytest.mark.parametrize(("mark", "put_right"), [(mark, right) for marks, right in RIGHT for mark in marks])
def test_what_is_refused_has_a_way_once_its_cell_is_right(read, mark, put_right):
    assert mark in not_fitted(read)
    opening = deepcopy(read.openings[mark])
    put_right(opening)
    assert search(opening, read.parts) is not None


def reason_of(read: Sample, mark: str) -> str:
    """What is printed of a refused opening."""
    (said,) = (each["message"] for each in read.answers[mark]["findings"] if each["rule"] == "fit-complete")
    return str(said)


def nearest(read: Sample, mark: str) -> Cells:
    """The cells of the part that the reason names as the nearest."""
    found = re.search(r"Nearest: ([\w-]+)\.", reason_of(read, mark))
    assert found is not None
    return read.parts[found[1]]


def too_wide(read: Sample, mark: str, cells: Cells) -> float:
    return float(nearest(read, mark)["case_width"] - length_mm(cells["Stile (in)"]))


def too_thick(read: Sample, mark: str, cells: Cells) -> float:
    return length_mm(cells["Thickness (in)"]) - max(
        part["grip"] for part in read.parts.values() if part["kind"] == "cabinet-lock"
    )


def too_deep(read: Sample, mark: str, cells: Cells) -> float:
    return length_mm(cells["Case depth"]) - length_mm(cells["Stile (in)"])


def half_short(read: Sample, mark: str, cells: Cells) -> float:
    """The case stands in the middle: half of the leaf and the trim outside, less the half on that side."""
    outside = length_mm(cells["Thickness (in)"]) / 2 + length_mm(cells["Trim outside"])
    return float(outside - nearest(read, mark)["key_half"])


def collar_in_stop(read: Sample, mark: str, cells: Cells) -> float:
    """Half of the smallest collar, or of the head under it, from the backset toward the edge, where the stop is."""
    collars = [part["outer"] for part in read.parts.values() if part["kind"] == "collar"]
    radius = max(min(collars), nearest(read, mark)["head"]) / 2
    return float(length_mm(cells["Stop (in)"]) - (length_mm(cells["B/S"]) - radius))


SUMS = (
    (("GATE 4",), r"short by (.+?)\"", "1 5/8", too_wide),
    (("CAB-9",), r"too thick by (.+?)\"", "15/64", too_thick),
    (("A-10",), r"wide: (.+?)\" too deep", "2 7/8", too_deep),
    (("E4", "E5", "E8", "E9", "E12", "E14"), r"ends (.+?)\" behind its trim", "1/32", half_short),
    (("A-01", "A-08", "A-11", "A-12", "A-14", "A-17", "A-19"), r"runs (.+?)\" into the band", "1/32", collar_in_stop),
)
"""Marks, where the number stands in the reason, the number by hand, and the sum of cells from which it follows."""


@pytest.mark.parametrize(
    ("mark", "pattern", "by_hand", "amount"),
    [(mark, *rest) for marks, *rest in SUMS for mark in marks],
    ids=[mark for marks, *_ in SUMS for mark in marks],
)
def test_the_number_in_a_reason_follows_from_the_cells(read, mark, pattern, by_hand, amount):
    said = re.search(pattern, reason_of(read, mark))
    assert said is not None, reason_of(read, mark)
    assert said[1] == by_hand
    inches = float(sum(Fraction(each) for each in by_hand.split()))
    # Printed to 1/64 in, the nearest or, of what is lacking, the next.
    assert amount(read, mark, surveyed()[mark]) == pytest.approx(inches * 25.4, abs=25.4 / 64)


def outside_part_inside(read: Sample, mark: str, cells: Cells) -> bool:
    return cells["Int/Ext"] == "ext" and nearest(read, mark)["exposure"] == "Interior"


def rated(read: Sample, mark: str, cells: Cells) -> bool:
    return cells["Label"] in ("20", "45", "90")


def no_such_function(read: Sample, mark: str, cells: Cells) -> bool:
    """F84 is the classroom function of ANSI/BHMA A156.2, from memory."""
    there = {
        part["function"]
        for part in read.parts.values()
        if part["kind"] == "bored-lever-lock" and abs(part["backset"] - length_mm(cells["B/S"])) < 1.6
    }
    return cells["Function"] == "F84" and bool(there) and "Classroom" not in there


def bore_as_leaf(read: Sample, mark: str, cells: Cells) -> bool:
    return length_mm(cells["Edge bore"]) >= length_mm(cells["Thickness (in)"])


WORDS = (
    (("X4", "X5"), "exterior; this part is made for interior use", outside_part_inside),
    (("E2", "E3", "E10", "E13", "E15", "M008", "M108"), "runs inside the rated leaf", rated),
    (("B/4",), "function is classroom", no_such_function),
    (("B/7",), "Edge bore is as wide as the leaf", bore_as_leaf),
)


@pytest.mark.parametrize(
    ("mark", "said", "holds"),
    [(mark, *rest) for marks, *rest in WORDS for mark in marks],
    ids=[mark for marks, *_ in WORDS for mark in marks],
)
def test_a_reason_without_a_number_is_true_of_the_cells(read, mark, said, holds):
    assert said in reason_of(read, mark)
    assert holds(read, mark, surveyed()[mark])
