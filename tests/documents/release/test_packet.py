"""The installer's packet: every number beside the cell of survey, catalogue or practice from which it follows.

1/64 in is the finest step that is printed. Practice means `resources/practice`, with its source there.
"""

from dataclasses import replace
from typing import get_args

import pytest
from pypdf import PdfReader

from hwsched.documents.release.packet import PACKET, spent_words
from hwsched.documents.view import OpeningView, Photo, ProjectView
from hwsched.drawings.drawing import Callout
from hwsched.render.blocks import Bullets, Drawings, Picture
from hwsched.render.pdf import render_pdf
from hwsched.rules.rule import DEFERS
from hwsched.rules.wording import unknown
from hwsched.values import Catalogue, Finding, Fit, Hole, Item, Need, Part, PointFit
from hwsched.values.fit import Purpose, Refusal
from tests.documents.reading import blocks, facts, lines, texts, ticked
from tests.drawings.measuring import dimensions
from tests.drawings.openings import FIT, GIVEN, fit_part
from tests.render.pages_read import sizes, written

BACKSET = 2.75 * 25.4  # survey cell B/S: 2 3/4
CYLINDER = 40 * 25.4  # survey cell Cyl AFF: 40
SIZES = ("From lock edge", "From cylinder", "Dia.", "Pilot", "Depth", "Angle")
# What has no cylinder is measured from its own centre; on a wall from the floor.
NO_CYLINDER = {
    "SMALL": "From lock",
    "BORED": "From lock",
    "GATE": "From lock",
    "CABINET": "From lock",
    "LIFT": "Above floor",
}


def packet_of(fit, style="fraction", parts=None):
    """Build the packet of an opening with a fit made by hand."""
    catalogue = Catalogue(parts, "test") if parts is not None else GIVEN.catalogue
    given = replace(GIVEN, catalogue=catalogue)
    project = ProjectView("Quay", "working state 1", "2031-05-01", style, (), catalogue)
    return PACKET.build(project, OpeningView(given, fit, ()))


def line_of(style="fraction", **facts_of_hole):
    """Return what the packet says of one hole; the usual one stands at the cylinder's centre."""
    usual = {
        "name": "hole", "leaf": "single", "face": "inside", "x_mm": BACKSET, "y_mm": CYLINDER, "diameter_mm": 12.7,
        "from_cylinder_mm": (0.0, 0.0), "order": 1,
    }  # fmt: skip
    hole = Hole(**{**usual, **facts_of_hole})
    (line,) = lines(packet_of(replace(FIT, holes=(hole,)), style), "Holes")
    return line


# --- each form of a hole, by hand -----------------------------------------------------------------------------------

FORMS = {
    # Nothing but the size: at the cylinder, straight through, no pilot.
    "plain": ({}, ('2 3/4"', "at its centre", '1/2"', "-", "through", "square")),
    # 1/4 in pilot and 3/8 in deep: half of what a 1 in case leaves of a 1 3/4 in leaf.
    "pilot and depth": (
        {"pilot_mm": 6.35, "depth_mm": 9.525},
        ('2 3/4"', "at its centre", '1/2"', '1/4"', '3/8"', "square"),
    ),
    # Up counts from the cylinder: 2 1/2 in above, 1 1/2 in below.
    "above": ({"from_cylinder_mm": (0.0, 63.5)}, ('2 3/4"', '2 1/2" above', '1/2"', "-", "through", "square")),
    "below": ({"from_cylinder_mm": (0.0, -38.1)}, ('2 3/4"', '1 1/2" below', '1/2"', "-", "through", "square")),
    # Across counts toward the hinge edge: 2 3/4 + 5/8 = 3 3/8 from the lock edge; 2 3/4 - 1/4 = 2 1/2.
    "toward hinge": (
        {"x_mm": 85.725, "from_cylinder_mm": (15.875, 0.0)},
        ('3 3/8"', '5/8" toward hinge', '1/2"', "-", "through", "square"),
    ),
    "toward edge": (
        {"x_mm": 63.5, "from_cylinder_mm": (-6.35, 0.0)},
        ('2 1/2"', '1/4" toward edge', '1/2"', "-", "through", "square"),
    ),
    "above and toward edge": (
        {"x_mm": 63.5, "from_cylinder_mm": (-6.35, 50.8)},
        ('2 1/2"', '2" above, 1/4" toward edge', '1/2"', "-", "through", "square"),
    ),
    "below and toward hinge": (
        {"x_mm": 76.2, "from_cylinder_mm": (6.35, -101.6)},
        ('3"', '4" below, 1/4" toward hinge', '1/2"', "-", "through", "square"),
    ),
    # A hundredth of a millimetre off is no place of its own.
    "as good as at the cylinder": (
        {"from_cylinder_mm": (0.01, -0.01)},
        ('2 3/4"', "at its centre", '1/2"', "-", "through", "square"),
    ),
    # What is told from no cylinder is told from the floor, or nobody knows where to drill.
    "no relation to the cylinder": (
        {"from_cylinder_mm": None},
        ('2 3/4"', '40" above floor', '1/2"', "-", "through", "square"),
    ),
    "way for a wire in the hinge edge": (
        {"face": "hinge-edge", "purpose": "raceway", "x_mm": 22.225, "from_cylinder_mm": None, "depth_mm": 50.8},
        ('7/8" from the inside face', '40" above floor', '1/2"', "-", '2"', "square"),
    ),
    # What leans says to which side, in a sign that nobody has to know.
    "leans up and to the lock edge": (
        {"up_deg": 45.0, "edge_deg": 15.0, "depth_mm": 50.8},
        ('2 3/4"', "at its centre", '1/2"', "-", '2"', "45° up, 15° toward the lock edge"),
    ),
    "leans down and to the hinge edge": (
        {"up_deg": -45.0, "edge_deg": -15.0, "depth_mm": 50.8},
        ('2 3/4"', "at its centre", '1/2"', "-", '2"', "45° down, 15° toward the hinge edge"),
    ),
    "leans to the hinge edge only": (
        {"edge_deg": -7.5},
        ('2 3/4"', "at its centre", '1/2"', "-", "through", "7.5° toward the hinge edge"),
    ),
    # The second bore of a channel: from the bottom of the first, 3/8 in below the face, 10 degrees to it.
    "channel": (
        {"purpose": "channel", "up_deg": -80.0, "depth_mm": 19.05, "from_depth_mm": 9.525, "diameter_mm": 9.525},
        (
            '2 3/4"', "at its centre", '3/8"', "-", '3/4", begins 3/8" below the face',
            "80° down, 10° to the leaf's face",
        ),
    ),
    # A cross bore of 2 in that becomes 2 1/8 in.
    "enlarged": (
        {"purpose": "bore", "diameter_mm": 53.975, "enlarges_mm": 50.8, "face": "key"},
        ('2 3/4"', "at its centre", '2 1/8", enlarges 2"', "-", "through", "square"),
    ),
    # In the lock edge x counts from the inside face: 7/8 in is the middle of 1 3/4 in; 2 3/4 in deep is the backset.
    "in the lock edge": (
        {"purpose": "bore", "face": "lock-edge", "x_mm": 22.225, "diameter_mm": 25.4, "depth_mm": BACKSET},
        ('7/8" from the inside face', "level with its centre", '1"', "-", '2 3/4"', "square"),
    ),
    # A pocket 11/16 x 13 3/4 x 1 3/4 in, its middle 9 3/8 in above; that it is in the edge says how far off it is.
    "pocket": (
        {
            "purpose": "pocket", "face": "lock-edge", "x_mm": 22.225, "diameter_mm": 0.0, "width_mm": 17.4625,
            "height_mm": 349.25, "depth_mm": 44.45, "from_cylinder_mm": (-BACKSET, 238.125),
        },
        ('7/8" from the inside face', '9 3/8" above', '11/16" × 13 3/4"', "-", '1 3/4"', "square"),
    ),
    "pocket below": (
        {
            "purpose": "pocket", "face": "lock-edge", "x_mm": 22.225, "diameter_mm": 0.0, "width_mm": 25.4,
            "height_mm": 50.8, "depth_mm": 12.7, "from_cylinder_mm": (-BACKSET, -254.0),
        },
        ('7/8" from the inside face', '10" below', '1" × 2"', "-", '1/2"', "square"),
    ),
    # Marked from the part itself: the numbers of the plate's middle would be drilled by mistake.
    "by template": (
        {"purpose": "fixing", "by_template": True, "diameter_mm": 1.984375, "depth_mm": 25.4, "count": 4},
        ("through the part as template", "-", '5/64"', "-", '1"', "square"),
    ),
    "bolts through the part": (
        {"purpose": "bolt", "by_template": True, "diameter_mm": 7.9375, "count": 2, "face": "key"},
        ("through the part as template", "-", '5/16"', "-", "through", "square"),
    ),
    "in the frame": (
        {"face": "frame", "purpose": "fixing", "depth_mm": 31.75, "from_cylinder_mm": None},
        ('2 3/4"', '40" above floor', '1/2"', "-", '1 1/4"', "square"),
    ),
    "in a wall": (
        {"face": "wall", "purpose": "function", "x_mm": 12.7, "from_cylinder_mm": (12.7, 0.0)},
        ('1/2" from the reader\'s centre', '40"', '1/2"', "-", "through", "square"),
    ),
}  # fmt: skip


