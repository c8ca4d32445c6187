"""A small survey and a small catalogue, both as workbooks, taken in, fitted and viewed: one opening of each kind.

The cells are what a surveyor types; beside each expectation of the tests stands the cell that it follows from.
"""

from contextlib import suppress
from dataclasses import replace
from decimal import Decimal

from hwsched.exchange.parts.catalogue_sheets import write_catalogue
from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model.errors import ValueRefusedError
from hwsched.model.project import create_project
from hwsched.operations.findings.waivers import waive
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.parts.catalogue_import import import_catalogue
from hwsched.operations.release.project_view import project_view
from hwsched.operations.survey.survey_import import import_survey
from tests.exchange.surveys import write
from tests.fitting.door import MORE, SUPPLY_LINK
from tests.rules.scenario import catalogue, part

WHO = "ann"
HEADINGS = (
    "Mark", "Bldg", "Floor", "Room from", "Room to", "Type", "Hand", "Label", "Stair", "Egress", "Accessible route",
    "Int/Ext", "Lowest temperature", "Ops/day", "Frame", "Stop (in)", "Size", "Thickness (in)", "Material",
    "Construction", "Stile (in)",
    "Lock type", "Function", "B/S", "Cyl AFF", "Case height", "Case depth", "Case thickness",
    "Top of case above cylinder", "Trim outside", "Trim inside", "TT", "Cross bore", "Edge bore", "Cam",
    "Existing item", "Side", "From lock edge", "Above floor", "Item W", "Item H", "Keep/replace", "Undercut", "Wall",
    "Reader sideways",
)  # fmt: skip
USUAL = {
    "Bldg": "Quay", "Floor": "1", "Room from": "Corridor", "Room to": "Net loft", "Type": "SGL", "Hand": "LH",
    "Label": "none", "Stair": "n", "Egress": "no", "Accessible route": "n", "Int/Ext": "int",
    "Lowest temperature": 20, "Ops/day": 30, "Frame": "HM", "Stop (in)": "5/8", "Size": "3-0 x 7-0",
    "Thickness (in)": "1 3/4", "Material": "SCW",
    "Construction": "flush", "Lock type": "mortise", "Function": "office", "B/S": "2 3/4", "Cyl AFF": "40",
    "Case height": "6", "Case depth": "4 1/4", "Case thickness": "1", "Top of case above cylinder": "1 3/4",
    "Trim outside": 0, "Trim inside": 0, "TT": "n", "Cam": "straight", "Undercut": "3/8",
}  # fmt: skip
"""A wood leaf, 1 3/4 thick, with a mortise lock: backset 2 3/4, cylinder 40 above the floor, case 6 x 4 1/4 x 1."""
NOT_GIVEN = dict.fromkeys(
    ("Case height", "Case depth", "Case thickness", "Top of case above cylinder", "Trim outside", "Trim inside", "Cam")
)
NO_FRAME = {"Frame": "none", "Stop (in)": None}
_ITEM = ("Existing item", "Side", "From lock edge", "Above floor", "Item W", "Item H", "Keep/replace")


def opening(mark, **cells):
    """Return a row of the usual opening with other cells."""
    return {**USUAL, "Mark": mark, **cells}


def standing(mark, *cells):
    """Return a row of an existing item: kind, side, from lock edge, above floor, width, height, keep or replace."""
    return {"Mark": mark, **dict(zip(_ITEM, cells, strict=True))}


