"""Rule: the leaf's bores, backset and thickness suit the bored lever lock."""

from collections.abc import Iterable

from hwsched.calc.calculator import InputError
from hwsched.calc.opening.bored_prep import PrepFound, PrepResult, PrepTrouble, bored_prep
from hwsched.rules.reading import lock_part
from hwsched.rules.rounding import EQUAL_MM, Allowance, allowance, by_rounding
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.preparation import found_prep, wanted_prep
from hwsched.rules.wording import in_units, label_of, length, unknown
from hwsched.values import Fit, OpeningInput

_FACTS = {
    "leaf_mm": "leaf.thickness_mm",
    "cross_bore_mm": "existing_item.cross_bore_mm",
    "edge_bore_mm": "existing_item.edge_bore_mm",
    "backset_mm": "existing_item.backset_mm",
}


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    part = lock_part(given, fit)
    if part is None or part.kind != "bored-lever-lock":
        return
    wanted = wanted_prep(part)
    if wanted is None:
        yield unknown((f"part {part.number}.cross_bore_mm",), part.number)
        return
    found, owed = found_prep(given, wanted)
    try:
        result = bored_prep(wanted, found, tolerance_mm=limits["tolerance_mm"], min_edge_wall_mm=limits["edge_wall_mm"])
    except InputError as error:
        fact = _FACTS.get(error.field.removeprefix("found."))
        # A calculator's field is a name of the program's and says nothing to a person.
        what = label_of(fact) if fact is not None else error.field
        yield Verdict(
            f"Preparation and leaf contradict each other: {what} {in_units(given, error.message)}.", about=part.number
        )
        return
    for trouble in result.cannot:
        beyond = trouble.off_mm - (limits["tolerance_mm"] if trouble.item == "backset" else 0.0)
        allowed = _allowed(trouble, found, result, (wanted.leaf_low_mm, wanted.leaf_high_mm, wanted.cross_bore_mm))
        if beyond <= allowed.mm + EQUAL_MM:
            yield by_rounding(given, allowed, beyond, part.number)
            continue
        yield Verdict(
            f"The {trouble.item} is {length(given, trouble.off_mm)} off what the lock takes ({trouble.reason}).",
            values={"off_mm": trouble.off_mm},
            about=part.number,
        )
    for allowed, short in owed.values():
        yield by_rounding(given, allowed, short, part.number)
    if result.needs:
        yield unknown(tuple(_FACTS[need] for need in result.needs), part.number)


def _allowed(trouble: PrepTrouble, found: PrepFound, result: PrepResult, made: tuple[float, ...]) -> Allowance:
    """Return what a trouble may owe to the rounding of the one length that it is about."""
    one = {
        "leaf thickness": ("leaf_mm", found.leaf_mm),
        "backset": ("backset_mm", found.backset_mm),
        # A bore that breaks out of the edge is off by other lengths too.
        "cross bore": ("cross_bore_mm", found.cross_bore_mm if (result.edge_to_bore_mm or 0.0) > 0.0 else None),
    }
    if trouble.item not in one:
        return Allowance(0.0)
    name, value = one[trouble.item]
    return allowance([(_FACTS[name], value, 1.0)], made)


RULE = Rule(
    id="bored-preparation",
    title="Bores, backset and thickness suit the lever lock",
    discipline="lock-and-cylinder",
    severity="error",
    basis="160 and 161 preparations, locksmiths' dictionary (LIST/ALOA); tolerance SDI 111-24",
    cure="Take a lock made for the leaf's backset, bores and thickness. A bore too small can be enlarged.",
    judge=_judge,
    slot="lock",
    limits=(
        Limit(
            "tolerance_mm",
            25.4 / 16,
            "How far bore and backset may be off.",
            "SDI 111-24, linear tolerance unless noted",
            unit="mm",
            low=0.0,
            high=25.0,
        ),
        Limit(
            "edge_wall_mm",
            3.175,
            "Wall to be left on each side of the edge bore.",
            "from memory, unverified",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)