@pytest.mark.parametrize("form", FORMS)
def test_a_hole_is_told_by_place_size_depth_and_direction(form):
    hole, expected = FORMS[form]
    line = line_of(**hole)
    assert {name: line[name] for name in SIZES} == dict(zip(SIZES, expected, strict=True))
    assert line["Face"] == hole.get("face", "inside")


@pytest.mark.parametrize("purpose", get_args(Purpose))
@pytest.mark.parametrize("face", ["inside", "key", "lock-edge", "frame", "wall"])
@pytest.mark.parametrize("depth_mm", [None, 6.35, 31.75])
def test_a_hole_of_any_purpose_on_any_face_has_its_line_and_its_depth(purpose, face, depth_mm):
    line = line_of(purpose=purpose, face=face, depth_mm=depth_mm)
    assert (line["No."], line["Hole"], line["Face"]) == (1, "hole", face)
    # From pocket to pocket the bit leans: it goes farther than they stand apart.
    on = " and on, until through" if (purpose, face) == ("channel", "lock-edge") and depth_mm is not None else ""
    assert line["Depth"] == {None: "through", 6.35: '1/4"', 31.75: '1 1/4"'}[depth_mm] + on


@pytest.mark.parametrize(
    ("style", "expected"),
    [
        ("fraction", ('2 3/4"', '2 1/8" above', '1/2"', '1/4"', '3/8"')),
        ("decimal-inch", ('2.75"', '2.125" above', '0.5"', '0.25"', '0.375"')),
        # 2.75, 2.125, 0.5, 0.25 and 0.375 in by 25.4, to 0.1 mm.
        ("mm", ("69.9 mm", "54 mm above", "12.7 mm", "6.4 mm", "9.5 mm")),
    ],
)
def test_sizes_are_written_as_the_project_writes_lengths(style, expected):
    line = line_of(style, from_cylinder_mm=(0.0, 53.975), pilot_mm=6.35, depth_mm=9.525)
    assert tuple(line[name] for name in SIZES[:5]) == expected


def test_several_alike_say_how_many_and_which_tool_and_jig():
    line = line_of(name="pilots", count=4, tool="twist-drill", jig="the plate as template", by_template=True)
    assert line["Hole"] == "pilots ×4"
    assert [line_of(name="bolts", count=count)["Hole"] for count in (1, 2)] == ["bolts", "bolts ×2"]
    assert line["Tool"] == "twist drill, the plate as template"
    assert line_of(tool="hole-saw")["Tool"] == "hole saw"
    assert line_of(jig="jig")["Tool"] == "jig"


def test_holes_stand_in_the_order_in_which_they_are_made():
    holes = tuple(replace(FIT.holes[0], name=f"hole {order}", order=order) for order in (3, 1, 2))
    document = packet_of(replace(FIT, holes=holes))
    assert [(line["No."], line["Hole"]) for line in lines(document, "Holes")] == [
        (1, "hole 1"), (2, "hole 2"), (3, "hole 3"),
    ]  # fmt: skip
    assert ticked(document, "Holes") == [True] * 3


