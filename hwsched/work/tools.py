"""Kinds of tools that the work takes, whether or not the catalogue sells them."""

from typing import Final

from hwsched.attributes.of_parts import SECURITY_DRIVE
from hwsched.language import phrase
from hwsched.quantities import LengthStyle, format_length
from hwsched.quantities.drill_sizes import drill_number
from hwsched.rules.reading import entry
from hwsched.rules.wording import style_of
from hwsched.values import FitPart, Hole
from hwsched.work.situation import Situation
from hwsched.work.step import Tool

RULE: Final = Tool("tape measure and square")
PENCIL: Final = Tool("pencil and centre punch")
LEVEL: Final = Tool("level")
SCREWDRIVERS: Final = Tool("screwdrivers")
TRESTLES: Final = Tool("padded trestles and a boring fixture")
WEDGES: Final = Tool("wedges and a sheet for the floor")
WRENCH: Final = Tool("adjustable wrench")
DRILL: Final = Tool("drill with depth stop")
VACUUM: Final = Tool("vacuum with a narrow nozzle")
EXTRACTION: Final = Tool("dust extraction and respirator")
GLASSES: Final = Tool("eye protection and clamps")
PULL_WIRE: Final = Tool("pull wire")
TAPE: Final = Tool("adhesive tape")
METER: Final = Tool("voltmeter")
PLIERS: Final = Tool("side cutters and pliers")
PROGRAMMER: Final = Tool("programming key or device")
BENCH_SUPPLY: Final = Tool("bench supply with current limit")
COVER_DRIVER: Final = Tool("driver for the cover's screws")
STRIPPER: Final = Tool("wire stripper")
FILE: Final = Tool("file or deburring tool")
FRAME_CUTTER: Final = Tool("cutter and files for the frame")
OIL: Final = Tool("cutting oil")
WAX: Final = Tool("cutting wax")
FINDER: Final = Tool("detector for studs, pipes and cables")
HAMMER_DRILL: Final = Tool("hammer drill with a masonry bit of the plugs' size")
ANCHOR_BIT: Final = Tool("drill with a bit of the anchors' size")
TAP: Final = Tool("tap of the machine screws' thread with its drill")
ALCOHOL: Final = Tool("alcohol and lint-free cloth")

WORDS: Final = {
    "twist-drill": "twist drill",
    "installer-bit": "installer bit, long",
    "spade-bit": "spade bit",
    "hole-saw": "hole saw",
    "core-bit": "core bit for masonry",
    "step-drill": "step drill",
    "mortiser": "mortiser",
    "mill": "mill or router for metal",
    "saw-and-files": "saw and files",
}
"""Form of a tool in the catalogue to its word in a line."""


def drill_words(mm: float, style: LengthStyle) -> str:
    """Name the size of a hole as it stands on its bit, in the language in force.

    Examples
    --------
    >>> drill_words(12.7, "fraction"), drill_words(3.4544, "fraction"), drill_words(3.4544, "decimal-inch")
    ('1/2"', 'No. 29', '0.136"')
    """
    number = drill_number(mm) if style == "fraction" else None
    return format_length(mm, style) if number is None else phrase("No. {number}", number=number)


def of_holes(situation: Situation, holes: tuple[Hole, ...]) -> tuple[Tool, ...]:
    """Return what holes are made with: drill, bits, jig, and what their material asks for besides."""
    found = [GLASSES, DRILL]
    for hole in holes:
        if hole.pilot_mm is not None:
            found.append(bit(situation, "twist-drill", hole.pilot_mm))
        if hole.tool:
            found.append(bit(situation, hole.tool, hole.diameter_mm or None))
        if hole.jig and not hole.by_template:
            found.append(Tool(hole.jig, "drilling-jig"))
    wall = (situation.given.opening.wall_build or "") if situation.leaf is None else ""
    if situation.material == "mineral-core" or wall == "masonry":
        found.append(EXTRACTION)
    if situation.material in ("hollow-metal", "steel-gate") or wall == "steel":
        found += [OIL, FILE]
    elif situation.material == "aluminium":
        found += [WAX, FILE]
    return tuple(dict.fromkeys(found))


def bit(situation: Situation, form: str, size_mm: float | None) -> Tool:
    """Return a bit or cutter of a form and size."""
    size = f" {drill_words(size_mm, style_of(situation.given.settings.length_style))}" if size_mm else ""
    return Tool(f"{WORDS.get(form, form.replace('-', ' '))}{size}", form, size_mm)


def drivers(situation: Situation, parts: tuple[FitPart, ...]) -> tuple[Tool, ...]:
    """Return what turns the screws and bolts among some parts."""
    found = []
    for part in parts:
        known = entry(situation.given, part) if part.role == "fastener" else None
        if known is None or situation.text_of(part) == "adhesive":
            continue
        if known.flag_of(SECURITY_DRIVE):
            found.append(
                Tool(
                    phrase(
                        "driver or wrench for the security heads of {description}",
                        description=part.description or part.part,
                    ),
                    "driver",
                )
            )
        elif situation.text_of(part) == "through-bolt":
            found.append(WRENCH)
        else:
            found.append(SCREWDRIVERS)
    return tuple(dict.fromkeys(found))
