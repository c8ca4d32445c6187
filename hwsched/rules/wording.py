"""How rules put numbers and missing facts into words. What is wrong, and what helps, is said by each rule itself."""

import re
from collections.abc import Collection, Iterable
from functools import cache
from math import ceil
from typing import Final

from hwsched.language import phrase
from hwsched.quantities import LENGTH_STYLES, LengthStyle, format_length, in_run_unit, run_unit
from hwsched.rules.rule import Verdict
from hwsched.survey import ENTITIES, INHERITED, OPENING, POWER_ENTITIES
from hwsched.values import Leaf, OpeningInput

_STEPS_MM: Final = (0.0254, 0.1, 25.4 / 64)
"""Least steps in which lengths are written: decimal inches, millimetres, fractions."""
_MILLIMETRES: Final = re.compile(r"(-?\d+(?:\.\d+)?(?:e[+-]?\d+)?) mm\b")
FIT: Final = "opening.fit"
"""What circuits wait for and nobody finds at a door: it is worked out."""
_NAMES: Final = {"opening": "opening", "leaf": "leaf", "existing_item": "existing item"}


def length(given: OpeningInput, mm: float) -> str:
    """Put a length into the project's units."""
    style = style_of(given.settings.length_style)
    said = format_length(mm, style)
    if mm and said in _nothing(style):
        # What is short by a hair is not short by nothing.
        step = next(step for step in _STEPS_MM if format_length(step, style) != format_length(0.0, style))
        return f"less than {format_length(step, style)}"
    return said


def length_up(given: OpeningInput, mm: float) -> str:
    """Put what is lacking into the project's units, rounded up: with the nearest step it might still be short.

    Examples
    --------
    >>> from hwsched.values import Catalogue, Opening, Settings
    >>> inches = OpeningInput(Opening("", "M1"), (), (), Catalogue({}, ""), Settings(length_style="fraction"))
    >>> length(inches, 0.5), length_up(inches, 0.5), length_up(inches, 25.4 / 32)
    ('1/64"', '1/32"', '1/32"')
    """
    style = style_of(given.settings.length_style)
    step = {"fraction": 25.4 / 64, "decimal-inch": 0.00254, "mm": 0.1}[style]
    return format_length(ceil(mm / step - 1e-6) * step, style)


def in_units(given: OpeningInput, reckoned: object) -> str:
    """Put what a calculation says into the project's units: calculations speak in millimetres.

    Examples
    --------
    >>> from hwsched.values import Catalogue, Opening, Settings
    >>> inches = OpeningInput(Opening("", "M1"), (), (), Catalogue({}, ""), Settings(length_style="fraction"))
    >>> in_units(inches, "is as wide as the leaf of 25.4 mm is thick")
    'is as wide as the leaf of 1" is thick'
    """
    return _MILLIMETRES.sub(lambda found: length(given, float(found[1])), str(reckoned))


@cache
def _nothing(style: LengthStyle) -> tuple[str, str]:
    nothing = format_length(0.0, style)
    return nothing, f"-{nothing}"


def style_of(asked: str) -> LengthStyle:
    """Return how a project shows lengths; millimetres where its setting is none of ours."""
    return next((known for known in LENGTH_STYLES if known == asked), "mm")


def run_length(asked: str, length_m: float, digits: int = 1) -> str:
    """Put the length of a run into the unit in which the project shows runs: metres or feet.

    Examples
    --------
    >>> run_length("mm", 30.48), run_length("fraction", 30.48)
    ('30.5 m', '100 ft')
    """
    style = style_of(asked)
    return f"{round(in_run_unit(length_m, style), digits):g} {run_unit(style)}"


def short_v(volts: float) -> str:
    """Put volts, or ampere-hours, that are lacking into a number that is never 0.

    Examples
    --------
    >>> short_v(0.3), short_v(0.0004)
    ('0.30', '0.0004')
    """
    return f"{volts:.2f}" if volts >= 0.005 else f"{volts:.1g}"


def short_a(amperes: float) -> str:
    """Put amperes that are lacking into a number that is never 0.

    Examples
    --------
    >>> short_a(0.1), short_a(0.00004)
    ('0.1', '4e-05')
    """
    return f"{amperes:.3g}"