def test_no_hole_is_said_so():
    assert "No hole is made." in texts(packet_of(replace(FIT, holes=())))


# --- what the fit says ----------------------------------------------------------------------------------------------


def test_the_lead_says_what_it_needs_what_it_has_and_what_is_left():
    cable = replace(FIT.cable, length_mm=203.2, available_mm=228.6)  # 8 in of a lead of 9 in
    assert facts(packet_of(replace(FIT, cable=cable)))["Lead"] == 'takes 8" of 9"'
    short = replace(cable, length_mm=241.3)
    assert facts(packet_of(replace(FIT, cable=short)))["Lead"] == 'takes 9 1/2" of 9"'


@pytest.mark.parametrize(
    ("turns", "said"), [(0, '1/4" proud of the trim'), (2, '1/4" proud of the trim, cam plane 2 turns beyond centre')]
)
def test_the_cylinder_head_says_how_far_it_stands_proud(turns, said):
    stack = replace(FIT.stack, projection_mm=6.35, turns=turns)
    assert facts(packet_of(replace(FIT, stack=stack)))["Cylinder head"] == said


def test_a_rim_cylinder_s_head_lies_on_the_trim(quay, of_mark):
    """What its stack calls projection is the trim under it: nothing stands proud."""
    assert facts(PACKET.build(quay, of_mark("RIM")))["Cylinder head"] == "lies on the trim"


@pytest.mark.parametrize(
    "mark", ["WOOD", "CHANNEL", "DOWN", "HOLLOW", "STILE", "RIM", "SMALL", "BORED", "POCKET", "GATE"]
)
def test_one_length_has_one_number_on_a_packet(quay, of_mark, mark):
    """Whichever drawing measures it: a person who compares two pages must not wonder which is drilled."""
    found = [
        entry
        for block in blocks(PACKET.build(quay, of_mark(mark)))
        if isinstance(block, Drawings)
        for drawing in block.drawings
        for entry in dimensions(drawing)
    ]
    assert len(found) > 5
    for text, long in found:
        assert {other for other, at in found if abs(at - long) < 0.02} == {text}, (text, long)


@pytest.mark.parametrize(
    ("face", "pattern", "source", "said"),
    [
        ("inside", "above", "fits", "on the inside, above"),
        ("key", "below", "fits", "on the key side, below"),
        ("edge", "in-edge", "fits", "in the lock edge"),
        ("wall", "beside", "fits", "on the wall, beside"),
        ("inside", "straight", "by-hand", "on the inside, straight (placed by hand)"),
    ],
)
def test_the_unit_says_where_it_stands_and_who_placed_it(face, pattern, source, said):
    where = replace(FIT.placement, face=face, pattern=pattern, source=source)
    assert facts(packet_of(replace(FIT, placement=where)))["Unit"] == said


# --- what lies in the box ---------------------------------------------------------------------------------------------

SCREW = Part("SC", "fastener", "Screw #6 x 1", unit="EA")
PACK = Part("PK", "fastener", "Pack of screws", unit="SET", kit=(("SC", 4.0),))
ROLL = Part("RL", "consumable", "Tape", unit="ROLL")


def box(quantity=1.0, **kits):
    """Return what the box holds when so many units go in; kits by number."""
    unit = replace(GIVEN.catalogue.parts["SU-W"], description="Unit", kit=kits.get("SU_W", ()))
    pack = replace(PACK, kit=kits.get("PK", PACK.kit))
    screw = replace(SCREW, kit=kits.get("SC", ()))
    parts = {**GIVEN.catalogue.parts, "SU-W": unit, "PK": pack, "SC": screw, "RL": ROLL}
    fit = replace(FIT, parts=(replace(fit_part("unit", "SU-W"), quantity=quantity, description="Unit"),))
    document = packet_of(fit, parts=parts)
    found = [(line["Qty"], line["Unit"], line["Part"], line["Description"]) for line in lines(document, "Box contents")]
    return found, ticked(document, "Box contents")


def test_a_part_without_a_kit_is_one_line():
    assert box() == ([(1, "EA", "SU-W", "Unit")], [True])


def test_the_contents_of_every_piece_are_counted():
    """3 units, in each 4 screws and half a roll of tape: 12 screws, 1 1/2 rolls. Only the unit itself is ticked off."""
    assert box(3, SU_W=(("SC", 4.0), ("RL", 0.5))) == (
        [
            (3, "EA", "SU-W", "Unit"),
            (12, "EA", "SC", "contains: Screw #6 x 1"),
            (1.5, "ROLL", "RL", "contains: Tape"),
        ],
        [True, False, False],
    )


def test_a_box_in_a_box_is_opened_too():
    """Each unit holds 2 packs of 4 screws: 8 screws a unit, and 24 in three."""
    for units, packs, screws in ((1, 2, 8), (3, 6, 24)):
        found, _ = box(units, SU_W=(("PK", 2.0),))
        assert found == [
            (units, "EA", "SU-W", "Unit"),
            (packs, "SET", "PK", "contains: Pack of screws"),
            (screws, "EA", "SC", "contains: Screw #6 x 1, inside PK"),
        ]


def test_contents_that_the_catalogue_does_not_know_are_named_by_number():
    assert box(2, SU_W=(("LOST", 3.0),))[0][1] == (6, "", "LOST", "contains: LOST")


def test_kits_that_hold_one_another_end():
    found, _ = box(1, SU_W=(("PK", 1.0),), SC=(("PK", 1.0),))
    assert [line[2] for line in found] == ["SU-W", "PK", "SC", "PK"]


