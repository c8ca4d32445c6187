"""Fits by lock form and leaf material; what is expected is worked out by hand from rules, practice and parts.

The unit's plate is 80 x 160, its window x 10 to 70 and y 15 to 60, its connector at (40, 80); slack 60; lead 228.6.
"""

import json
import math
from dataclasses import replace
from itertools import combinations

import pytest

from hwsched.fitting import fit
from hwsched.fitting.in_edge import pockets
from hwsched.fitting.sundries import lock_holes
from hwsched.model.fit_record import fit_of, fit_text
from hwsched.rules import RULES
from hwsched.rules.judging import check
from hwsched.rules.reading import leaf_span_mm, lock_leaf
from hwsched.rules.solid.cavity import cavity
from hwsched.values import Chosen
from tests.fitting.door import INCH, USUAL, door, item, leaf, lock, opening, stock
from tests.rules.scenario import fit as bare_fit

HM = leaf(material="hollow-metal")
NARROW = leaf(material="aluminium", construction="narrow-stile", stile_mm=60.0)
CORNER = 10 * (math.pi / 2) - 20  # what a quarter turn of radius 10 gives back


def roles(found):
    return {p.role: p.part for p in found.parts}


def quantities(found):
    return {p.part: p.quantity for p in found.parts}


def errors(given, found):
    return [f for f in check(given, found) if f.severity == "error"]


def refused(found, part):
    return {r.rule for r in found.refused if r.part == part}


def test_mortise_in_wood():
    given = door()
    found = fit(given)
    assert found.status == "fits"
    assert found.power == "battery"
    got = roles(found)
    assert {k: got[k] for k in ("cylinder", "cam", "collar", "unit", "fastener", "battery", "coin-cell")} == {
        "cylinder": "CYL",
        "cam": "CAM",
        "collar": "COL",
        "unit": "UNIT",
        "fastener": "SCREW",
        "battery": "CELL",
        "coin-cell": "COIN",
    }
    assert quantities(found)["SCREW"] == 4
    assert quantities(found)["CELL"] == 6
    # L + o - trim - T/2 - k p = 25.4 - 22.225 = 3.175, the collar's height: flush, cam on the centre.
    assert (found.stack.projection_mm, found.stack.gap_mm, found.stack.turns) == (pytest.approx(3.175), 0.0, 0)
    place = found.placement
    assert (place.face, place.pattern, place.leaf) == ("inside", "straight", "single")
    # Hole opposite the cylinder; the connector right above it, as near as the window lets it.
    assert (place.hole_x_mm, place.hole_y_mm) == (69.85, 1000.0)
    assert (place.x_mm, place.y_mm) == (pytest.approx(29.85), pytest.approx(940.0))
    # 22.225 to the face, 20 to the connector, a quarter turn, 60 of slack.
    assert found.cable.length_mm == pytest.approx(22.225 + 20 + CORNER + 60, abs=0.001)
    assert found.cable.available_mm == 228.6
    # 1/2 in hole with 1/4 in pilot for the lead in a wood leaf, opposite the cylinder (common practice).
    hole, pilots = found.holes
    assert (hole.diameter_mm, hole.pilot_mm) == (0.5 * INCH, 0.25 * INCH)
    assert (hole.x_mm, hole.y_mm, hole.from_cylinder_mm) == (69.85, 1000.0, (0.0, 0.0))
    assert hole.depth_mm == pytest.approx((44.45 - 25.4) / 2)  # to the lock's case
    assert (hole.up_deg, hole.edge_deg) == (0.0, 0.0)
    # #6 screws hold a surface unit on wood (common practice); hardwood pilot 5/64 (shop tables).
    assert (pilots.count, pilots.by_template, pilots.diameter_mm) == (4, True, 5 / 64 * INCH)
    # Capacity 2500 x 80 %, 30 x 150 x 4 / 3600 + 0.060 x 24 + 3 % a year: 300.96 days (shared facts 2.6).
    assert found.battery.days == pytest.approx(300.96, abs=0.01)
    assert not errors(given, found)


