"""Rules of catalogue and stock, documents, credentials and commissioning."""

from decimal import Decimal

import pytest

from hwsched.values import Fit, Need, Refusal, Settings
from tests.rules.rows import boundary, passes, run, speaks, unknown
from tests.rules.scenario import case, catalogue, chosen, fit, fp, hole, leaf, lock, opening, part

TOOLS = (fp("tool", "BIT"), fp("tool", "DRILL"))
MISS = Refusal("UNIT", "unit", "trim-clear", "The unit stands 2 mm from the trim.", {"short_mm": 2.0})

IN_EUROS = catalogue(UNIT={"currency": "EUR"})

ROWS = [
    passes("unit-window", case(), fit()),
    speaks("unit-window", case(cat=catalogue(UNIT={"window_x1_mm": 9.0})), fit(), severity="error", about="UNIT"),
    boundary("unit-window", case(cat=catalogue(UNIT={"window_x1_mm": 10.0})), fit()),
    unknown("unit-window", case(cat=catalogue(UNIT={"plate_width_mm": None})), fit(), "part UNIT.plate_width_mm"),
    passes("part-known", case(), fit()),
    speaks("part-known", case(), fit(fp("consumable", "GONE")), severity="error", about="GONE"),
    speaks("part-known", case(chosen=[chosen("unit", "GONE")]), fit()),
    boundary("part-known", case(chosen=[chosen("unit", "UNIT")]), fit()),
    passes("superseded-part", case(), fit()),
    speaks(
        "superseded-part", case(cat=catalogue(UNIT={"superseded_by": "NEW"})), fit(), about="UNIT", severity="warning"
    ),
    boundary("superseded-part", case(cat=catalogue(EDGE={"superseded_by": "NEW"})), fit()),
    passes("price-known", case(), fit()),
    speaks("price-known", case(cat=catalogue(UNIT={"list_price": None})), fit(), parts=1, severity="note"),
    speaks("price-known", case(cat=catalogue(UNIT={"currency": "EUR"})), fit(), severity="warning", about="currency"),
    speaks("price-known", case(cat=IN_EUROS, settings=Settings(currency="USD")), fit(), severity="warning", parts=1),
    passes("price-known", case(cat=IN_EUROS, settings=Settings(currency="USD", rates={"EUR": Decimal("1.08")})), fit()),
    passes("price-known", case(settings=Settings(currency="EUR")), fit()),
    boundary("price-known", case(cat=catalogue(UNIT={"list_price": 0.0})), fit()),
    passes("kit-known", case(cat=catalogue(UNIT={"kit": (("SCREW", 4),)})), fit()),
    speaks("kit-known", case(cat=catalogue(UNIT={"kit": (("BAG", 1),)})), fit(), about="BAG", severity="warning"),
    boundary("kit-known", case(cat=catalogue(UNIT={"kit": ()})), fit()),
    passes("tool-known", case(), fit(*TOOLS)),
    speaks("tool-known", case(), fit(TOOLS[0]), diameter_mm=6.35, severity="note"),
    speaks("tool-known", case(), fit(holes=(hole(0.0, "pocket"),))),
    boundary("tool-known", case(), fit(*TOOLS, holes=(hole(12.84, pilot_mm=None),))),
    boundary("tool-known", case(), fit(*TOOLS, holes=(hole(12.86, pilot_mm=None),)), says=1),
    # #6 screws hold a surface unit on wood (common practice).
    passes("fastener-for-material", case(), fit()),
    speaks("fastener-for-material", case(), fit(without=("fastener",)), severity="error", about="UNIT"),
    speaks("fastener-for-material", case(lf=leaf(material="hollow-metal")), fit(), about="SCREW"),
    speaks("fastener-for-material", case(cat=catalogue(UNIT={"screw_size": "#8"})), fit()),
    boundary(
        "fastener-for-material",
        case(lf=leaf(material="glass")),
        fit(fp("fastener", "PAD"), without=("fastener",)),
        says=1,
    ),
    boundary("fastener-for-material", case(cat=catalogue(UNIT={"screws": 0})), fit(without=("fastener",))),
    unknown("fastener-for-material", case(lf=leaf(material=None)), fit(), "leaf.material"),
    passes("fit-complete", case(), fit()),
    speaks("fit-complete", case(), Fit("not-fitted", refused=(MISS,), nearest_miss=MISS), refused=1, severity="error"),
    boundary("fit-complete", case(), Fit("unknown"), says=1, severity="warning"),
    passes("heading-facts", case(), fit()),
    boundary("heading-facts", case(opening(form="lift", hand=None), leaves=()), fit()),
    unknown("heading-facts", case(opening(hand=None)), fit(), "opening.hand"),
    passes("key-for-unit", case(), fit()),
    speaks("key-for-unit", case(cat=catalogue(drop=("KEY",))), fit(), severity="warning"),
    speaks("key-for-unit", case(cat=catalogue(KEY={"for_part": "OTHER"})), fit()),
    boundary("key-for-unit", case(cat=catalogue(KEY={"for_part": "UNIT"})), fit()),
    passes("programming-key", case(), fit()),
    speaks("programming-key", case(cat=catalogue(drop=("PROG",))), fit(), severity="note"),
    boundary("programming-key", case(cat=catalogue(PROG={"for_part": "UNIT"})), fit()),
    # A key and its unit programmed before work starts (common practice).
    passes("programmed-before-work", case(), Fit("unknown")),
    speaks("programmed-before-work", case(), fit(), severity="note", about="UNIT"),
    boundary("programmed-before-work", case(), Fit("fitted", parts=(fp("unit", "UNIT"),)), says=1),
    # A key put in while only the coin cell is fitted drains it (common practice).
    passes("coin-cell-drain", case(cat=catalogue(UNIT={"coin_cell": None})), fit()),
    speaks("coin-cell-drain", case(), fit(), severity="note"),
    boundary("coin-cell-drain", case(), fit(power="supply"), says=1),
]


# The required attributes of every kind are the catalogue's own declaration.
ROWS += [
    passes("attribute-missing", case(), Fit("fitted", parts=(fp("unit", "UNIT"),))),
    speaks(
        "attribute-missing",
        case(cat=catalogue(add=(part("ODD", "no-such-kind"),))),
        Fit("fitted", parts=(fp("consumable", "ODD"),)),
    ),
    unknown(
        "attribute-missing",
        case(cat=catalogue(UNIT={"plate_width_mm": None})),
        Fit("fitted", parts=(fp("unit", "UNIT"),)),
        "part UNIT.plate_width_mm",
    ),
]


@pytest.mark.parametrize("row", ROWS, ids=str)
def test_rule(row):
    run(row)


def test_a_pad_on_glass_is_enough_where_it_is_the_only_fastener():
    pad = fit(*[p for p in fit().parts if p.role in ("unit", "cylinder")], fp("fastener", "PAD"))
    held = Fit("fitted", parts=tuple(p for p in pad.parts if p.part != "SCREW"))
    run(passes("fastener-for-material", case(lf=leaf(material="glass")), held))


def test_an_unknown_fit_hands_its_needs_on():
    need = Need("leaf.thickness_mm", "leaf: Leaf thickness", "the lock")
    row = boundary("fit-complete", case(lk=lock()), Fit("unknown", needs=(need,)), says=1)
    from hwsched.rules import judge, rule_named

    (said,) = judge(rule_named("fit-complete"), row.case, row.fit)
    assert said.needs == ("leaf.thickness_mm",)
