"""The lock's slot: every collar, ring, turn, cam and tailpiece is tried; what is measured coarsely refuses nothing.

Lengths in mm. The arithmetic is geometry: a head stands L + o - trim - T/2 - k p proud, a rim cylinder's tailpiece
reaches its own length less leaf, trim and body into the case. 3/8 in of engagement: from memory, unverified.
"""

import pytest

from hwsched.fitting import alternatives, fit
from hwsched.rules.judging import check
from hwsched.values import Chosen
from tests.fitting.door import USUAL, door, leaf, lock, part, stock

SIXTEENTH = 25.4 / 16
LEAD = {"lead_mm": 228.6, "connector": "p4"}


def roles(found):
    return {p.role: p.part for p in found.parts}


def refused(found, number):
    return {r.rule: r for r in found.refused if r.part == number}


def said(given, found, rule):
    return [each for each in check(given, found) if each.rule == rule]


# --- stacks ---------------------------------------------------------------------------------------------------------


def test_a_cheaper_collar_that_the_thread_does_not_pass_is_not_the_only_one_tried():
    """Two collars of one height: the cheaper is bored 28, the thread is 29.21."""
    cat = stock(add=[part("ACOL", "collar", 1.0, height_mm=3.175, inner_diameter_mm=28.0)])
    found = fit(door(cat=cat))
    assert roles(found)["collar"] == "COL"


def test_a_collar_through_which_the_head_slips_is_not_taken():
    cat = stock(
        CYL={"head_diameter_mm": 33.0}, add=[part("ACOL", "collar", 1.0, height_mm=3.175, inner_diameter_mm=33.5)]
    )
    assert roles(fit(door(cat=cat)))["collar"] == "COL"
    only = fit(door(cat=stock(CYL={"head_diameter_mm": 33.0}, COL={"inner_diameter_mm": 33.5})))
    assert "slips through" in refused(only, "CYL")["collar-bore"].reason


def test_of_equal_stacks_the_cheapest_is_taken():
    cat = stock(add=[part("ZCOL", "collar", 2.0, height_mm=3.175, inner_diameter_mm=29.5)])
    assert roles(fit(door(cat=cat)))["collar"] == "ZCOL"


def test_a_collar_of_unknown_bore_is_not_asked_for_where_another_serves():
    cat = stock(add=[part("ACOL", "collar", 1.0, height_mm=3.175)])
    found = fit(door(cat=cat))
    assert found.status == "fits"
    assert roles(found)["collar"] == "COL"
    lacking = fit(door(cat=stock(COL={"inner_diameter_mm": None})))
    assert "part COL.inner_diameter_mm" in {need.fact for need in lacking.needs}


def test_another_turn_and_a_ring_are_tried_before_a_cylinder_is_refused():
    """1 in shell in 1 11/16 in: 25.4 - 21.43 = 3.97 = a collar of 3.175 and a pitch of 0.794: one turn, flush."""
    found = fit(door(lf=leaf(thickness_mm=27 * SIXTEENTH)))
    assert found.stack.turns == 1
    assert found.stack.gap_mm == pytest.approx(0.0, abs=1e-6)
    # 1 5/8 in: 25.4 - 20.64 = 4.7625 = collar and two turns, or collar and ring of 1/16; fewest rings are first.
    two = fit(door(lf=leaf(thickness_mm=26 * SIXTEENTH)))
    assert (two.stack.turns, two.stack.rings) == (2, ())
    # 1 9/16 in: 25.4 - 19.84 = 5.556; two turns leave 3.969, one pitch over the collar: the most, and without a ring.
    three = fit(door(lf=leaf(thickness_mm=25 * SIXTEENTH)))
    assert (three.stack.turns, three.stack.rings, three.stack.gap_mm) == (2, (), pytest.approx(25.4 / 32))
    # 1 1/2 in: 25.4 - 19.05 = 6.35: a third turn would do without a ring, and is none.
    four = fit(door(lf=leaf(thickness_mm=24 * SIXTEENTH)))
    assert (four.stack.turns, four.stack.rings) == (2, ("RING",))


def test_no_more_than_three_rings_stand_on_a_cylinder():
    """1 1/4 in: 25.4 - 15.875 = 9.525 = a collar of 3.175, two turns of 0.794 and three rings of 1.5875, our own most.

    1 1/8 in: 11.1125 is one ring more; with three the head stands 1.5875 over them, and one pitch is the most.
    """
    three = fit(door(lf=leaf(thickness_mm=31.75)))
    assert (three.stack.turns, three.stack.rings) == (2, ("RING",) * 3)
    four = refused(fit(door(lf=leaf(thickness_mm=28.575))), "CYL")["cylinder-flush"]
    assert four.values["short_mm"] == pytest.approx(1.5875 - 25.4 / 32)


def test_every_cam_of_the_form_is_tried_and_the_cheapest_taken():
    cat = stock(CAM={"list_price": 9.0}, add=[part("ZCAM", "cam", 2.0, fits="f2", cam_form="straight")])
    assert roles(fit(door(cat=cat)))["cam"] == "ZCAM"