def test_every_part_says_why_and_every_refusal_names_a_rule():
    found = fit(door())
    assert all(p.reason for p in found.parts)
    ids = {rule.id for rule in RULES}
    assert found.refused
    assert {r.rule for r in found.refused} <= ids
    assert all(r.reason for r in found.refused)
    assert refused(found, "BOND") == {"unit-for-no-glass"}


def test_hollow_metal_behind_the_stop():
    # RHR: the inside face closes against the stop; 29.85 - 15.875 leaves 13.975 to its band.
    found = fit(door(opening(hand="RHR"), HM))
    assert found.status == "fits"
    # 3/4 in would end in the case, 9.525 behind the face; 3/8 in ends before it.
    assert roles(found)["fastener"] == "THIN"
    assert next(mm for name, mm in found.placement.clearances if name == "frame stop") == pytest.approx(13.975)
    # The stop of a lock nearer to the edge pushes the plate: backset 45 wants x = 5, the stop allows 19.05.
    near = fit(door(opening(hand="RHR"), HM, lock(backset_mm=45.0, case_depth_mm=80.0)))
    assert near.placement.x_mm == pytest.approx(15.875 + 3.175)
    free = fit(door(opening(hand="RH"), HM, lock(backset_mm=45.0, case_depth_mm=80.0)))
    assert free.placement.x_mm == pytest.approx(5.0)


def test_narrow_aluminium_stile():
    """3/4 in hole, 1/16 in pilot, 1 3/8 in above the old hole's top, the plate 3/4 in above that top (practice)."""
    turn = item("thumb-turn", 28.575, 1000.0, 35.0, 35.0)
    given = door(opening(hand="LH"), NARROW, lock(**{**STILE_LOCK_FACTS, "thumb_turn": True}), [turn])
    found = fit(given)
    assert found.status == "fits"
    assert roles(found)["unit"] == "NARROW"
    place = found.placement
    assert place.pattern == "above"
    assert place.hole_x_mm == 28.575
    assert place.hole_y_mm == pytest.approx(1000 + 1.25 * INCH / 2 + 1.375 * INCH)
    assert place.y_mm == pytest.approx(1000 + 1.25 * INCH / 2 + 0.75 * INCH)
    # So the plate covers the hole: its lower rim stands 1 3/8 - 3/8 - 3/4 = 1/4 in above the plate's edge.
    assert place.hole_y_mm - 0.375 * INCH - place.y_mm == pytest.approx(0.25 * INCH)
    hole, pilots = found.holes
    assert (hole.diameter_mm, hole.pilot_mm) == (pytest.approx(0.75 * INCH), pytest.approx(INCH / 16))
    assert pilots.diameter_mm == pytest.approx(7 / 64 * INCH)
    assert roles(found)["fastener"] == "STILE"
    # To the thumb turn at least 3/16 in must be clear.
    assert place.y_mm - 1017.5 >= 3 / 16 * INCH
    assert "plate-on-stile" in refused(found, "UNIT")
    assert not errors(given, found)


STILE_LOCK_FACTS = {"function": "deadlock", "backset_mm": 28.575, "case_depth_mm": 48.0, "case_above_mm": 38.1}


def test_a_thumb_turn_too_near_below_refuses_the_narrow_unit():
    # The plate starts at 1000 + 15.875 + 19.05 = 1034.925; the turn's top at 1032 leaves 2.925 of 4.7625.
    turn = item("thumb-turn", 28.575, 1011.0, 35.0, 42.0)
    plate = item("push-plate", 30.0, 700.0, 50.0, 500.0)
    found = fit(
        door(opening(), NARROW, lock(**{**STILE_LOCK_FACTS, "thumb_turn": True}), [turn, plate], stock(drop=("EDGE",)))
    )
    said = [r for r in found.refused if r.part == "NARROW" and r.rule == "thumb-turn-clear"]
    assert found.status == "does-not-fit"
    assert said
    assert said[0].values["needed_mm"] == pytest.approx(3 / 16 * INCH)
    assert said[0].values["gap_mm"] == pytest.approx(2.925)


