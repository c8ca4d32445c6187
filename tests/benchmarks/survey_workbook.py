"""A large invented survey workbook for benchmarks: realistic spellings, a stated number of different openings."""

import random
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

from openpyxl import Workbook

HEADERS = (
    "Door No",
    "Bldg",
    "Floor",
    "Room from",
    "Room to",
    "Type",
    "Hand",
    "Fire rating",
    "Stair",
    "Egress",
    "Accessible",
    "Int/Ext",
    "Ops/day",
    "Power",
    "Frame",
    "Stop width (in)",
    "Width (in)",
    "Height (in)",
    "Thickness (in)",
    "Door material",
    "Construction",
    "Stile (in)",
    "Undercut (in)",
    "Lock type",
    "Function",
    "Backset (in)",
    "Cyl height (in)",
    "Trim outside (in)",
    "Trim inside (in)",
    "Remarks",
)
"""Thirty columns, as many as the figure asks for."""


@dataclass(frozen=True)
class _Design:
    """What openings of one design share; lengths in inches."""

    form: str
    rating: str
    width: Fraction
    height: Fraction
    thickness: Fraction
    material: str
    construction: str
    frame: str
    stop: Fraction | None
    stile: Fraction | None
    undercut: Fraction
    lock: str
    function: str
    backset: Fraction
    cylinder: Fraction
    trim_outside: Fraction
    trim_inside: Fraction
    exposure: str
    egress: str
    operations: int
    power: str


def write_survey(path: Path, openings: int = 10_000, distinct: int = 400, seed: int = 7) -> Path:
    """Write a workbook of one sheet with thirty columns and one row an opening.

    Parameters
    ----------
    path : Path
        Workbook to write, ending .xlsx.
    openings : int
        Rows below the header.
    distinct : int
        Number of different designs among them: what a fit can depend on; marks, rooms and spellings differ anyway.
    seed : int
        The same seed writes the same content.

    Returns
    -------
    Path
        The workbook written.
    """
    random_ = random.Random(seed)
    designs = _designs(random_, distinct)
    book = Workbook(write_only=True)
    sheet = book.create_sheet("Survey")
    sheet.append(HEADERS)
    for number in range(openings):
        # The first round takes each design once, so that a small workbook still holds all of them.
        design = designs[number] if number < distinct else random_.choice(designs)
        sheet.append(_row(random_, number, design))
    book.save(path)
    return path


def _designs(random_: random.Random, count: int) -> list[_Design]:
    found: dict[_Design, None] = {}
    while len(found) < count:
        found[_design(random_)] = None
    return list(found)


def _design(random_: random.Random) -> _Design:
    pick = random_.choice
    material, construction, thickness = pick(
        (
            ("HM", "flush", Fraction(7, 4)),
            ("hollow metal", "F", Fraction(7, 4)),
            ("wood", "flush", Fraction(7, 4)),
            ("WD", "flush", Fraction(11, 8)),
            ("solid core", "stile & rail", Fraction(7, 4)),
            ("alum", "narrow stile", Fraction(7, 4)),
        )
    )
    narrow = construction == "narrow stile"
    paired = random_.random() < 0.08
    lock = "mortise" if narrow else pick(("mortise", "mortise lock", "161", "cylindrical", "rim", "euro"))
    bored = lock in ("161", "cylindrical")
    if narrow:
        backset = pick((Fraction(15, 16), Fraction(9, 8), Fraction(3, 2)))
    else:
        backset = pick((Fraction(19, 8), Fraction(11, 4))) if bored else Fraction(11, 4)
    return _Design(
        form="pair" if paired else pick(("single", "sgl")),
        rating=pick(("none", "none", "none", "20 min", "45 min", "90 min", "-")),
        width=pick((Fraction(34), Fraction(36), Fraction(36), Fraction(40), Fraction(42))),
        height=pick((Fraction(80), Fraction(84), Fraction(84), Fraction(96))),
        thickness=thickness,
        material=material,
        construction=construction,
        frame="alum" if narrow else pick(("HM", "HM", "wood")),
        stop=None if random_.random() < 0.1 else Fraction(5, 8),
        stile=pick((Fraction(17, 8), Fraction(7, 2))) if narrow else None,
        undercut=pick((Fraction(1, 4), Fraction(1, 2), Fraction(5, 8), Fraction(3, 4))),
        lock=lock,
        function=pick(("storeroom", "office", "classroom", "F86" if not bored else "storeroom", "passage")),
        backset=backset,
        cylinder=pick((Fraction(38), Fraction(39), Fraction(40), Fraction(81, 2))),
        trim_outside=pick((Fraction(0), Fraction(1, 8), Fraction(1, 4))),
        trim_inside=pick((Fraction(1, 8), Fraction(1, 4), Fraction(3, 8))),
        exposure=pick(("int", "interior", "interior", "ext")),
        egress=pick(("no", "no", "yes", "egress")),
        operations=pick((6, 20, 40, 80, 150, 300)),
        power=pick(("", "", "battery", "wired")),
    )