def test_tools_are_listed_apart_from_the_box():
    held = Part("BIT", "tool", "Spade bit 1/2 in", attributes={"form": "spade-bit", "diameter_mm": 12.7})
    parts = {**GIVEN.catalogue.parts, "BIT": held}
    tool = replace(fit_part("unit", "SU-W"), role="tool", part="BIT", kind="tool", description="Spade bit 1/2 in")
    hole = replace(FIT.holes[0], tool="step-drill")
    document = packet_of(replace(FIT, parts=(*FIT.parts, tool), holes=(hole,)), parts=parts)
    assert "BIT" not in [line["Part"] for line in lines(document, "Box contents")]
    (said,) = [line for line in texts(document) if line.startswith("Tools: ")]
    assert "Spade bit 1/2 in (BIT); " in said
    # Wanted by a hole, and not in the catalogue.
    assert '; step drill 3/8"' in said
    # Kinds of tools that no catalogue sells.
    for kind in ("voltmeter", "pull wire", "adhesive tape", "screwdrivers", "vacuum with a narrow nozzle"):
        assert kind in said


def test_what_is_read_at_the_door_is_no_smaller_than_eleven_points(quay, of_mark, tmp_path):
    """Letters of drawings may be 9 pt; numbers that are drilled are 14."""
    document = PACKET.build(quay, of_mark("CHANNEL"))
    bare = replace(
        document,
        sections=tuple(
            replace(section, blocks=tuple(b for b in section.blocks if not isinstance(b, Drawings)))
            for section in document.sections
        ),
    )
    for each, least in ((document, 9.0), (bare, 11.0)):
        render_pdf(each, tmp_path / "packet.pdf")
        assert min(sizes(tmp_path / "packet.pdf")) >= least
    drilled = " ".join(text for text, size in written(tmp_path / "packet.pdf") if size == 14.0)
    # Place, height, diameter, pilot and depth of the lead's hole; the pilot of a screw.
    for number in ('2 3/4"', '2 1/2"', '49/64"', '3/8"', '5/64"'):
        assert number in drilled


# --- from the survey to the page --------------------------------------------------------------------------------------