ESCUTCHEON = item("trim", 55.0, 1010.0, 42.0, 230.0, face="both")
THIN = leaf(thickness_mm=44.0)
EURO = lock(
    "euro-profile",
    backset_mm=55.0,
    cylinder_height_mm=978.0,
    case_height_mm=165.0,
    case_depth_mm=85.0,
    case_above_mm=118.0,
)


def test_people_are_not_kept_in_for_a_cheaper_cylinder():
    """A deadlock without a turn on a way out: of two cylinders the dearer has a turn, which opens it from inside."""
    cheap = replace(USUAL.get("EURO"), number="CHEAP", list_price=1.0)
    cheap = replace(cheap, attributes={**cheap.attributes, "thumb_turn": False})
    dead = replace(EURO, function="deadlock", thumb_turn=False)

    def taken(egress, **stocked):
        found = fit(door(opening(egress=egress), THIN, dead, [ESCUTCHEON], cat=stock(add=[cheap], **stocked)))
        return roles(found)["cylinder"]

    assert taken("egress") == "EURO"
    assert taken("none") == "CHEAP"
    # Alone it is taken all the same: whether it may stay so is for a person to accept.
    assert taken("egress", drop=["EURO", "HALF"]) == "CHEAP"


def test_euro_profile():
    given = door(opening(), THIN, EURO, [ESCUTCHEON])
    found = fit(given)
    assert found.status == "fits"
    assert roles(found)["cylinder"] == "EURO"
    # 30 - (44/2 + 6) = 2 past the trim on either side.
    assert found.stack.projection_mm == pytest.approx(2.0)
    assert refused(found, "HALF") == {"thumb-turn-kept"}
    # The case ends at 1096, below the plate: a screw of 1 in ends in the leaf of 44.
    assert roles(found)["fastener"] == "LONG"
    # The escutcheon ends at 1125: the plate starts 3/16 in above it, its hole 15 higher.
    assert found.placement.pattern == "above"
    assert found.placement.y_mm == pytest.approx(1125 + 3 / 16 * INCH)
    assert found.placement.hole_y_mm == pytest.approx(1125 + 3 / 16 * INCH + 15)
    square, channel, _ = found.holes
    assert square.depth_mm == pytest.approx(0.375 * INCH)
    assert (channel.purpose, channel.up_deg, channel.from_depth_mm) == ("channel", -80.0, pytest.approx(9.525))
    drop = 1125 + 3 / 16 * INCH + 15 - (978 + 118)
    assert channel.depth_mm == pytest.approx(drop / math.cos(math.radians(10)), abs=0.02)
    assert not errors(given, found)


def test_the_channel_of_the_published_practice():
    """Hole 2 1/2 in above, square 3/8 in, down at 10 degrees: 0.762 in of run, pocket entered at 0.507 in."""
    # A thumb turn of its own above the cylinder takes the straight place; the plate stands just above it.
    turn = item("thumb-turn", 69.85, 1015.0, 40.0, 40.0)
    given = door(opening(), leaf(), lock(thumb_turn=True), [turn])
    found = fit(given)
    assert found.placement.pattern == "above"
    assert found.placement.hole_y_mm == pytest.approx(1000 + 2.5 * INCH)
    square, channel, _ = found.holes
    assert (square.depth_mm, square.slot_mm) == (pytest.approx(0.375 * INCH), pytest.approx(81.445, abs=1e-3))
    # The axis of the tilted bit of 3/8 in leaves the leaf 9.525 / tan 10 = 54.019 above the square hole's centre, and
    # the bit is 4.7625 / sin 10 = 27.426 long to each side in the face: its slot goes up to 81.445, under the plate.
    assert square.y_mm + 81.445 <= found.placement.y_mm + 160.0
    assert channel.slot_mm == 0.0
    assert channel.depth_mm == pytest.approx(0.762 * INCH, abs=0.03)
    into = 9.525 + channel.depth_mm * math.sin(math.radians(10))
    assert into == pytest.approx(0.507 * INCH, abs=0.03)
    assert not errors(given, found)
    # On a rated leaf a raceway is no job-site preparation: the place is refused, and so is every other way.
    rated = fit(door(opening(rating="45"), leaf(), lock(thumb_turn=True), [turn]))
    assert rated.status == "does-not-fit"
    assert "rated-raceway" in refused(rated, "UNIT")
    assert "rated-cut" in refused(rated, "EDGE")


