"""Rules of catalogue and stock, documents, credentials and commissioning."""

from dataclasses import replace
from decimal import Decimal

import pytest

from hwsched.values import Fit, Need, Refusal, Settings
from tests.rules.rows import boundary, passes, run, speaks, unknown
from tests.rules.scenario import catalogue, chosen, fit, fp, given, hole, leaf, lock, opening, part

SILENT = {"screw_places": None}
TOOLS = (fp("tool", "BIT"), fp("tool", "DRILL"))
OF_SURVEY = Refusal("survey", "lock", "case-within-stile", "The case is 2 mm too deep.", {"short_mm": 2.0})
MISS = Refusal("UNIT", "unit", "trim-clear", "The unit stands 2 mm from the trim.", {"short_mm": 2.0})

IN_EUROS = catalogue(UNIT={"currency": "EUR"})
LIFT = opening(form="lift")


def walled(*numbers):
    bare = fit(lock_number="READ", role="reader", without=("fastener",))
    return replace(bare, parts=(*bare.parts, *(fp("fastener", number, 4) for number in numbers)))


def sleeved(size):
    return catalogue(add=[part("SL", "consumable", form="sleeve", hole_mm=size)])


SLEEVED = fit(fp("consumable", "SL"))
POCKET = hole(0.0, "pocket", name="pocket for the unit", face="lock-edge", pilot_mm=None)
ACROSS = hole(9.525, "raceway", name="way", face="hinge-edge", depth_mm=809.4, pilot_mm=None, tool="installer-bit")
LONG = catalogue(
    add=[
        # 54 in, as such bits are sold (trade article); one that is too short, and one of which nobody says how long.
        part("BORER", "tool", form="installer-bit", diameter_mm=9.525, reach_mm=1371.6),
        part("STUB", "tool", form="installer-bit", diameter_mm=9.525, reach_mm=609.6),
        part("LOST", "tool", form="installer-bit", diameter_mm=9.525),
        part("TWIST", "tool", form="twist-drill", diameter_mm=9.525, reach_mm=1371.6),
    ]
)
ROWS = [
    speaks("fastener-for-material", given(), fit(fp("fastener", "PLUG", 4)), about="PLUG", severity="error"),
    unknown(
        "fastener-for-material",
        given(cat=catalogue(SCREW={"leaf_material": None})),
        fit(),
        "part SCREW.leaf_material",
    ),
    # Lead's hole 1/2 in in wood (common practice); a sleeve wider than its hole does not go in.
    passes("sleeve-fits", given(cat=sleeved(12.7)), SLEEVED),
    speaks("sleeve-fits", given(cat=sleeved(19.05)), SLEEVED, says=2, short_mm=6.35, about="SL", severity="error"),
    speaks("sleeve-fits", given(cat=sleeved(9.525)), SLEEVED, says=2, short_mm=3.175),
    speaks("sleeve-fits", given(), fit(), hole_mm=12.7, severity="note"),
    boundary("sleeve-fits", given(cat=sleeved(12.7 + 0.39)), SLEEVED),
    boundary("sleeve-fits", given(), fit(holes=())),
    unknown("sleeve-fits", given(cat=sleeved(None)), SLEEVED, "part SL.hole_mm"),
    # A pocket in aluminium is milled, or sawn and filed (common practice).
    speaks("tool-known", given(lf=leaf(material="aluminium")), fit(fp("tool", "MORT"), holes=(POCKET,)), 1, "note"),
    passes(
        "tool-known",
        given(lf=leaf(material="aluminium"), cat=catalogue(add=[part("MILL", "tool", form="mill")])),
        fit(fp("tool", "MILL"), holes=(POCKET,)),
    ),
    passes("tool-known", given(), fit(fp("tool", "MORT"), holes=(POCKET,))),
    # Plugs in masonry, anchors in board, machine screws in steel (common practice).
    passes("wall-fixings", given(LIFT, lk=lock("reader"), leaves=()), walled("PLUG")),
    speaks("wall-fixings", given(LIFT, lk=lock("reader"), leaves=()), walled(), about="UNIT", severity="error"),
    speaks(
        "wall-fixings",
        given(opening(form="lift", wall_build="hollow"), lk=lock("reader"), leaves=()),
        walled("PLUG"),
        says=2,
        about="PLUG",
    ),
    speaks(
        "wall-fixings",
        given(LIFT, lk=lock("reader"), leaves=(), cat=catalogue(UNIT={"screws": 0})),
        walled(),
        severity="error",
        words=("bonded to glass", "nothing holds it on a wall"),
    ),
    unknown(
        "wall-fixings",
        given(opening(form="lift", wall_build=None), lk=lock("reader"), leaves=()),
        walled(),
        "opening.wall_build",
    ),
    boundary("wall-fixings", given(opening(wall_build=None)), fit()),
    boundary(
        "wall-fixings",
        given(LIFT, lk=lock("reader"), leaves=()),
        fit(lock_number="READ", role="reader", without=("fastener",), placement=None),
    ),
    passes("unit-window", given(), fit()),
    speaks("unit-window", given(cat=catalogue(UNIT={"window_x1_mm": 9.0})), fit(), severity="error", about="UNIT"),
    boundary("unit-window", given(cat=catalogue(UNIT={"window_x1_mm": 10.0})), fit()),
    unknown("unit-window", given(cat=catalogue(UNIT={"plate_width_mm": None})), fit(), "part UNIT.plate_width_mm"),
    passes("part-known", given(), fit()),
    speaks("part-known", given(), fit(fp("consumable", "GONE")), severity="error", about="GONE"),
    speaks("part-known", given(chosen=[chosen("unit", "GONE")]), fit()),
    boundary("part-known", given(chosen=[chosen("unit", "UNIT")]), fit()),
    passes("superseded-part", given(), fit()),
    speaks(
        "superseded-part", given(cat=catalogue(UNIT={"superseded_by": "NEW"})), fit(), about="UNIT", severity="warning"
    ),
    boundary("superseded-part", given(cat=catalogue(EDGE={"superseded_by": "NEW"})), fit()),
    passes("price-known", given(), fit()),
    speaks("price-known", given(cat=catalogue(UNIT={"list_price": None})), fit(), parts=1, severity="note"),
    speaks("price-known", given(cat=catalogue(UNIT={"currency": "EUR"})), fit(), severity="warning", about="currency"),
    speaks("price-known", given(cat=IN_EUROS, settings=Settings(currency="USD")), fit(), severity="warning", parts=1),
    passes(
        "price-known", given(cat=IN_EUROS, settings=Settings(currency="USD", rates={"EUR": Decimal("1.08")})), fit()
    ),
    passes("price-known", given(settings=Settings(currency="EUR")), fit()),
    boundary("price-known", given(cat=catalogue(UNIT={"list_price": 0.0})), fit()),
    passes("kit-known", given(cat=catalogue(UNIT={"kit": (("SCREW", 4),)})), fit()),
    speaks("kit-known", given(cat=catalogue(UNIT={"kit": (("BAG", 1),)})), fit(), about="BAG", severity="warning"),
    boundary("kit-known", given(cat=catalogue(UNIT={"kit": ()})), fit()),
    # A part is drilled for by its own template; practice of the trade is taken, and said, where nobody gave it.
    passes("template-known", given(), fit()),
    speaks("template-known", given(cat=catalogue(UNIT=SILENT)), fit(), about="UNIT", severity="note"),
    speaks("template-known", given(cat=catalogue(CYL={"bend_radius_mm": None})), fit(), about="CYL"),
    boundary("template-known", given(cat=catalogue(UNIT={**SILENT, "screws": 1.0})), fit()),
    passes("tool-known", given(), fit(*TOOLS)),
    speaks("tool-known", given(), fit(TOOLS[0]), diameter_mm=6.35, severity="note"),
    speaks("tool-known", given(), fit(holes=(hole(0.0, "pocket"),))),
    # A leaf of 914.4 bored from the hinge edge to a case 105 deep: 809.4 mm, which only a long bit goes through.
    passes("tool-known", given(cat=LONG), fit(fp("tool", "BORER"), holes=(ACROSS,))),
    speaks(
        "tool-known",
        given(cat=LONG),
        fit(fp("tool", "STUB"), holes=(ACROSS,)),
        1,
        "note",
        diameter_mm=9.525,
        needed_mm=809.4,
    ),
    speaks("tool-known", given(cat=LONG), fit(fp("tool", "TWIST"), holes=(ACROSS,)), 1, "note", needed_mm=809.4),
    speaks("tool-known", given(cat=LONG), fit(holes=(ACROSS,)), 1, "note", needed_mm=809.4),
    boundary("tool-known", given(cat=LONG), fit(fp("tool", "BORER"), holes=(replace(ACROSS, depth_mm=1371.6),))),
    boundary(
        "tool-known",
        given(cat=LONG),
        fit(fp("tool", "BORER"), holes=(replace(ACROSS, depth_mm=1371.8),)),
        says=1,
        needed_mm=1371.8,
    ),
    unknown("tool-known", given(cat=LONG), fit(fp("tool", "LOST"), holes=(ACROSS,)), "part LOST.reach_mm"),
    # 0.06 to either side of a bit of 12.7 (from memory).
    *(boundary("tool-known", given(), fit(*TOOLS, holes=(hole(mm, pilot_mm=None),))) for mm in (12.6403, 12.7597)),
    *(speaks("tool-known", given(), fit(*TOOLS, holes=(hole(mm, pilot_mm=None),))) for mm in (12.6397, 12.7603)),
    boundary(
        "tool-known",
        given(
            cat=catalogue(BIT={"diameter_mm": 12.5}),
            settings=Settings(length_style="mm", limits={"tool-known.tolerance_mm": 0.25}),
        ),
        fit(*TOOLS, holes=(hole(12.75, pilot_mm=None),)),
    ),
    # #6 screws hold a surface unit on wood (common practice).
    passes("fastener-for-material", given(), fit()),
    speaks("fastener-for-material", given(), fit(without=("fastener",)), severity="error", about="UNIT"),
    speaks("fastener-for-material", given(lf=leaf(material="hollow-metal")), fit(), about="SCREW"),
    speaks("fastener-for-material", given(cat=catalogue(UNIT={"screw_size": "#8"})), fit()),
    boundary(
        "fastener-for-material",
        given(lf=leaf(material="glass")),
        fit(fp("fastener", "PAD"), without=("fastener",)),
        says=1,
    ),
    boundary("fastener-for-material", given(cat=catalogue(UNIT={"screws": 0})), fit(without=("fastener",))),
    unknown("fastener-for-material", given(lf=leaf(material=None)), fit(), "leaf.material"),
    passes("fit-complete", given(), fit()),
    speaks(
        "fit-complete", given(), Fit("does-not-fit", refused=(MISS,), nearest_miss=MISS), refused=1, severity="error"
    ),
    boundary("fit-complete", given(), Fit("to-measure"), says=1, severity="warning"),
    passes("heading-facts", given(), fit()),
    boundary("heading-facts", given(opening(form="lift", hand=None), leaves=()), fit()),
    unknown("heading-facts", given(opening(hand=None)), fit(), "opening.hand"),
    passes("key-for-unit", given(), fit()),
    speaks("key-for-unit", given(cat=catalogue(drop=("KEY",))), fit(), severity="warning"),
    speaks("key-for-unit", given(cat=catalogue(KEY={"for_part": "OTHER"})), fit()),
    boundary("key-for-unit", given(cat=catalogue(KEY={"for_part": "UNIT"})), fit()),
    passes("programming-key", given(), fit()),
    speaks("programming-key", given(cat=catalogue(drop=("PROG",))), fit(), severity="note"),
    boundary("programming-key", given(cat=catalogue(PROG={"for_part": "UNIT"})), fit()),
    # A key and its unit programmed before work starts (common practice).
    passes("programmed-before-work", given(), Fit("to-measure")),
    speaks("programmed-before-work", given(), fit(), severity="note", about="UNIT"),
    boundary("programmed-before-work", given(), Fit("fits", parts=(fp("unit", "UNIT"),)), says=1),
    # A key put in while only the coin cell is fitted drains it (common practice).
    passes("coin-cell-drain", given(cat=catalogue(UNIT={"coin_cell": None})), fit()),
    speaks("coin-cell-drain", given(), fit(), severity="note"),
    boundary("coin-cell-drain", given(), fit(power="supply"), says=1),
]