LEAD = "access hole for the lead"
CHANNEL = "channel for the lead into the lock's pocket"
PILOTS = "pilots for the unit's screws #6, through its plate ×4"
BY_PART = ("through the part as template", "-")
# Lead's hole in wood 1/2 in with pilot 1/4 in; #6 pilot in wood 5/64 in; a #6 x 1 screw goes 1 in deep (practice).
WOOD_PILOTS = (PILOTS, "inside", *BY_PART, '5/64"', "-", '1"', "square")
# Before a case of 1 in a leaf of 1 3/4 there are 3/8 in: the longest screw that ends there is 3/8 in.
SHORT_PILOTS = (PILOTS, "inside", *BY_PART, '5/64"', "-", '3/8"', "square")
# Pilot of a #6 in sheet metal: No. 32, 0.116 in, no 7/64; the bit is stopped 1/4 in deep, behind the sheet (practice).
SHEET_PILOTS = (PILOTS, "inside", *BY_PART, "No. 32", "-", '1/4"', "square")
# In aluminium 7/64 (practice).
STILE_PILOTS = (PILOTS, "inside", *BY_PART, '7/64"', "-", '1/4"', "square")
# The slanted hole of a bored lock (practice: 45 degrees up, 15 within 2 to the edge). Across: the leaf by tan 13 =
# 1 3/4 x 0.23087 = 0.4040 = 13/32 toward the edge, so 2 3/4 - 13/32 = 2 11/32 from it. It meets the cross bore 26.82 mm
# above its centre (half of 2 1/8 in, a sliver 3 mm off its middle). To lean at most 17 degrees it must be
# 10.262 / tan 17 = 33.57 above that: 60.39 mm = 2 3/8 above the centre; trim of BORED 80 mm, 3/16 clear and
# UNIT's window from 15 mm would let it be 59.76. 33.57 down and as far in, 10.26 across: 48.57 mm = 1 29/32 long.
SLANTED = (
    "lead's hole into the cross bore", "inside", '2 11/32"', '2 3/8" above, 13/32" toward edge', '3/8"', "-",
    '1 29/32"', "45° down, 17° toward the hinge edge",
)  # fmt: skip
# Bolts of a bored lever lock: 5/16 in, through, its jig is the template (practice).
BORED_BOLTS = ("through-bolt holes, square through ×2", "key", *BY_PART, '5/16"', "-", "through", "square")
SURVEYED = {
    # Nothing in the way. B/S 2 3/4. Case 1 of 1 3/4 thick: (1 3/4 - 1) / 2 = 3/8 to the case.
    "WOOD": [(LEAD, "inside", '2 3/4"', "at its centre", '1/2"', '1/4"', '3/8"', "square"), SHORT_PILOTS],
    # The same cells in millimetres: 69.85, 1016, 44.45.
    "METRIC": [(LEAD, "inside", '2 3/4"', "at its centre", '1/2"', '1/4"', '3/8"', "square"), SHORT_PILOTS],
    # Practice: hole 2 1/2 above the cylinder, square 3/8; then 3/8 in at 10 degrees to the face, down to the top of
    # the case 1 3/4 above, with the same bit: (2 1/2 - 1 3/4) / cos 10 = 0.7616 = 49/64. The plate begins 1 9/16
    # above, its lower screws 6 mm higher, 1.24 mm above the case's top: less than half of a #6, so they end before it.
    "CHANNEL": [
        (LEAD, "inside", '2 3/4"', '2 1/2" above', '3/8"', "-", '3/8"', "square"),
        (
            CHANNEL, "inside", '2 3/4"', '2 1/2" above', '3/8"', "-", '49/64", begins 3/8" below the face',
            "80° down, 10° to the leaf's face",
        ),
        SHORT_PILOTS,
    ],
    # The turn ends at 39 3/8 - 3/4 = 38 5/8, 1 3/8 below the cylinder; 3/16 clear, then the plate of LOW, 160 mm down
    # to 199.69 mm below. Its window reaches 120 mm up from there: the hole is 79.69 mm = 3 9/64 below, and of the plate
    # 120 mm are left for a slot of 81.4. The case, 3 1/2 high and 1 3/4 above, ends 1 3/4 below: (79.69 - 44.45) / cos
    # 10 = 35.78 = 1 13/32, this time upward. Its upper screws stand as near to the case as those of CHANNEL.
    "DOWN": [
        (LEAD, "inside", '2 3/4"', '3 9/64" below', '3/8"', "-", '3/8"', "square"),
        (
            CHANNEL, "inside", '2 3/4"', '3 9/64" below', '3/8"', "-", '1 13/32", begins 3/8" below the face',
            "80° up, 10° to the leaf's face",
        ),
        SHORT_PILOTS,
    ],
    # Inside hollow metal, past the case: its top 1 3/4 above + half of the 1/2 hole + 1/8 between = 2 1/8 above.
    # Pilot 1/8, the bit stopped at 1/4 (practice).
    "HOLLOW": [(LEAD, "inside", '2 3/4"', '2 1/8" above', '1/2"', '1/8"', '1/4"', "square"), SHEET_PILOTS],
    # B/S 1 1/8. Practice for an aluminium stile: 3/4 hole, 1/16 pilot, 1 3/8 above the top of the 1 1/4 cylinder hole:
    # 5/8 + 1 3/8 = 2 above. Pilots for #6 there 7/64.
    "STILE": [(LEAD, "inside", '1 1/8"', '2" above', '3/4"', '1/16"', '1/4"', "square"), STILE_PILOTS],
    # The case on the face ends 1 1/2 above, 3/16 clear, the window starts 15 mm up: 57.86 mm = 2 9/32 above.
    "RIM": [(LEAD, "inside", '2 3/4"', '2 9/32" above', '1/2"', '1/8"', '1/4"', "square"), SHEET_PILOTS],
    # Cross bore 2 where BORED wants 2 1/8; edge bore 7/8 where it wants 1, in the middle of 1 3/4, as deep as the
    # backset. The jig for the lead stands on the bolts' holes: they come before it (practice).
    "SMALL": [
        ("cross bore", "key", '2 3/4"', "at its centre", '2 1/8", enlarges 2"', "-", "through", "square"),
        (
            "edge bore", "lock-edge", '7/8" from the inside face', "level with its centre", '1", enlarges 7/8"', "-",
            '2 3/4"', "square",
        ),
        BORED_BOLTS,
        SLANTED,
        WOOD_PILOTS,
    ],
    # Both bores as they should be.
    "BORED": [BORED_BOLTS, SLANTED, WOOD_PILOTS],
    # EDGE: pocket 349.25 x 17.4625 x 44.45 mm = 13 3/4 x 11/16 x 1 3/4. The case ends 1 3/4 above, 3/4 of bridge (limit
    # of the rule), so the pocket's middle is 1 3/4 + 3/4 + 13 3/4 / 2 = 9 3/8 above. Bridge hole 3/8 (practice).
    # The case ends 1 3/4 above the cylinder, a front of 8 in 1 in farther (common practice): 2 3/4, and half of 13 3/4.
    "POCKET": [
        (
            "pocket for the unit", "lock-edge", '7/8" from the inside face', '9 5/8" above', '11/16" × 13 3/4"', "-",
            '1 3/4"', "square",
        ),
        (
            # Nothing marks it but the pocket, and no drill stands square in there.
            "hole through the bridge for the lead, from pocket to pocket", "lock-edge",
            "-", "-", '3/8"', "-", '1" and on, until through', "from the pocket's end, leaning",
        ),
        (PILOTS, "lock-edge", *BY_PART, '5/64"', "-", '1"', "square"),
    ],
    # B/S 2 1/2. Behind the case 3/4 (practice). GATE is 150 mm high: 75 above; 3/16 clear, SEALED's window from 15 mm:
    # 94.76 mm = 3 47/64 above. M8 bolts: 9 mm (ISO 273) = 23/64, 4 of them.
    "GATE": [
        (
            "hole for the lead behind the lock's case", "key", '2 1/2"', "at its centre", '3/4"', '1/8"', '1/4"',
            "square",
        ),
        (LEAD, "inside", '2 1/2"', '3 47/64" above', '1/2"', '1/8"', '1/4"', "square"),
        (
            "holes for the lock's bolts M8, through its case ×4", "key", *BY_PART, '23/64"', "-", "through", "square",
        ),
        SHEET_PILOTS,
    ],
    # READ wants a hole of 28 mm = 1 7/64, through the wall.
    "LIFT": [
        (
            "hole for the reader and its lead", "wall", "at its centre", '40"', '1 7/64"', "-", "through",
            "square",
        )
    ],
    # B/S 1 1/4. Thread of CAB 19.05 mm = 3/4. In a door 3/4 thick the unit is held by screws #6 x 1/2.
    "CABINET": [
        ("hole for the cabinet bolt", "key", '1 1/4"', "at its centre", '3/4"', "-", "through", "square"),
        (PILOTS, "inside", *BY_PART, '5/64"', "-", '1/2"', "square"),
    ],
}  # fmt: skip


@pytest.mark.parametrize("mark", SURVEYED)
def test_holes_from_the_survey(quay, of_mark, mark):
    across = "Across" if mark == "LIFT" else SIZES[0]
    sizes_of = (across, NO_CYLINDER.get(mark, SIZES[1]), *SIZES[2:])
    found = [
        tuple(line[name] for name in ("Hole", "Face", *sizes_of))
        for line in lines(PACKET.build(quay, of_mark(mark)), "Holes")
    ]
    assert found == SURVEYED[mark]