def test_rim_cuts_its_tailpiece_and_leads_above_its_case():
    given = door(
        opening(), HM, lock("rim", case_height_mm=90.0, case_depth_mm=76.0, case_above_mm=38.0, case_width_mm=22.0)
    )
    found = fit(given)
    assert found.status == "fits"
    assert roles(found)["cylinder"] == "RIM"
    # Needed 44.45 - 25.4 + 9.525 = 28.575; of 76.2 the notches of 3.175 take off 15 pieces: 47.625.
    assert found.stack.cut_off_mm == pytest.approx(15 * 3.175)
    # The case on the inside face ends at 1038.
    assert found.placement.pattern == "above"
    assert found.placement.y_mm == pytest.approx(1038 + 3 / 16 * INCH)
    assert not errors(given, found)


def test_an_exit_device_pushes_the_unit_above_it():
    # Its footprint covers the case, which reaches from 894.45 to 1044.45.
    device = item("exit-device", 430.0, 969.45, 800.0, 150.0)
    given = door(opening(egress="panic"), HM, lock("rim", function="exit"), [device])
    found = fit(given)
    assert found.status == "fits"
    assert found.placement.y_mm == pytest.approx(1044.45 + 12.7)
    assert not errors(given, found)


def test_bored_lever_lock():
    """3/8 in hole for the lead, 45 degrees, about 15 toward the edge; two 5/16 in bolt holes (common practice)."""
    given = door(opening(), leaf(), lock("bored", cylinder_height_mm=965.2, edge_bore_mm=22.225))
    found = fit(given)
    assert found.status == "fits"
    got = roles(found)
    assert (got["lock"], got["unit"]) == ("BORED", "UNIT")
    # The jig for the lead's hole stands on the through-bolts' holes, so that these come first (common practice).
    edge, bolts, slanted, _ = found.holes
    assert slanted.diameter_mm == pytest.approx(0.375 * INCH)
    assert slanted.up_deg == -45.0
    # 15 degrees within 2 (SDI 111-24, angles): a hole that leans 13 through the whole leaf leans more where it ends
    # in the bore.
    assert 13 <= -slanted.edge_deg <= 17
    assert slanted.x_mm == pytest.approx(69.85 - 44.45 * math.tan(math.radians(13)))
    # New trim of 80: the plate starts at 965.2 + 40 + 4.7625.
    assert found.placement.y_mm == pytest.approx(965.2 + 40 + 3 / 16 * INCH)
    assert (edge.name, edge.diameter_mm, edge.enlarges_mm) == ("edge bore", 25.4, 22.225)
    assert (bolts.diameter_mm, bolts.count, bolts.depth_mm) == (pytest.approx(5 / 16 * INCH), 2, None)
    assert "BOREJIG" in {p.part for p in found.parts}
    assert not errors(given, found)


def test_a_bored_lock_on_a_rated_leaf_may_not_be_bored_wider():
    given = door(opening(rating="20"), leaf(), lock("bored", cross_bore_mm=38.1))
    found = fit(given)
    assert found.status == "does-not-fit"
    assert ("BORED", "rated-cut") in {(refusal.part, refusal.rule) for refusal in found.refused}
    # Chosen by hand it is kept, and the rule says what is wrong.
    by_hand = fit(replace(given, chosen=(Chosen("lock", "BORED"),)))
    assert by_hand.status == "fits"
    assert "rated-cut" in {f.rule for f in errors(given, by_hand)}