def test_a_tailpiece_conversion_that_bottoms_leaves_its_place_to_one_that_does_not():
    """Behind a mortise cylinder: case 23 thick, of sheet 1.5 (from memory), cam plane on its centre: 10 are left, 9.525
    needed.

    In steps of 3.175 a tailpiece of 76.2 leaves 9.525 (21 steps), one of 78 leaves 11.325 and then 8.15: it jams or is
    too short.
    """
    lk = lock(cam_form="flat-tail", case_width_mm=23.0)
    short = part("ATAIL", "tailpiece", 1.0, fits="f2", tail_form="flat-tail", length_mm=78.0, step_mm=3.175)
    found = fit(door(lk=lk, cat=stock(add=[short])))
    assert roles(found)["tailpiece"] == "TAIL"
    assert found.stack.cut_off_mm == pytest.approx(21 * 3.175)
    jams = fit(door(lk=lk, cat=stock(add=[short], drop=("TAIL",))))
    assert jams.status == "does-not-fit"
    assert refused(jams, "CYL")["tail-reach"].values["short_mm"] == pytest.approx(1.325)


def test_a_tailpiece_conversion_that_does_not_reach_is_refused():
    lk = lock(cam_form="flat-tail")
    found = fit(door(lk=lk, cat=stock(TAIL={"length_mm": 8.0})))
    assert refused(found, "CYL")["tail-reach"].values["short_mm"] == pytest.approx(1.525)


def test_where_no_stack_can_be_worked_out_it_is_said_why():
    found = fit(door(lk=lock(case_offset_mm=25.0)))
    reason = refused(found, "CYL")["cylinder-flush"].reason
    assert "outside the leaf of 44.45 mm" in reason


# --- what was measured coarsely -------------------------------------------------------------------------------------


def test_a_leaf_written_in_millimetres_gets_the_parts_of_the_leaf_in_inches():
    """1 3/4 in is written 44.5 mm: the head then seems 0.025 recessed, and nobody can measure that."""
    given = door(lf=leaf(thickness_mm=44.5))
    found = fit(given)
    assert found.status == "fits"
    exact = fit(door())
    assert roles(found) == roles(exact)
    (note,) = said(given, found, "cylinder-flush")
    assert note.severity == "note"
    assert note.values["off_mm"] == pytest.approx(0.025)
    assert "Leaf thickness: measure this to 0.01 mm" in note.cure
    assert not said(door(), exact, "cylinder-flush")


def test_a_head_is_refused_for_a_hundredth_where_the_facts_are_exact():
    """Leaf and trim in inches, and a cylinder 0.01 short of flush: recessed."""
    only = {"drop": ("RING",), "CYL": {"length_mm": 25.39}}
    found = fit(door(cat=stock(**only)))
    assert refused(found, "CYL")["cylinder-flush"].values["short_mm"] == pytest.approx(0.01)
    # A tenth of a micrometre is what sums of inches in millimetres miss by.
    flush = fit(door(cat=stock(drop=("RING",), CYL={"length_mm": 25.3999})))
    assert flush.status == "fits"


def test_a_leaf_in_whole_millimetres_leaves_a_head_open_only_where_nothing_else_serves():
    """45 mm: 25.4 - 22.5 = 2.9, 0.275 under the collar, where half a millimetre of leaf leaves 0.25 open: refused."""
    found = fit(door(lf=leaf(thickness_mm=45.0), cat=stock(drop=("RING",))))
    assert found.status == "does-not-fit"
    # Under a trim of 3 mm half a millimetre more is open: 25.4 - 22.5 - 3 = -0.1, 0.497 under a collar of 1/64 in.
    shell = part(
        "LONG", "mortise-cylinder", 300.0, length_mm=28.575, cam_offset_mm=0.0, thread_pitch_mm=25.4 / 32,
        thread_diameter_mm=29.21, cam_fixing="f2", exposure="exterior", fire_listed=True, **LEAD,
    )  # fmt: skip
    # 28.575 - 25.5 = 3.075 stands 0.297 over a collar of 7/64 in: right as written, though it costs more.
    collar = part("C7", "collar", height_mm=7 * 25.4 / 64, inner_diameter_mm=29.5)
    coarse = {"lf": leaf(thickness_mm=45.0), "lk": lock(trim_key_mm=3.0)}
    cat = {"drop": ("RING",), "COL": {"height_mm": 25.4 / 64}}
    assert roles(fit(door(**coarse, cat=stock(**cat, add=[shell, collar]))))["cylinder"] == "LONG"
    alone = door(**coarse, cat=stock(**cat))
    last = fit(alone)
    assert last.status == "fits"
    (note,) = said(alone, last, "cylinder-flush")
    assert note.values["off_mm"] == pytest.approx(0.1 + 25.4 / 64)
    assert note.values["rounding_mm"] == pytest.approx(0.75)


