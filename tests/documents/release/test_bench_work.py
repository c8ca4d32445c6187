"""What the warehouse did: done on the packet only where it is on record for this piece, else still to do."""

from dataclasses import replace

import pytest

from hwsched.documents.release.packet import PACKET
from hwsched.documents.release.packet_facts import situations
from hwsched.documents.release.type_sheets import build as type_sheets
from hwsched.documents.release.type_sheets import sheet_types
from hwsched.render.blocks import Facts, Steps
from hwsched.values import PointFit
from tests.documents.reading import blocks, texts

ALL = (("unit", "built"), ("unit", "programmed"), ("unit", "tested"), ("cylinder", "built"))
# Steps before the way to the site, by the work with which each is done.
DONE = {
    "Put the coin": {("unit", "built")},
    "into the pack": {("unit", "programmed"), ("unit", "tested")},
    "Program": {("unit", "programmed"), ("unit", "tested")},
    "Take the pack out": {("unit", "programmed"), ("unit", "tested")},
    "Screw": {("cylinder", "built")},
}


@pytest.fixture
def recorded(quay):
    """The quay with bench work on record at one opening."""

    def with_work(mark, *work):
        openings = tuple(
            replace(each, bench=frozenset((each.given.point.id, *one) for one in work)) if each.mark == mark else each
            for each in quay.openings
        )
        return replace(quay, openings=openings)

    return with_work


def steps(view, mark="WOOD"):
    opening = next(each for each in view.openings if each.mark == mark)
    return [line for block in blocks(PACKET.build(view, opening)) if isinstance(block, Steps) for line in block.lines]


def at_bench(lines):
    return {line.where for line in lines} & {"Done at the bench", "Still to do"}


def test_without_a_record_all_of_it_is_still_to_do(recorded):
    lines = steps(recorded("WOOD"))
    assert at_bench(lines) == {"Still to do"}
    assert not any(line.done for line in lines)
    # Of the usual opening: cells, program, pack out, cam on the cylinder.
    assert sum(line.where == "Still to do" for line in lines) >= 4


@pytest.mark.parametrize("work", [ALL[:1], ALL[1:2], ALL[1:3], ALL[3:], ALL], ids=str)
def test_a_step_is_done_with_all_that_it_takes_and_with_nothing_less(recorded, work):
    bare, lines = steps(recorded("WOOD")), steps(recorded("WOOD", *work))
    assert len(bare) == len(lines)
    for before, after in zip(bare, lines, strict=True):
        words = next((words for words in DONE if words in before.text and before.where == "Still to do"), None)
        done = words is not None and DONE[words] <= set(work)
        assert after.done == done, before.text
        assert (after.where == "Done at the bench") == done
        if not done:
            assert after.text == before.text


def test_work_at_another_piece_or_opening_is_none_here(recorded):
    assert not any(line.done for line in steps(recorded("METRIC", *ALL)))


def test_work_at_one_lock_point_is_none_at_the_other(quay):
    wood = next(each for each in quay.openings if each.mark == "WOOD")
    points = tuple(
        PointFit(replace(wood.given, point=replace(wood.given.point, id=name, number=n, name=name)), wood.fit)
        for n, name in enumerate(("latch", "bolt"), start=1)
    )
    view = replace(wood, given=points[0].given, points=points, bench=frozenset(("bolt", *one) for one in ALL))
    latch, bolt = situations(view)
    assert (latch.bench, bolt.bench) == (frozenset(), frozenset(ALL))


def test_a_caution_stands_at_the_first_step_that_is_still_to_do(recorded):
    """Cells are put in at the bench; where that is done the caution comes when the pack goes back in."""
    lines = steps(recorded("WOOD", *ALL))
    assert not any(line.cautions or line.readings for line in lines if line.done)
    said = [line for line in lines if any("Mix no old and new cells" in caution for caution in line.cautions)]
    assert [line.text for line in said] == ["Put the pack back in, polarity as marked."]
    everywhere = [caution for line in steps(recorded("WOOD")) for caution in line.cautions]
    # That no key is tried holds for a coin cell only; all else is said with the bench work done as without.
    assert set(everywhere) == {caution for line in lines for caution in line.cautions}


def test_what_only_the_bench_takes_is_not_carried_to_the_door(recorded):
    def tools(view):
        opening = next(each for each in view.openings if each.mark == "RIM")
        return next(text for text in texts(PACKET.build(view, opening)) if text.startswith("Tools: "))

    assert "programming key or device" in tools(recorded("RIM"))
    done = recorded("RIM", *ALL)
    clock = any("Set the clock at the door" in line.text for line in steps(done, "RIM"))
    assert ("programming key or device" in tools(done)) == clock


def test_openings_alike_share_a_sheet_whatever_was_done_and_each_strip_says_it(recorded):
    view = recorded("WOOD", *ALL[1:])
    (shared,) = [kind for kind in sheet_types(view) if "WOOD" in {each.mark for each in kind.openings}]
    assert {each.mark for each in shared.openings} == {"WOOD", "METRIC"}
    pairs = [pair for block in blocks(type_sheets(view, None)) if isinstance(block, Facts) for pair in block.pairs]
    said = [text for label, text in pairs if label == "Done at the bench"]
    assert sorted(said) == ["cylinder built; unit programmed, tested", "nothing on record"]
    wheres = {line.where for block in shared.blocks if isinstance(block, Steps) for line in block.lines}
    assert "bench" in wheres
    assert not {"Still to do", "Done at the bench"} & wheres