def test_cabinet():
    given = door(
        opening(form="cabinet", frame_stop_mm=None),
        leaf(width_mm=450.0, height_mm=760.0, thickness_mm=19.05, undercut_mm=600.0),
        lock("cabinet", backset_mm=31.75, cylinder_height_mm=900.0),
    )
    found = fit(given)
    assert found.status == "fits"
    got = roles(found)
    assert got["lock"] == "CAB"
    # A screw of 1 in would come through the panel.
    assert got["fastener"] == "SHORT"
    assert [h.purpose for h in found.holes] == ["function", "fixing"]
    assert found.cable.points_mm[0][2] == 0.0
    assert not errors(given, found)


def test_cabinet_that_hangs_nobody_knows_where():
    found = fit(door(opening(form="cabinet"), leaf(thickness_mm=19.05, undercut_mm=None), lock("cabinet")))
    assert found.status == "to-measure"
    assert [n.fact for n in found.needs] == ["leaf.undercut_mm"]


def test_gate_in_the_weather():
    gate = leaf(
        width_mm=1066.8,
        height_mm=1219.2,
        thickness_mm=50.8,
        material="steel-gate",
        construction=None,
        stile_mm=101.6,
        undercut_mm=100.0,
    )
    given = door(
        opening(form="gate", exposure="exterior", temperature_low_c=-15.0, frame_material="none", frame_stop_mm=0.0),
        gate,
        lock("gate", backset_mm=60.0, cylinder_height_mm=900.0),
        (),
        # Alkaline cells would keep a quarter of their charge: lithium ones go there, which are livelier when fresh.
        stock(GATE={"lead_mm": 320.0}, CELL={"chemistry": "lithium-iron-disulfide"}, SEALED={"pack_high_v": 12.0}),
    )
    found = fit(given)
    assert found.status == "fits"
    assert roles(found)["unit"] == "SEALED"
    assert refused(found, "UNIT") == {"unit-weather"}
    assert {"GASKET", "SEAL", "GROMMET", "BOLT", "TUBE"} <= {p.part for p in found.parts}
    assert quantities(found)["BOLT"] == 4
    # Its case ends 75 above the centre.
    assert found.placement.y_mm == pytest.approx(900 + 75 + 3 / 16 * INCH)
    assert not errors(given, found)


def test_a_reader_in_a_leaf_has_one_hole_for_itself_and_its_lead():
    """28 through the leaf, all of it under the unit's plate; not two holes about one centre."""
    found = fit(door(lk=lock("reader")))
    (only,) = [hole for hole in found.holes if hole.purpose != "fixing"]
    assert (only.name, only.diameter_mm, only.depth_mm) == ("hole for the reader and its lead", 28.0, None)
    assert (only.x_mm, only.y_mm) == (69.85, 1000.0)
    place = found.placement
    assert place.x_mm <= 69.85 - 14.0
    assert place.x_mm + place.width_mm >= 69.85 + 14.0
    assert place.y_mm <= 1000.0 - 14.0


@pytest.mark.parametrize(
    ("thick", "deep", "depth"),
    [
        # A reader of 32 mm in a leaf of 40 has a bottom behind it; through one of 32 mm or less, or where nobody knows.
        (40.0, 32.0, 32.0), (32.1, 32.0, 32.0), (32.0, 32.0, None), (31.0, 32.0, None), (40.0, None, None),
        (None, 32.0, None),
    ],
)  # fmt: skip
@pytest.mark.parametrize("disposition", ["replace", "keep"])
def test_the_hole_for_a_reader_ends_behind_it_or_goes_through(thick, deep, depth, disposition):
    asked = door(
        lf=leaf(thickness_mm=thick), lk=lock("reader", disposition=disposition), cat=stock(READ={"depth_mm": deep})
    )
    holes = lock_holes(asked, bare_fit(lock_number="READ", role="lock"))
    # One that stays has its hole already.
    wanted = [(28.0, depth)] if disposition == "replace" else []
    assert [(hole.diameter_mm, hole.depth_mm) for hole in holes] == wanted