FACTS = {
    # Size 3-0 x 7-0, thickness 1 3/4, B/S 2 3/4, Cyl AFF 40. CYL 1 in long on half of 1 3/4: 1/8 proud.
    # Lead: 7/8 to the face + 20 mm up to the connector - 4.29 for the bend + 60 of slack = 97.93 mm = 3 55/64 of 9.
    # Battery: 2500 mAh by 80 % over 6.44 a day and 3 % a year: 300.96 days, of which 300 are whole.
    "WOOD": {
        "Form and hand": "Single door, LH", "Leaf size": "3'-0\" × 7'-0\"", "Leaf thickness": '1 3/4"',
        "Backset": '2 3/4"', "Cylinder above floor": '40"', "Cylinder head": '1/8" proud of the trim',
        "Lead": 'takes 3 55/64" of 9"', "Unit": "on the inside, straight",
        "Battery": "6 × AA, about 300 days as surveyed", "Location": "Corridor to Net loft",
        "Existing lock": "Mortise, threaded cylinder", "Leaf": "Wood, solid core, Flush", "Fire rating": "Not rated",
    },
    # Nobody has said what the unit does without power; a cylinder outside changes nothing inside (common practice).
    "SMALL": {"Without power": "inside as before, key side unknown: needs its maker's word"},
    "METRIC": {"Leaf thickness": '1 3/4"', "Backset": '2 3/4"', "Cylinder above floor": '40"'},
    # Tailpiece of 3 in; 1 3/4 - 1 + 3/8 = 1 1/8 are needed; notches of 1/8: 15 of them, 1 7/8, come off.
    "RIM": {"Break off the tailpiece": '1 7/8"', "Leaf": "Hollow metal, Flush"},
    "HOLLOW": {"Form and hand": "Single door, RH", "Unit": "on the inside, above"},
    "DOWN": {"Unit": "on the inside, below"},
    "POCKET": {"Unit": "in the lock edge"},
    "GATE": {"Leaf size": "3'-6\" × 4'-0\"", "Leaf thickness": '2"', "Backset": '2 1/2"', "Frame": "No frame"},
    # A reader on a wall has no hand, backset or function, and is not said to lack them.
    "LIFT": {"Unit": "on the wall, beside", "Form": "Reader at a lift", "Form and hand": None, "Backset": None},
    "CABINET": {"Leaf size": "1'-6\" × 2'-6\"", "Leaf thickness": '3/4"', "Backset": '1 1/4"'},
}  # fmt: skip


@pytest.mark.parametrize("mark", FACTS)
def test_facts_from_the_survey(quay, of_mark, mark):
    found = facts(PACKET.build(quay, of_mark(mark)))
    assert {label: found.get(label) for label in FACTS[mark]} == FACTS[mark]


def test_remarks_of_the_survey_stand_on_the_packet(quay, of_mark):
    wood = of_mark("WOOD")
    told = replace(wood.given, opening=replace(wood.given.opening, notes="Ask at the desk"))
    noted = replace(wood, given=told, points=(PointFit(told, wood.fit),))
    assert facts(PACKET.build(quay, noted))["Remarks"] == "Ask at the desk"
    assert "Remarks" not in facts(PACKET.build(quay, wood))


def test_what_a_saw_leaves_standing_in_a_hole_that_ends_in_the_leaf_is_levered_out(quay):
    sawn = 0
    for view in quay.openings:
        if view.fit is None or view.fit.status != "fits":
            continue
        wooden = view.lock_leaf is not None and view.lock_leaf.material in ("wood", "mineral-core", "composite")
        blind = [h for h in view.fit.holes if h.tool == "hole-saw" and h.depth_mm is not None and h.purpose == "cable"]
        said = "\n".join(texts(PACKET.build(quay, view)))
        assert ("Lever the core out" in said) is (wooden and bool(blind)), view.mark
        sawn += bool(blind)
    assert sawn


# What the large drawing of the inside measures: holes and the plate's lower edge from the cylinder's centre, the
# plate's left edge and the holes from the lock edge. Connector of UNIT 40 mm from its left edge, of NARROW 20.
MEASURED = {
    # Window of UNIT up to 60 mm = 2 23/64: so far down the plate reaches. 2 3/4 in - 40 mm = 29.85 mm = 1 11/64.
    "WOOD": ['2 23/64"', '1 11/64"', '2 3/4"'],
    # Over the turn: 5/8 + 3/4 + 3/16 clear = 1 9/16.
    "CHANNEL": ['1 9/16"', '2 1/2"', '1 11/64"', '2 3/4"'],
    # Under it, the same below.
    "DOWN": ['1 9/16"', '3 9/64"', '1 11/64"', '2 3/4"'],
    # 1/2 + 5/8 + 3/16 = 1 5/16.
    "HOLLOW": ['1 5/16"', '2 1/8"', '1 11/64"', '2 3/4"'],
    # Plate 3/4 over the top of the old hole (practice): 5/8 + 3/4; 1 1/8 in - 20 mm = 8.575 mm = 11/32.
    "STILE": ['1 3/8"', '2"', '11/32"', '1 1/8"'],
    # Over the case: 1 1/2 + 3/16.
    "RIM": ['1 11/16"', '2 9/32"', '1 11/64"', '2 3/4"'],
    # Trim of 40 mm + 3/16 = 1 49/64; the hole is 2 11/32 from the edge, the plate 40 mm less: 19.59 mm = 49/64.
    "SMALL": ['1 49/64"', '2 3/8"', '49/64"', '2 11/32"', '2 3/4"'],
    # 75 mm + 3/16 = 3 9/64; the plate of 80 mm ends with the stile of 4 in: 21.6 mm = 27/32.
    "GATE": ['3 9/64"', '3 47/64"', '27/32"', '2 1/2"'],
    # Nut of the bolt 3/4 + 3/16 = 15/16; no nearer to the edge than 1/8 (limit of the rule).
    "CABINET": ['15/16"', '1/8"', '1 1/4"'],
}


@pytest.mark.parametrize("mark", MEASURED)
def test_the_drawing_measures_what_is_drilled(quay, of_mark, mark):
    (detail,) = [
        drawing
        for block in blocks(PACKET.build(quay, of_mark(mark)))
        if isinstance(block, Drawings)
        for drawing in block.drawings
        if drawing.title == "Lock and unit, inside"
    ]
    assert [text for text, _ in dimensions(detail)] == MEASURED[mark]


