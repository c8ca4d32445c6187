"""Openings for the drawing tests: one of each kind that has to be drawn, all invented."""

from dataclasses import replace

from hwsched.values import (
    CablePath,
    Catalogue,
    Fit,
    FitPart,
    Hole,
    Item,
    Leaf,
    Opening,
    OpeningInput,
    Part,
    Placement,
    Stack,
)

INCH = 25.4

PARTS = {
    part.number: part
    for part in (
        Part(
            "TC-125",
            "mortise-cylinder",
            attributes={
                "length_mm": 31.75,
                "cam_offset_mm": 0.0,
                "thread_pitch_mm": 0.79375,
                "thread_diameter_mm": 29.2,
                "head_diameter_mm": 34.0,
            },
        ),
        Part(
            "RC-10",
            "rim-cylinder",
            attributes={
                "body_length_mm": 30.0,
                "body_diameter_mm": 30.0,
                "head_diameter_mm": 34.0,
                "tail_length_mm": 70.0,
            },
        ),
        Part("EC-3040", "euro-cylinder", attributes={"key_half_mm": 40.0, "inside_half_mm": 30.0}),
        Part("BL-234", "bored-lever-lock", attributes={"cross_bore_mm": 53.975, "trim_diameter_mm": 88.0}),
        Part("CB-18", "cabinet-lock", attributes={"thread_diameter_mm": 18.0}),
        Part("FR-22", "fixed-reader", attributes={"face_width_mm": 60.0, "face_height_mm": 90.0, "hole_mm": 22.0}),
        Part("SU-W", "surface-unit", attributes={"depth_mm": 32.0}),
        Part("SU-N", "surface-unit", attributes={"depth_mm": 28.0}),
        Part("EU-1", "edge-unit", attributes={"pocket_depth_mm": 46.0, "pocket_length_mm": 350.0}),
    )
}
CATALOGUE = Catalogue(PARTS, "test")


def fit_part(role, number):
    return FitPart(role, number, PARTS[number].kind, 1, "for the test")


LOCK = Item(
    "i1",
    kind="lock",
    face="both",
    disposition="keep",
    lock_form="mortise",
    backset_mm=2.75 * INCH,
    cylinder_height_mm=41 * INCH,
    case_height_mm=152.4,
    case_depth_mm=105.0,
    case_width_mm=25.4,
    case_above_mm=44.45,
    trim_key_mm=3.0,
    trim_inside_mm=3.0,
    leaf="single",
)
ITEMS = (
    LOCK,
    Item("i2", kind="lever", face="both", x_mm=100.0, y_mm=960.0, width_mm=130.0, height_mm=55.0, projection_mm=60.0,
         disposition="keep", leaf="single"),
    Item("i3", kind="closer", face="key", x_mm=760.0, y_mm=2060.0, width_mm=260.0, height_mm=65.0, projection_mm=60.0,
         disposition="keep", leaf="single"),
    Item("i4", kind="lite", face="both", x_mm=230.0, y_mm=1500.0, width_mm=127.0, height_mm=700.0, disposition="keep",
         leaf="single"),
    Item("i5", kind="kick-plate", face="key", x_mm=457.0, y_mm=150.0, width_mm=880.0, height_mm=254.0,
         disposition="keep", leaf="single"),
    Item("i6", kind="deadbolt", face="both", x_mm=70.0, y_mm=1300.0, width_mm=65.0, height_mm=65.0,
         disposition="remove", leaf="single"),
    Item("i7", kind="thumb-turn", face="inside", x_mm=69.85, y_mm=1041.4, width_mm=40.0, height_mm=40.0,
         disposition="replace", leaf="single"),
)  # fmt: skip
OPENING = Opening("o1", "101-A", form="single", hand="LH", rating="none", frame_material="hollow-metal",
                  frame_stop_mm=15.875)  # fmt: skip
LEAF = Leaf("l1", "single", 36 * INCH, 84 * INCH, 1.75 * INCH, "wood", "flush", undercut_mm=12.0)
GIVEN = OpeningInput(OPENING, (LEAF,), ITEMS, CATALOGUE)
FIT = Fit(
    "fits",
    (fit_part("cylinder", "TC-125"), fit_part("unit", "SU-W")),
    stack=Stack("threaded", 6.35, 0.35, 0, ("BR-2",)),
    placement=Placement("single", "inside", "above", 40.0, 1120.0, 90.0, 180.0, 69.85, 1104.9),
    cable=CablePath(((69.85, 1041.4, 22.2), (69.85, 1104.9, 22.2), (69.85, 1104.9, 0.0), (85.0, 1200.0, -10.0)),
                    210.0, 229.0, 40.0),
    holes=(
        Hole("cable hole", "single", "inside", 69.85, 1104.9, 9.525, 6.35, 22.2, -10.0, 0.0, (0.0, 63.5), order=1),
        Hole("cylinder hole", "single", "key", 69.85, 1041.4, 31.75, None, None, order=2, purpose="function"),
        Hole("plate screws", "single", "inside", 85.0, 1210.0, 2.0, depth_mm=20.0, order=3, count=4, purpose="fixing",
             by_template=True),
    ),
)  # fmt: skip


def opening(**changes):
    return replace(GIVEN, opening=replace(OPENING, **changes))


def pair(hand="RHR"):
    leaves = (replace(LEAF, position="active"), replace(LEAF, id="l2", position="inactive"))
    items = tuple(replace(item, leaf="active") for item in ITEMS)
    return replace(opening(form="pair", hand=hand), leaves=leaves, items=(
        *items, Item("i9", kind="flush-bolt", leaf="inactive", face="inside", x_mm=25.0, y_mm=300.0, width_mm=25.0,
                     height_mm=200.0, disposition="keep"),
    ))  # fmt: skip