# --- tailpieces of rim cylinders ------------------------------------------------------------------------------------

RIM = lock("rim", case_width_mm=22.225, case_depth_mm=76.2, case_height_mm=88.9, case_above_mm=38.1)


def rim(**facts):
    return lock("rim", **{**{n: getattr(RIM, n) for n in ("case_width_mm", "case_depth_mm")}, **facts})


def test_a_tailpiece_jams_in_a_case_that_is_shallower_than_its_step():
    """Leaf 44.45, body 25.4: 19.05 to the case. 76.2 broken off at 3.175 leaves 28.575: 9.525 jam in a case 9.5
    thick of sheet 1.5 (from memory), 8 inside.
    """
    given = door(lk=rim(case_width_mm=9.5))
    found = fit(given)
    assert found.status == "does-not-fit"
    refusal = refused(found, "RIM")["tail-reach"]
    assert refusal.values["short_mm"] == pytest.approx(1.525)
    assert "jams" in refusal.reason
    assert fit(door(lk=rim())).status == "fits"


def test_a_tailpiece_jams_where_no_score_lies_between_reaching_and_bottoming():
    """Case 11.5 thick, 10 deep inside its sheet: 28.575 to 29.05.

    In steps of 3.175 a tailpiece of 77 leaves 29.375: 0.325 too long.
    """
    found = fit(door(lk=rim(case_width_mm=11.5), cat=stock(RIM={"tail_length_mm": 77.0})))
    assert refused(found, "RIM")["tail-reach"].values["short_mm"] == pytest.approx(0.325)
    # Where it is cut anywhere, it is sawn.
    sawn = fit(door(lk=rim(case_width_mm=11.5), cat=stock(RIM={"tail_length_mm": 77.0, "tail_step_mm": None})))
    assert sawn.status == "fits"
    assert 28.575 <= 77.0 - sawn.stack.cut_off_mm <= 29.05


def test_a_longer_tailpiece_is_tried_where_the_own_one_does_not_do():
    spare = part("RTAIL", "tailpiece", 3.0, fits="rim", tail_form="flat-tail", length_mm=76.2, step_mm=3.175)
    found = fit(door(lk=rim(case_width_mm=11.5), cat=stock(RIM={"tail_length_mm": 77.0}, add=[spare])))
    assert roles(found)["tailpiece"] == "RTAIL"


def test_a_tailpiece_that_a_person_chose_stands_in_place_of_the_own_one():
    """28.575 are needed: off the own one of 76.2 come 15 steps of 3.175, off one of 88.9 nineteen."""
    spare = part("RTAIL", "tailpiece", 3.0, fits="rim", tail_form="flat-tail", length_mm=88.9, step_mm=3.175)
    cat = stock(add=[spare])
    chosen = fit(door(lk=rim(), cat=cat, chosen=[Chosen("tailpiece", "RTAIL")]))
    assert (roles(chosen)["tailpiece"], chosen.stack.cut_off_mm) == ("RTAIL", pytest.approx(19 * 3.175))
    # What else was chosen leaves the own one where it is.
    other = fit(door(lk=rim(), cat=cat, chosen=[Chosen("unit", "UNIT")]))
    assert ("tailpiece" in roles(other), other.stack.cut_off_mm) == (False, pytest.approx(15 * 3.175))


def test_a_body_that_comes_out_of_a_thin_leaf_is_refused():
    """A body of 25.4 in a leaf of 3/4 in comes 6.35 out on the inside."""
    found = fit(door(lf=leaf(thickness_mm=19.05), lk=rim()))
    refusal = refused(found, "RIM")["tail-reach"]
    assert refusal.values["short_mm"] == pytest.approx(6.35)
    # Trim of 1/4 in holds it back exactly so far.
    assert "tail-reach" not in refused(fit(door(lf=leaf(thickness_mm=19.05), lk=rim(trim_key_mm=6.35))), "RIM")


def test_how_deep_the_case_is_has_to_be_known():
    found = fit(door(lk=rim(case_width_mm=None)))
    assert found.status == "to-measure"
    assert "existing_item.case_width_mm" in {need.fact for need in found.needs}


def test_all_that_serves_is_offered_as_an_alternative_of_the_best():
    assert USUAL.get("CYL") is not None
    assert all(each.stack.gap_mm >= 0 for each in alternatives(door()) if each.stack is not None)


@pytest.mark.parametrize(("thick", "turns"), [(44.45, 0), (38.5, 1), (39.8, 2)])
def test_turns_beyond_the_middle_are_said_as_one_or_as_many(thick, turns):
    """The cam's plane in the case's centre, one turn past it, or two: 1/32 in each."""
    found = fit(door(lf=leaf(thickness_mm=thick)))
    assert found.stack.turns == turns
    said = {0: "on the case's centre", 1: "1 turn beyond the case's centre"}.get(turns, f"{turns} turns beyond the")
    assert said in next(part.reason for part in found.parts if part.role == "cylinder")