BOXES = {
    # One cylinder with cam and collar; the unit with 2 packs of 4 screws and half a roll each, and a roll of tape;
    # 6 cells AA in series, a coin cell; 4 screws #6; drops of a bottle; a sleeve in wood; one key.
    "WOOD": [
        (1, "EA", "CYL"), (1, "EA", "CAM"), (1, "EA", "COL"), (1, "EA", "UNIT"), (2, "SET", "PACK"), (8, "EA", "SPARE"),
        (1, "ROLL", "TAPE"), (1, "ROLL", "TAPE"), (6, "EA", "CELL"), (1, "EA", "COIN"), (4, "EA", "SCREW"),
        ("-", "", "LOCKER"), (1, "EA", "SLEEVE"), (1, "EA", "KEY"),
    ],
    # Outside: gasket, a bead of a cartridge; a grommet for each of two holes in sheet; 4 bolts and 4 screws for tube;
    # an extension.
    "GATE": [
        (1, "EA", "GATE"), (1, "EA", "SEALED"), (1, "EA", "EXT"), (6, "EA", "CELL"), (1, "EA", "COIN"),
        (1, "EA", "GASKET"), (4, "EA", "BOLT"), (4, "EA", "TUBE"), (1, "EA", "GROMMET"),
        (1, "EA", "GROMMET34"), ("-", "", "SEAL"), (1, "EA", "KEY"),
    ],
}  # fmt: skip


@pytest.mark.parametrize("mark", BOXES)
def test_the_box_from_the_survey(quay, of_mark, mark):
    found = lines(PACKET.build(quay, of_mark(mark)), "Box contents")
    assert [(line["Qty"], line["Unit"], line["Part"]) for line in found] == BOXES[mark]


def test_what_was_not_measured_is_asked_for_and_nothing_may_be_drilled(quay, of_mark):
    document = PACKET.build(quay, of_mark("UNSEEN"))
    said = texts(document)
    assert any("DO NOT INSTALL" in line and "Leaf thickness" in line for line in said)
    assert facts(document)["Leaf thickness"] == "unknown"
    with pytest.raises(ValueError, match="not enough values"):
        lines(document, "Holes")


def test_what_is_missing_and_who_decides_is_said_once(quay, of_mark):
    needs = ("opening.egress_toward",)
    asked = [
        Finding(
            rule, "egress", "warning", unknown(needs).message, "made up", f"{unknown(needs).cure} {DEFERS}", needs=needs
        )
        for rule in ("egress-direction", "free-inside")
    ]
    more = Finding("made-up", "egress", "warning", "Two motions open it.", "made up", f"Take one out. {DEFERS}")
    document = PACKET.build(quay, replace(of_mark("WOOD"), findings=(*asked, more, more)))
    (said,) = [each.items for each in blocks(document) if isinstance(each, Bullets)]
    assert said == (
        "Warning: Unknown: needs opening: Direction of egress.",
        "Warning: Two motions open it. Take one out.",
    )
    assert sum("planning note" in line for line in texts(document)) == 1


@pytest.mark.parametrize("mark", ["CHANNEL", "SMALL", "POCKET"])
def test_the_printed_page_says_the_same(quay, of_mark, tmp_path, mark):
    render_pdf(PACKET.build(quay, of_mark(mark)), tmp_path / "packet.pdf")
    page = " ".join(" ".join(page.extract_text() for page in PdfReader(tmp_path / "packet.pdf").pages).split())
    squeezed = page.replace(" ", "")
    for hole in SURVEYED[mark]:
        for cell in hole:
            # A cell that is broken into lines may be told in pieces of other cells; each word of it stands there.
            assert all(word in squeezed for word in cell.replace(",", " ").split()), cell
    if mark == "CHANNEL":
        assert "SPARE" in page
        assert "DO NOT INSTALL" not in page


def test_a_pack_is_spent_where_its_unit_stops(quay, of_mark):
    """Six cells of 1.5 V that still give 8.4 V are no bad pack to a unit that works down to 5.4 V."""
    low = replace(
        quay.catalogue.parts["UNIT"], attributes={**quay.catalogue.parts["UNIT"].attributes, "pack_low_v": 5.4}
    )
    assert "Under 5.4 V in operation" in spent_words(low)
    assert "8.5" not in spent_words(low)
    # The catalogue of these openings does not say it: the sheet says what is missing, and no figure of its own.
    shown = "\n".join(texts(PACKET.build(quay, of_mark("WOOD"))))
    assert "needs part UNIT, the lowest pack voltage" in shown
    assert "8.5 V" not in shown


# --- what is there, and what is left of the lead ----------------------------------------------------------------------


def items_said(document):
    (found,) = [text for text in texts(document) if text.startswith(("Is replaced: ", "Stays: "))]
    return found


@pytest.mark.parametrize(
    ("mark", "said"),
    [
        # Mortise: a new cylinder goes into the case that is there.
        ("WOOD", "Is replaced: cylinder. Stays: the lock's case."),
        # Its thumb turn is surveyed as kept.
        ("CHANNEL", "Is replaced: cylinder. Stays: the lock's case, thumb turn."),
        ("DOWN", "Is replaced: cylinder. Stays: the lock's case, thumb turn, push plate."),
        # A bored lock is another one, whole.
        ("BORED", "Is replaced: the lock."),
    ],
)
def test_what_stays_and_what_is_replaced_is_listed(quay, of_mark, mark, said):
    assert items_said(PACKET.build(quay, of_mark(mark))) == said


@pytest.mark.parametrize(
    ("disposition", "said"),
    [
        ("remove", "Goes away: push plate."),
        ("move", "Is moved: push plate."),
        ("replace", "Is replaced: push plate."),
        (None, "Not decided whether it stays: push plate."),
    ],
)  # fmt: skip
def test_what_becomes_of_an_item_is_said_and_so_is_that_nobody_decided_it(quay, of_mark, disposition, said):
    view = of_mark("POCKET")
    items = tuple(
        replace(item, disposition=disposition) if item.kind == "push-plate" else item for item in view.given.items
    )
    given = replace(view.given, items=items)
    found = PACKET.build(quay, replace(view, given=given, points=(PointFit(given, view.fit),)))
    assert said in items_said(found).replace("cylinder, ", "")


def test_of_a_lock_that_is_to_be_converted_the_case_stays_whatever_the_surveys_word(quay, of_mark):
    """Replace is how a survey says that a lock is converted: its steps put the case back, and the drawing says so."""
    view = of_mark("CHANNEL")
    items = tuple(
        replace(item, disposition="replace") if item.lock_form == "mortise" else item for item in view.given.items
    )
    given = replace(view.given, items=items)
    found = PACKET.build(quay, replace(view, given=given, points=(PointFit(given, view.fit),)))
    assert items_said(found) == "Is replaced: cylinder. Stays: the lock's case, thumb turn."