def pair_fit():
    return replace(FIT, placement=replace(FIT.placement, leaf="active"),
                   holes=tuple(replace(hole, leaf="active") for hole in FIT.holes))  # fmt: skip


def bored():
    lock = replace(LOCK, lock_form="bored", cross_bore_mm=53.975, edge_bore_mm=25.4, case_height_mm=None,
                   cylinder_height_mm=965.2)  # fmt: skip
    fit = replace(
        FIT,
        parts=(fit_part("lock", "BL-234"), fit_part("unit", "SU-W")),
        stack=None,
        placement=replace(FIT.placement, y_mm=1050.0, hole_x_mm=80.0, hole_y_mm=1070.0),
        cable=None,
        holes=(Hole("cable hole", "single", "inside", 69.85, 925.0, 9.525, None, 30.0, 45.0, 15.0, order=1),),
    )
    return replace(GIVEN, items=(lock,)), fit


def channel():
    square, slanted = (
        Hole("access hole", "single", "inside", 69.85, 1104.9, 12.7, 6.35, 9.525, order=1),
        Hole("channel", "single", "inside", 69.85, 1104.9, 9.525, None, 0.762 * INCH, -80.0, from_depth_mm=9.525,
             order=2, purpose="channel"),
    )  # fmt: skip
    return GIVEN, replace(FIT, holes=(square, slanted, FIT.holes[1]))


def in_edge():
    fit = replace(
        FIT,
        parts=(fit_part("cylinder", "TC-125"), fit_part("unit", "EU-1")),
        placement=Placement("single", "edge", "in-edge", 13.5, 1160.0, 17.5, 349.25, 22.0, 1165.0),
        holes=(Hole("channel", "single", "lock-edge", 22.2, 1130.0, 9.5, None, 40.0, order=1, purpose="channel"),),
    )
    return GIVEN, fit


def euro_narrow():
    lock = replace(LOCK, lock_form="euro-profile", backset_mm=35.0, case_height_mm=165.0, case_depth_mm=52.0,
                   case_above_mm=92.0)  # fmt: skip
    leaf = replace(LEAF, material="aluminium", construction="narrow-stile", stile_mm=60.0)
    fit = replace(
        FIT,
        parts=(fit_part("cylinder", "EC-3040"), fit_part("unit", "SU-N")),
        stack=Stack("euro-profile", 1.5, key_half_mm=40.0, inside_half_mm=30.0),
        placement=Placement("single", "inside", "above", 6.0, 1110.0, 46.0, 200.0, 35.0, 1095.0),
        holes=(Hole("cable hole", "single", "inside", 35.0, 1095.0, 19.05, 1.6, 3.0, order=1),),
        cable=None,
    )
    return replace(GIVEN, leaves=(leaf,), items=(lock,)), fit


def gate():
    lock = replace(LOCK, lock_form="gate", backset_mm=63.5, cylinder_height_mm=914.4, case_height_mm=None)
    leaf = Leaf("l1", "single", 1066.8, 1219.2, 50.8, "steel-gate", stile_mm=101.6)
    return replace(opening(form="gate", hand="LHR", frame_material="none", frame_stop_mm=0.0), leaves=(leaf,),
                   items=(lock,)), Fit("fits")  # fmt: skip


def cabinet():
    lock = replace(LOCK, lock_form="cabinet", backset_mm=31.75, cylinder_height_mm=863.6, case_height_mm=None,
                   case_width_mm=None)  # fmt: skip
    leaf = Leaf("l1", "single", 457.2, 762.0, 19.05, "wood", "flush")
    fit = Fit("fits", (fit_part("lock", "CB-18"), fit_part("unit", "SU-N")),
              placement=Placement("single", "inside", "beside", 70.0, 830.0, 46.0, 120.0, 80.0, 850.0))  # fmt: skip
    return replace(opening(form="cabinet", hand="RHR"), leaves=(leaf,), items=(lock,)), fit


def glass():
    leaf = Leaf("l1", "single", 900.0, 2100.0, 12.0, "glass", "frameless", undercut_mm=10.0)
    lock = replace(LOCK, lock_form="euro-profile", backset_mm=60.0, case_height_mm=None, case_width_mm=None)
    return replace(opening(hand="LHR", frame_material="none", frame_stop_mm=0.0), leaves=(leaf,), items=(lock,)), Fit(
        "does-not-fit"
    )


def reader():
    lock = Item("i1", kind="lock", lock_form="reader", cylinder_height_mm=1016.0)
    fit = Fit("fits", (fit_part("reader", "FR-22"), fit_part("unit", "SU-N")),
              placement=Placement("", "wall", "beside", 30.0, 1100.0, 46.0, 120.0, 0.0, 1016.0),
              holes=(Hole("reader hole", "", "wall", 0.0, 1016.0, 22.0, order=1),))  # fmt: skip
    return replace(opening(form="lift", hand=None), leaves=(), items=(lock,)), fit


ALL = {
    "mortise": (GIVEN, FIT),
    "pair": (pair(), pair_fit()),
    "bored": bored(),
    "channel": channel(),
    "in-edge": in_edge(),
    "euro-narrow": euro_narrow(),
    "gate": gate(),
    "cabinet": cabinet(),
    "glass": glass(),
    "reader": reader(),
}