def test_reader_at_a_lift():
    given = door(
        opening(form="lift", power_wish="supply", supply_distance_m=12.0),
        lk=lock("reader", cylinder_height_mm=1066.8),
        leaves=(),
    )
    found = fit(given)
    assert found.status == "fits"
    got = roles(found)
    assert (got["reader"], got["unit"], got["supply"]) == ("READ", "UNIT", "PSU")
    assert "power-transfer" not in got
    assert quantities(found)["WIRE"] == pytest.approx(13.2)
    assert found.placement.face == "wall"
    # Connector 20 above the hole, 60 of slack; the wall is not surveyed.
    assert found.cable.length_mm == pytest.approx(80.0)
    assert {h.face for h in found.holes} == {"wall"}
    assert not errors(given, found)
    assert "wall-thickness-known" in {f.rule for f in check(given, found)}
    thick = door(
        opening(form="lift", power_wish="supply", supply_distance_m=12.0),
        lk=lock("reader", cylinder_height_mm=1066.8),
        leaves=(leaf(thickness_mm=112.0),),
    )
    # The reader is 32 deep: 80 of wall remain, and a quarter turn behind the plate.
    assert fit(thick).cable.length_mm == pytest.approx(80.0 + 80 + CORNER, abs=0.001)


def test_glass_is_bonded_and_never_drilled():
    box = {"face": "both", "x_mm": 80.0, "y_mm": 1000.0, "width_mm": 160.0, "height_mm": 200.0}
    glass = leaf(material="glass", construction="frameless", thickness_mm=12.7)
    given = door(
        opening(frame_material="none", frame_stop_mm=0.0), glass, lock(trim_key_mm=15.875, trim_inside_mm=15.9, **box)
    )
    found = fit(given)
    assert found.status == "fits"
    got = roles(found)
    assert (got["unit"], got["fastener"]) == ("BOND", "PAD")
    assert found.holes == ()
    # No hole, no sleeve; the cam's screws are locked all the same.
    assert got["consumable"] == "LOCKER"
    assert found.placement.y_mm == pytest.approx(1100 + 3 / 16 * INCH)
    assert not errors(given, found)
    # How far the case in its patch reaches decides nothing where nothing is bored.
    for unmeasured in ("case_above_mm", "case_width_mm", "case_height_mm"):
        patch = lock(trim_key_mm=15.875, trim_inside_mm=15.9, **box, **{unmeasured: None})
        again = fit(door(opening(frame_material="none", frame_stop_mm=0.0), glass, patch))
        assert (again.status, again.placement) == ("fits", found.placement)
    unseen = fit(door(opening(frame_material="none", frame_stop_mm=0.0), glass, lock()))
    assert unseen.status == "does-not-fit" or unseen.needs


POCKETED = ("pocket_length_mm", "pocket_depth_mm", "pocket_width_mm", "service_mm", "connector_y_mm")


@pytest.mark.parametrize("lacking", [(), *((name,) for name in POCKETED), *combinations(POCKETED, 2)])
def test_a_unit_of_which_a_measure_is_unknown_has_no_place_in_the_edge(lacking):
    """No pocket is milled by a measure that nobody has told."""
    asked = door(cat=stock(EDGE=dict.fromkeys(lacking)))
    bare, held, unit = bare_fit(placement=None), lock_leaf(asked), asked.catalogue.get("EDGE")
    found = pockets(asked, bare, unit, held, cavity(asked, bare), leaf_span_mm(asked, held))
    assert {each.placement.face for each, _ in found} == (set() if lacking else {"edge"})