def _row(random_: random.Random, number: int, design: _Design) -> list[object]:
    building = "ABCDEFGH"[number // 1250 % 8]
    level = number // 100 % 12 + 1
    mark = f"{building}{level:02d}-{number:05d}"
    if number % 50 == 0:
        mark = f"{number:05d}"  # text of digits with leading noughts
    length = _spell
    return [
        mark,
        f"Building {building}",
        level if random_.random() < 0.5 else f"Level {level}",
        f"Corridor {level}{random_.choice('NSEW')}",
        f"Room {number:05d}",
        design.form,
        random_.choice(("LH", "RH", "LHR", "RHR", "lh", "left hand")),
        design.rating,
        random_.choice(("no", "no", "n", "N", "yes")),
        design.egress,
        random_.choice(("yes", "y", "Y", "no")),
        design.exposure,
        design.operations,
        design.power,
        design.frame,
        length(random_, design.stop),
        _spell_feet(random_, design.width),
        _spell_feet(random_, design.height),
        length(random_, design.thickness),
        design.material,
        design.construction,
        length(random_, design.stile),
        length(random_, design.undercut),
        design.lock,
        design.function,
        length(random_, design.backset),
        length(random_, design.cylinder),
        length(random_, design.trim_outside),
        length(random_, design.trim_inside),
        f"seen {number % 28 + 1}, photo {number:05d}" if random_.random() < 0.3 else None,
    ]


def _fraction(value: Fraction, joint: str) -> str:
    whole, rest = divmod(value, 1)
    if not rest:
        return str(whole)
    text = f"{rest.numerator}/{rest.denominator}"
    return f"{whole}{joint}{text}" if whole else text


def _spell(random_: random.Random, inches: Fraction | None) -> object:
    """Spell a length as one surveyor or another would: fraction, decimal, number in the cell, millimetres."""
    if inches is None:
        return None
    way = random_.randrange(6)
    if way == 0:
        return float(inches)
    if way == 1:
        return f'{_fraction(inches, "-")}"'
    if way == 2:
        return f'{_fraction(inches, " ")}"'
    if way == 3:
        return f"{float(inches):g} in"
    if way == 4:
        return f"{float(inches * Fraction(127, 5)):g} mm"
    return f"{_fraction(inches, ' ')} in."


def _spell_feet(random_: random.Random, inches: Fraction) -> object:
    """Spell a leaf's width or height: feet and inches as often as inches."""
    if random_.random() < 0.5:
        return _spell(random_, inches)
    feet, rest = divmod(inches, 12)
    return random_.choice((f"{feet}'-{rest}\"", f"{feet}' - {rest}\"", f"{feet}'{rest}\"", f"{feet} ft {rest} in"))