@cache
def label_of(fact: str) -> str:
    """Put a missing fact into words: ``leaf.thickness_mm`` is "leaf: Leaf thickness"; parts say their own name.

    Examples
    --------
    >>> label_of("circuit.limiter_a"), label_of("opening.fit"), label_of("part U.cells")
    ('circuit: Fuse or limiter', 'a fit that counts', 'part U.cells')
    """
    entity_name, _, attribute_name = fact.partition(".")
    if fact == FIT:
        return "a fit that counts"
    for entity in (*ENTITIES, *POWER_ENTITIES):
        if entity.name == entity_name:
            declared = next((each.label for each in entity.attributes if each.name == attribute_name), None)
            # Asked once for all who take it from there.
            whose = (
                "building or level"
                if entity is OPENING and attribute_name in INHERITED
                else _NAMES.get(entity_name, entity_name)
            )
            return f"{whose}: {declared or attribute_name.replace('_', ' ')}"
    return fact.replace("_", " ")


def to_complete(needs: Collection[str]) -> str:
    """Return the cure where facts are missing; of a fit, which nobody can tell, that it is to be worked out.

    Examples
    --------
    >>> to_complete(["circuit.limiter_a"]), to_complete([FIT]), to_complete([])
    ('Complete: circuit: Fuse or limiter.', 'Fit the opening.', '')
    """
    told = [label_of(need) for need in needs if need != FIT]
    said = f"Complete: {'; '.join(told)}." if told else ""
    return f"{said} Fit the opening.".strip() if FIT in needs else said


def says_only_what_is_missing(message: str, needs: tuple[str, ...]) -> bool:
    """Tell whether a message says nothing but that facts are missing: several of them can be told as one.

    Examples
    --------
    >>> says_only_what_is_missing(unknown(("leaf.thickness_mm",)).message, ("leaf.thickness_mm",))
    True
    """
    return bool(needs) and message == unknown(needs).message


def parted(needs: Iterable[str]) -> list[tuple[str, ...]]:
    """Part missing facts by where they are filled in, survey or catalogue, each once; a place without any is left out.

    Examples
    --------
    >>> parted(("part U.cells", "leaf.width_mm", "part U.cells"))
    [('leaf.width_mm',), ('part U.cells',)]
    """
    once = tuple(dict.fromkeys(needs))
    of_parts = tuple(need for need in once if need.startswith("part "))
    return [each for each in (tuple(need for need in once if need not in of_parts), of_parts) if each]


def aside_words(given: OpeningInput) -> str:
    """Say where the reader of an opening without a leaf stands sideways.

    Examples
    --------
    >>> from hwsched.values import Catalogue, Opening, Settings
    >>> def told(mm):
    ...     opening = Opening("1", "L1", form="lift", reader_aside_mm=mm)
    ...     return aside_words(OpeningInput(opening, (), (), Catalogue({}, ""), settings=Settings("mm")))
    >>> told(150.0), told(-150.0)
    ("150 mm right of the entrance's edge, as one faces it", "150 mm left of the entrance's edge, as one faces it")
    >>> told(None)
    'unknown: needs opening: Reader right (minus: left) of the entrance'
    """
    aside = given.opening.reader_aside_mm
    if aside is None:
        return phrase("unknown: needs {label}", label=label_of(READER_ASIDE))
    shown = length(given, abs(aside))
    if aside < 0:
        return phrase("{shown} left of the entrance's edge, as one faces it", shown=shown)
    return phrase("{shown} right of the entrance's edge, as one faces it", shown=shown)


READER_ASIDE: Final = "opening.reader_aside_mm"


def unless_glass(leaf: Leaf, said: Iterable[Verdict]) -> Iterable[Verdict]:
    """Return what is said of a leaf that is none of glass; where nobody told its material, that this is to be told."""
    found = tuple(said)
    return (unknown(("leaf.material",), "leaf"),) if found and leaf.material is None else found


def unknown(needs: tuple[str, ...], about: str = "", cure: str = "") -> Verdict:
    """Say that nothing was proved because facts are missing.

    Examples
    --------
    >>> unknown(("leaf.thickness_mm",)).message
    'Unknown: needs leaf: Leaf thickness.'
    """
    named = tuple(dict.fromkeys(needs))
    where = "catalogue" if all(need.startswith("part ") for need in named) else "survey"
    return Verdict(
        f"Unknown: needs {'; '.join(label_of(need) for need in named)}.",
        cure or f"Complete the {where}: {'; '.join(label_of(need) for need in named)}.",
        about=about,
        needs=named,
    )