def test_in_the_edge():
    """Pocket 13 3/4 x 1 3/4 x 11/16; a 9 in lead limits its distance (common practice)."""
    # A lite leaves a stile too narrow for every plate.
    stile = leaf(construction="stile-and-rail", stile_mm=70.0)
    given = door(opening(), stile, lock(backset_mm=45.0, case_depth_mm=65.0), (), stock(drop=("NARROW",)))
    found = fit(given)
    assert found.status == "fits"
    assert roles(found)["unit"] == "EDGE"
    place = found.placement
    assert place.face == "edge"
    # Case top 1044.45, bridge 19.05.
    assert place.y_mm == pytest.approx(1044.45 + 19.05)
    assert (place.width_mm, place.height_mm) == (11 / 16 * INCH, 13.75 * INCH)
    assert place.x_mm == pytest.approx((44.45 - 17.4625) / 2, abs=1e-3)
    # 44.45 + 19.05 + 20 to the connector, the whole depth of 44.45 and a hand's 30: connected before it slides in.
    assert found.cable.length_mm == pytest.approx(44.45 + 19.05 + 20 + 44.45 + 30)
    pocket = found.holes[0]
    assert (pocket.purpose, pocket.depth_mm) == ("pocket", pytest.approx(1.75 * INCH))
    assert (pocket.width_mm, pocket.height_mm) == (11 / 16 * INCH, 13.75 * INCH)
    assert not errors(given, found)
    less = stock(CYL={"lead_mm": 157.0}, drop=("EXT", "NARROW"))
    short = fit(door(opening(), stile, given.items[0], (), less))
    (said,) = (r for r in short.refused if r.part == "EDGE" and r.values.get("short_mm", 9) < 1)
    assert said.rule == "lead-reaches"
    assert said.values["short_mm"] == pytest.approx(157.95 - 157.0)


def test_mineral_core_rated_straight_only():
    given = door(
        opening(rating="45"), leaf(material="mineral-core"), cat=stock(SCREW={"leaf_material": "mineral-core"})
    )
    found = fit(given)
    assert found.status == "fits"
    assert found.placement.pattern == "straight"
    assert not errors(given, found)
    assert "rated-hole-allowed" in {f.rule for f in check(given, found)}


def test_composite_has_no_screw_in_this_catalogue():
    found = fit(door(opening(), leaf(material="composite")))
    assert found.status == "does-not-fit"
    assert "fastener-for-material" in refused(found, "UNIT")
    assert found.nearest_miss is not None


def test_a_pair_is_converted_on_its_active_leaf():
    pair = (leaf(position="inactive"), leaf(position="active"))
    given = door(
        opening(form="pair", hand="LHR"), items=[item("flush-bolt", 10.0, 1050.0, leaf="inactive")], leaves=pair
    )
    found = fit(given)
    assert found.status == "fits"
    assert found.placement.leaf == "active"
    assert found.holes[0].leaf == "active"


def test_a_unit_stands_as_far_off_the_stop_as_the_leaf_s_swing_asks():
    """A leaf of 500 and 44.45, pins 6.35 off it (from memory), a unit 32 proud; the stop hides 28 of the inside face.

    At 28 + off its front corner comes out by sqrt((472 - off)^2 + 82.8^2 - 50.8^2) - (472 - off): that is off
    itself at 4.551.
    """
    given = door(opening(rating="45", hand="LHR", frame_stop_mm=28.0), leaf(width_mm=500.0))
    found = fit(given)
    assert found.status == "fits"
    off = found.placement.x_mm - 28.0
    assert off == pytest.approx(4.551, abs=0.002)
    assert ((472.0 - off) ** 2 + 82.8**2 - 50.8**2) ** 0.5 - (472.0 - off) == pytest.approx(off, abs=0.001)
    assert "frame-stop-clear" not in {finding.rule for finding in check(given, found)}