# The required attributes of every kind are the catalogue's own declaration.
ROWS += [
    passes("attribute-missing", given(), Fit("fits", parts=(fp("unit", "UNIT"),))),
    speaks(
        "attribute-missing",
        given(cat=catalogue(add=(part("ODD", "no-such-kind"),))),
        Fit("fits", parts=(fp("consumable", "ODD"),)),
    ),
    unknown(
        "attribute-missing",
        given(cat=catalogue(UNIT={"plate_width_mm": None})),
        Fit("fits", parts=(fp("unit", "UNIT"),)),
        "part UNIT.plate_width_mm",
    ),
]


SL = part("SL", "consumable", form="sleeve", hole_mm=19.05)
ODD = part("ODD", "no-such-kind")
BARE_UNIT = catalogue(UNIT={"screws": None, "screw_size": None})
NO_READER_UNIT = given(LIFT, lk=lock("reader"), leaves=())
# What is said, of several things each, and of what nobody told.
ROWS += [
    # A sleeve for another hole: which one is nearest, and whether it is too wide or too narrow for that.
    speaks("sleeve-fits", given(cat=sleeved(13.2)), SLEEVED, says=2, words=("it does not go in.",), short_mm=0.5),
    speaks("sleeve-fits", given(cat=sleeved(12.2)), SLEEVED, says=2, words=("it falls through.",), short_mm=0.5),
    speaks(
        "sleeve-fits",
        given(cat=sleeved(18.0)),
        fit(fp("consumable", "SL"), holes=(hole(12.7), hole(19.05))),
        says=3,
        hole_mm=19.05,
        words=("it falls through.",),
    ),
    # One of two holes has none, and what is no sleeve fills neither.
    speaks(
        "sleeve-fits",
        given(cat=catalogue(add=[SL])),
        fit(fp("consumable", "SL"), holes=(hole(12.7), hole(19.05))),
        hole_mm=12.7,
        words=("No sleeve of the catalogue",),
    ),
    speaks(
        "sleeve-fits",
        given(cat=catalogue(add=[replace(SL, attributes={"form": "sealant", "hole_mm": 12.7})])),
        SLEEVED,
        hole_mm=12.7,
        severity="note",
    ),
    boundary("sleeve-fits", given(), fit(holes=(hole(53.975, "bore"),))),
    boundary("sleeve-fits", given(lf=leaf(material="glass")), fit()),
    boundary("attribute-missing", given(), Fit("fits", parts=(fp("unit", "GONE"), fp("unit", "UNIT")))),
    speaks(
        "attribute-missing",
        given(cat=catalogue(add=[ODD], UNIT={"plate_width_mm": None})),
        Fit("fits", parts=(fp("consumable", "GONE"), fp("consumable", "ODD"), fp("unit", "UNIT"))),
        says=2,
        about="ODD",
    ),
    speaks(
        "superseded-part",
        given(cat=catalogue(UNIT={"superseded_by": "NEW"})),
        fit(),
        words=("superseded by NEW, which is not in the catalogue.",),
    ),
    speaks(
        "superseded-part",
        given(cat=catalogue(UNIT={"superseded_by": "EDGE"})),
        fit(),
        words=("superseded by EDGE.",),
    ),
    speaks("template-known", given(cat=catalogue(UNIT=SILENT)), fit(), words=("of UNIT: screw places;",)),
    speaks("part-known", given(chosen=[chosen("unit", "UNIT"), chosen("strike", "GONE")]), fit(), about="GONE"),
    speaks("price-known", given(cat=catalogue(UNIT={"list_price": None, "currency": "EUR"})), fit(), parts=1),
    # Without screws and without their size nobody can tell; with either, the other is what it is.
    unknown("fastener-for-material", given(cat=BARE_UNIT), fit(), "part UNIT.screws"),
    boundary("fastener-for-material", given(cat=catalogue(UNIT={"screws": None})), fit()),
    speaks(
        "fastener-for-material",
        given(cat=catalogue(UNIT={"screw_size": None})),
        fit(without=("fastener",)),
        words=("has no screw of known size for a leaf of wood",),
    ),
    speaks(
        "fastener-for-material",
        given(lf=leaf(material="glass")),
        fit(without=("fastener",)),
        words=("has no bonding pad for a leaf of glass",),
    ),
    speaks("fastener-for-material", given(), fit(without=("fastener",)), words=("has no screw #6 for",)),
    speaks(
        "fit-complete",
        given(),
        Fit("does-not-fit", refused=(MISS,), nearest_miss=MISS),
        about="UNIT",
        words=("Nearest: UNIT. The unit stands 2 mm from the trim.",),
    ),
    speaks("fit-complete", given(), Fit("does-not-fit", refused=(MISS,)), refused=1),
    speaks(
        "fit-complete",
        given(),
        Fit("does-not-fit", refused=(OF_SURVEY,), nearest_miss=OF_SURVEY),
        about="survey",
        words=("Nothing is fitted to a survey that contradicts itself. The case is 2 mm too deep.",),
    ),
    boundary("fit-complete", given(), Fit("to-measure"), says=1, words=("The fit is unknown.",)),
    speaks("coin-cell-drain", given(), fit(), words=("the battery pack",)),
    speaks("coin-cell-drain", given(), fit(power="supply"), words=("the supply",)),
    unknown(
        "heading-facts",
        given(opening(hand=None), leaf(width_mm=None, height_mm=None, material=None)),
        fit(),
        "opening.hand",
        "leaf.width_mm",
        "leaf.height_mm",
        "leaf.material",
    ),
    # A pocket is one hole, and what is bored behind it another.
    speaks(
        "tool-known",
        given(lf=leaf(material="aluminium")),
        fit(fp("tool", "MORT"), holes=(POCKET, hole())),
        3,
        words=("No mill or saw and files is in the catalogue",),
    ),
    speaks(
        "tool-known", given(cat=LONG), fit(fp("tool", "TWIST"), holes=(ACROSS, hole(pilot_mm=None))), 2, needed_mm=809.4
    ),
    speaks("tool-known", given(), fit(fp("cam", "BIT"), holes=(hole(pilot_mm=None),)), diameter_mm=12.7),
    boundary("tool-known", given(cat=LONG), fit(fp("tool", "BORER"), holes=(replace(ACROSS, depth_mm=None),))),
    speaks("wall-fixings", NO_READER_UNIT, walled(), words=("screw and plug",)),
    speaks("unit-window", given(cat=catalogue(UNIT={"window_y0_mm": 61.0})), fit(), severity="error", about="UNIT"),
    boundary("unit-window", given(cat=catalogue(UNIT={"window_y0_mm": 60.0})), fit()),
    *(
        unknown("unit-window", given(cat=catalogue(UNIT={name: None})), fit(), "part UNIT.window_x0_mm")
        for name in ("window_x0_mm", "window_y0_mm", "window_x1_mm", "window_y1_mm")
    ),
]


@pytest.mark.parametrize("row", ROWS, ids=str)
def test_rule(row):
    run(row)


def test_a_pad_on_glass_is_enough_where_it_is_the_only_fastener():
    pad = fit(*[p for p in fit().parts if p.role in ("unit", "cylinder")], fp("fastener", "PAD"))
    held = Fit("fits", parts=tuple(p for p in pad.parts if p.part != "SCREW"))
    run(passes("fastener-for-material", given(lf=leaf(material="glass")), held))


def test_an_unknown_fit_hands_its_needs_on():
    need = Need("leaf.thickness_mm", "leaf: Leaf thickness", "the lock")
    row = boundary("fit-complete", given(lk=lock()), Fit("to-measure", needs=(need,)), says=1)
    from hwsched.rules import judge, rule_named

    (said,) = judge(rule_named("fit-complete"), row.given, row.fit, settings=row.given.settings)
    assert said.needs == ("leaf.thickness_mm",)