ROWS = (
    # Wood, nothing in the way: straight behind the cylinder.
    opening("WOOD"),
    # The same leaf measured in millimetres and typed in other ways.
    opening("METRIC", **{"B/S": "69.85 mm", "Cyl AFF": "1016mm", "Thickness (in)": "44.45 mm", "Case thickness": '1"'}),
    # A thumb turn from 39 7/8 to 41 3/8 takes the straight place: a channel from above.
    opening("CHANNEL", TT="y"),
    standing("CHANNEL", "thumb turn", "inside", "2 3/4", "40 5/8", "1 1/2", "1 1/2", "keep"),
    # Case 1 3/4 above and below the cylinder; a turn to 38 5/8 down, a push plate from 41 up: a channel from below, and
    # LOW, whose plate covers the slot that the tilted bit cuts below the hole.
    opening("DOWN", **{"TT": "y", "Case height": "3 1/2"}),
    standing("DOWN", "thumb turn", "inside", "2 3/4", "39 3/8", "1 1/2", "1 1/2", "keep"),
    standing("DOWN", "push plate", "inside", "2 3/4", "46", "3", "10", "keep"),
    # Hollow metal, a turn from 39 7/8 to 41 1/8: the lead runs inside the leaf to a hole above the case.
    opening("HOLLOW", Material="HM", TT="y", Hand="RH"),
    standing("HOLLOW", "thumb turn", "inside", "2 3/4", "40 1/2", "1 1/4", "1 1/4", "keep"),
    # Narrow aluminium stile, its own practice.
    opening(
        "STILE",
        **{
            "Material": "alum", "Construction": "narrow stile", "Stile (in)": "2 3/8", "Function": "deadlock",
            "B/S": "1 1/8", "Case depth": "1 7/8", "Case thickness": "5/8", "Top of case above cylinder": "1 1/2",
            "TT": "y",
        },
    ),
    standing("STILE", "thumb turn", "inside", "1 1/8", "40", "1 1/4", "1 1/4", "keep"),
    # Rim lock on hollow metal: case 3 x 3 1/2 on the inside face, 1 1/2 of it above the cylinder.
    opening(
        "RIM",
        **{
            "Material": "HM", "Lock type": "rim", "Cam": "flat tail", "Case height": "3 1/2", "Case depth": "3",
            "Case thickness": "7/8", "Top of case above cylinder": "1 1/2",
        },
    ),
    # Bored, one too small by 1/8 in both bores, the other as the new lock wants it.
    opening("SMALL", **{"Lock type": "bored", "Cross bore": "2", "Edge bore": "7/8", **NOT_GIVEN}),
    opening("BORED", **{"Lock type": "bored", "Cross bore": "2 1/8", "Edge bore": "1", **NOT_GIVEN}),
    # A push plate takes the whole face: the unit goes into the edge.
    opening("POCKET", Bldg="Shed"),
    standing("POCKET", "push plate", "inside", "18", "42", "34", "76", "keep"),
    # A gate of steel tube 2 thick, outside.
    opening(
        "GATE",
        **{
            "Bldg": "Shed", "Type": "gate", "Material": "steel gate", "Lock type": "gate", "Stile (in)": "4",
            "Int/Ext": "ext", "Size": '42" x 48"', "Thickness (in)": "2", "B/S": "2 1/2", "Cyl AFF": "36",
            "Undercut": "4", "Function": "storeroom", **NOT_GIVEN, **NO_FRAME,
        },
    ),
    # A reader beside a lift: no leaf at all.
    opening(
        "LIFT",
        **{
            "Bldg": "Shed", "Type": "lift", "Lock type": "reader", "Wall": "brick", "Reader sideways": "6",
            **NOT_GIVEN, **NO_FRAME,
            **dict.fromkeys(
                ("Hand", "Size", "Thickness (in)", "Material", "Construction", "B/S", "Function", "Undercut", "TT")
            ),
        },
    ),
    # A cabinet door, its bolt replaced.
    opening(
        "CABINET",
        **{
            "Bldg": "Shed", "Type": "cabinet", "Lock type": "cabinet", "Size": '18" x 30"', "Thickness (in)": "3/4",
            "B/S": "1 1/4", "Cyl AFF": "34", "Function": None, "Undercut": "20", "Keep/replace": "replace",
            **NOT_GIVEN, **NO_FRAME,
        },
    ),
    # Nobody measured how thick the leaf is.
    opening("UNSEEN", **{"Thickness (in)": None}),
)  # fmt: skip
PACK = part(
    "PACK", "fastener", 1.0, form="wood-screw", size="#8", leaf_material="wood", kit=(("SPARE", 4.0), ("TAPE", 0.5))
)
SPARE = part("SPARE", "fastener", 0.1, form="wood-screw", size="#8", length_mm=25.4, leaf_material="wood")
# 80 x 160 as UNIT, but its window is high enough up for a slot of 81 mm below the hole.
LOW = part(
    "LOW", "surface-unit", 290.0, housing="wide", plate_width_mm=80.0, plate_height_mm=160.0, depth_mm=32.0,
    window_x0_mm=10.0, window_y0_mm=85.0, window_x1_mm=70.0, window_y1_mm=120.0, connector_x_mm=40.0,
    connector_y_mm=140.0, slack_mm=60.0, exposure="interior", glass_mount=False, screw_size="#6", screws=4,
    **SUPPLY_LINK,
)  # fmt: skip
TAPE = part("TAPE", "consumable", 0.5, form="other")


def parts():
    """Return the catalogue: the parts of `tests.fitting.door`, with things in the boxes of some.

    UNIT holds 2 packs and 1 roll of tape; a pack holds 4 spare screws and half a roll of tape; a cell holds nothing.
    """
    found = []
    for each in catalogue(
        add=[*MORE, LOW, PACK, SPARE, TAPE],
        drop=("MAG", "STRIKE"),
        UNIT={"kit": (("PACK", 2.0), ("TAPE", 1.0))},
        CELL={"kit": ()},
    ).parts.values():
        made = each
        if each.kind == "fixed-reader":
            made = replace(made, attributes={k: v for k, v in made.attributes.items() if k != "fire_listed"})
        if each.number == "EXT":
            # Dearer than LOW is over UNIT: or DOWN would take UNIT far below the lock, at the end of a longer lead.
            made = replace(made, list_price=Decimal(120))
        units = {"PACK": "SET", "TAPE": "ROLL"}
        found.append(replace(made, unit=units.get(each.number, "EA"), finish="grey" if each.number == "UNIT" else ""))
    return found


def make(folder, rows=ROWS):
    """Write the two workbooks, take them in and fit; returns the open project."""
    folder.mkdir(parents=True, exist_ok=True)
    write_catalogue(folder / "catalogue.xlsx", parts())
    survey = write(
        folder / "survey.xlsx", {"Doors": [HEADINGS, *([row.get(heading) for heading in HEADINGS] for row in rows)]}
    )
    project = create_project(folder / "quay.hwsched", "Quay", length_style="fraction", bare_unit="in")
    import_catalogue(project, folder / "catalogue.xlsx", who=WHO)
    import_survey(project, survey, SurveyOptions(bare_unit="in"), who=WHO)
    fit_openings(project, who=WHO)
    # What nobody can know of rooms and walls that are no more than a name somebody accepted, or nothing would go out.
    for rule in ("room-way-out", "wall-thickness-known", "controller-output"):
        with suppress(ValueRefusedError):  # of other rows than these it says nothing
            waive(project, rule, person="Ann", reason="looked at on site", who=WHO, scope="project")
    return project


def viewed(folder):
    """Make the project and return it as documents see it."""
    project = make(folder)
    try:
        return project_view(project)
    finally:
        project.close()