def test_places_are_as_exact_as_the_survey_and_stay_so_where_they_are_kept():
    """2 45/64 in is 68.659375 mm: six decimals, and none of them is lost on the way into the project's file."""
    x, y = (2 + 45 / 64) * INCH, (39 + 1 / 64) * INCH
    # Straight behind the cylinder, above a bored lock, in the edge, behind a reader on a wall.
    stile = leaf(construction="stile-and-rail", stile_mm=70.0)
    edge = lock(backset_mm=45.0, case_depth_mm=65.0, cylinder_height_mm=y)
    doors = {
        "straight": (door(lk=lock(backset_mm=x, cylinder_height_mm=y)), lambda p: (p.hole_x_mm - x, p.hole_y_mm - y)),
        # Case's top 44.45 above the cylinder, bridge 19.05; the pocket begins above it, in the middle of the leaf.
        "in-edge": (
            door(opening(), stile, edge, (), stock(drop=("NARROW",))),
            lambda p: (p.hole_x_mm - 44.45 / 2, p.hole_y_mm - (y + 44.45 + 19.05)),
        ),
        "beside": (
            door(
                opening(form="lift", power_wish="supply", supply_distance_m=12.0),
                lk=lock("reader", cylinder_height_mm=y),
                leaves=(),
            ),
            lambda p: (p.hole_x_mm, p.hole_y_mm - y),
        ),
    }
    for pattern, (given, off) in doors.items():
        found = fit(given)
        place = found.placement
        assert place.pattern == pattern
        assert off(place) == pytest.approx((0.0, 0.0), abs=1e-9)
        # What is kept is what was found, to the last digit.
        assert fit_of(json.loads(fit_text(found))).placement == place


def test_no_unit_is_refused_or_exchanged_for_the_rounding_of_how_a_length_was_written():
    """A plate 3 in wide and 1/8 in to the lock edge want a stile of 3 1/8 in: 79.375 mm, that one may write as 79."""
    inches = {"plate_width_mm": 76.2, "plate_height_mm": 152.4}
    screws = {"screw_places": "6, 6; 70, 6; 6, 146; 70, 146"}

    def on(stile_mm, **sizes):
        given = door(
            lf=leaf(construction="stile-and-rail", stile_mm=stile_mm),
            lk=lock(backset_mm=50.8, case_depth_mm=65.0),
            cat=stock(UNIT={**(sizes or inches), **screws}, drop=("EDGE",)),
        )
        found = fit(given)
        said = [f for f in check(given, found) if f.rule == "plate-on-stile"]
        return roles(found).get("unit"), [(f.severity, "measure this to 0.1 mm" in f.cure) for f in said]

    assert on(79.375) == ("UNIT", [])
    assert on(79.0) == ("UNIT", [("note", True)])
    # 78 mm is never 79.375; and what was measured to a tenth is known to a twentieth.
    assert on(78.0)[0] != "UNIT"
    assert on(79.1)[0] != "UNIT"
    # A plate in whole millimetres is none of inches: then a millimetre is what it says.
    assert on(79.0, plate_width_mm=75.8, plate_height_mm=152.0) == ("UNIT", [])
    assert on(79.0, plate_width_mm=76.0, plate_height_mm=152.0)[0] != "UNIT"


@pytest.mark.parametrize(("material", "bored"), [("wood", 1), ("aluminium", 0)])
def test_between_pockets_a_hole_is_bored_only_where_the_leaf_is_solid(material, bored):
    """A tube of a stile is hollow behind its edge: there the lead hangs down from pocket to pocket."""
    stile = leaf(material=material, construction="stile-and-rail", stile_mm=70.0)
    edge = lock(backset_mm=45.0, case_depth_mm=65.0)
    found = fit(door(opening(), stile, edge, (), stock(drop=("NARROW", "UNIT"))))
    assert found.placement.pattern == "in-edge"
    assert sum(hole.purpose == "channel" for hole in found.holes) == bored