def spare_of(lead_mm, needed_mm, **facts_of_fit):
    """Return the steps and callouts of a packet whose lead is that much longer than its way."""
    cable = replace(FIT.cable, available_mm=lead_mm, length_mm=needed_mm)
    made = packet_of(replace(FIT, cable=cable, **facts_of_fit))
    callouts = [
        shape.text for block in blocks(made) if isinstance(block, Drawings)
        for drawing in block.drawings for shape in drawing.shapes if isinstance(shape, Callout)
    ]  # fmt: skip
    return texts(made), callouts


def test_where_the_spare_lead_lies_is_said_in_a_step_and_on_the_drawing():
    """9 in of lead on a way of 8: one inch lies in the unit."""
    said, callouts = spare_of(228.6, 203.2)
    assert any(text.startswith("Lay the lead's spare 1\" flat in the unit, under no edge.") for text in said)
    assert callouts.count('Spare lead 1": in the unit') == 1


def test_a_lead_that_is_used_up_leaves_nothing_to_be_laid():
    said, callouts = spare_of(203.2, 203.2)
    assert any(text.startswith("Lay the slack of the lead inside, under no edge.") for text in said)
    assert not any("Spare lead" in text for text in callouts)


def test_beside_a_unit_in_the_edge_it_lies_in_the_pocket(quay, of_mark):
    document = PACKET.build(quay, of_mark("POCKET"))
    cable = of_mark("POCKET").fit.cable
    assert cable.available_mm - cable.length_mm > 3.0
    callouts = [
        shape.text for block in blocks(document) if isinstance(block, Drawings)
        for drawing in block.drawings for shape in drawing.shapes if isinstance(shape, Callout)
    ]  # fmt: skip
    assert sum(text.startswith("Spare lead ") and text.endswith(": in the pocket") for text in callouts) == 1
    assert any("to spare, beside it in the pocket" in text for text in texts(document))


def test_a_missing_fact_of_an_item_names_the_items_that_lack_it(quay, of_mark):
    """Nobody measured where the lite is; the closer was. What is missing of the leaf is named as it is."""
    wood = of_mark("WOOD")
    items = (Item("i1", kind="lite", height_mm=1.0), Item("i2", kind="closer", x_mm=1.0, height_mm=1.0))
    needs = (
        Need("existing_item.x_mm", "existing item: From lock edge", "placement"),
        Need("existing_item.height_mm", "existing item: Height", "placement"),
        Need("leaf.width_mm", "leaf: Leaf width", "holes"),
        Need("leaf.height_mm", "leaf: Leaf height", "holes"),
    )
    given = replace(wood.given, items=items)
    fit = Fit("to-measure", needs=needs)
    view = replace(wood, given=given, fit=fit, points=(PointFit(given, fit),))
    (stop,) = [block.text for block in blocks(PACKET.build(quay, view)) if getattr(block, "style", "") == "stop"]
    # Whose kind lacks nothing keeps the survey's words; what hangs on several facts is said once behind them.
    assert stop == (
        "DO NOT INSTALL. Unknown: needs lite or vision panel: From lock edge; existing item: Height (placement); "
        "needs leaf: Leaf width, Leaf height (holes)."
    )


def test_why_nothing_fits_is_said_by_the_first_three_refusals_of_each_lock_point_that_does_not(quay, of_mark):
    wood = of_mark("WOOD")
    refused = tuple(Refusal(f"P{n}", "unit", "plate-within-leaf", f"short by {n} mm") for n in range(4))
    fit = Fit("does-not-fit", refused=refused)
    for name, where in (("", ""), ("latch", "latch, ")):
        given = replace(wood.given, point=replace(wood.given.point, name=name))
        view = replace(wood, given=given, fit=fit, points=(PointFit(given, fit),))
        (stop,) = [block.text for block in blocks(PACKET.build(quay, view)) if getattr(block, "style", "") == "stop"]
        told = "; ".join(f"{where}P{n}: short by {n} mm" for n in range(3))
        assert stop == f"DO NOT INSTALL. No combination of parts fits. {told}"
    # What was refused at a lock point that fits all the same says nothing of why the other does not.
    points = tuple(
        PointFit(replace(wood.given, point=replace(wood.given.point, name=name)), its)
        for name, its in (("latch", replace(wood.fit, refused=refused)), ("bolt", replace(fit, refused=refused[:1])))
    )
    view = replace(wood, given=points[0].given, fit=fit, points=points)
    (stop,) = [block.text for block in blocks(PACKET.build(quay, view)) if getattr(block, "style", "") == "stop"]
    assert stop == "DO NOT INSTALL. No combination of parts fits. bolt, P0: short by 0 mm"


def test_what_the_rules_say_is_printed_with_who_waived_it_and_without_notes(quay, of_mark):
    made = Finding("made-up", "holes", "warning", "It says so.", "common practice", "Do so.")
    findings = (made, replace(made, message="So too.", waived=True, waived_by="Ann"), replace(made, severity="note"))
    said = texts(PACKET.build(quay, replace(of_mark("WOOD"), findings=findings)))
    assert [text for text in said if "Do so." in text] == [
        "Warning: It says so. Do so.", "Warning (waived by Ann): So too. Do so.",
    ]  # fmt: skip


def test_a_photo_is_as_high_as_there_is_room_and_never_too_low_to_see_a_door(quay, of_mark):
    """A hand's breadth of 48 mm first, then 32 and 22; where none has room it says where the photo is."""
    wood = replace(of_mark("WOOD"), photo=Photo("front.jpg", b"a picture"))
    pictures = [block for block in blocks(PACKET.build(quay, wood)) if isinstance(block, Picture)]
    first = pictures[: len(pictures) // 2]
    assert pictures == first * 2  # beside the section, and again where the sheets end
    assert [each.height_mm for each in first] == [48.0, 32.0, 22.0, 0.0]
    assert all(each.spare for each in first)
    assert first[-1].content == b""
    assert "front.jpg" in first[-1].caption
    assert not [block for block in blocks(PACKET.build(quay, of_mark("WOOD"))) if isinstance(block, Picture)]
