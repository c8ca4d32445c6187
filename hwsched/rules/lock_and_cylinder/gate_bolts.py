"""Rule: a bolted gate lock has bolts that hold in its gate and are long enough to pass gate and case."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import CASE_DEPTH_MM, FORM, HEAD, LEAF_MATERIAL, LENGTH_MM, MOUNTING
from hwsched.rules.practice import lock_fasteners
from hwsched.rules.reading import SKINNED, entry, lock_leaf, lock_part, part_fact
from hwsched.rules.rounding import EQUAL_MM
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, Leaf, OpeningInput, Part


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    part, leaf = lock_part(given, fit), lock_leaf(given)
    if part is None or leaf is None:
        return
    for wanted in lock_fasteners(part.kind, part.text_of(MOUNTING) or ""):
        if leaf.material is None:
            yield unknown(("leaf.material",), part.number)
            continue
        held = (entry(given, each) for each in fit.parts if each.role == "fastener")
        bolts = [bolt for bolt in held if bolt is not None and bolt.text_of(FORM) == wanted.form]
        material, form = leaf.material.replace("-", " "), wanted.form.replace("-", " ")
        if not bolts:
            yield Verdict(
                f"The catalogue has no {form} for a gate of {material}; the lock wants {wanted.quantity:g}.",
                "Add the bolt to the catalogue, or take a lock that is welded on.",
                about=part.number,
            )
        for bolt in bolts:
            if bolt.text_of(LEAF_MATERIAL) not in (leaf.material, None):
                yield Verdict(
                    f"It is made for {bolt.text_of(LEAF_MATERIAL)}; the gate is {material}.", about=bolt.number
                )
            yield from _head(leaf, bolt)
            yield from _length(given, part, leaf, bolt, limits["nut_mm"])


def _head(leaf: Leaf, bolt: Part) -> Iterable[Verdict]:
    # In tube the hole is drilled, and round: a square neck stands on its rim, turns with the nut and never draws tight.
    if leaf.material not in SKINNED:
        return
    head = bolt.text_of(HEAD)
    if head is None:
        yield unknown((part_fact(bolt, HEAD),), bolt.number)
    elif head == "carriage":
        yield Verdict(
            f"Its square neck does not bed in a drilled hole in {(leaf.material or '').replace('-', ' ')}: it turns "
            "with its nut.",
            "Take bolts with a hexagon or button head, or weld-on studs.",
            about=bolt.number,
        )


def _length(given: OpeningInput, part: Part, leaf: Leaf, bolt: Part, nut: float) -> Iterable[Verdict]:
    thick, deep, long = leaf.thickness_mm, part.number_of(CASE_DEPTH_MM), bolt.number_of(LENGTH_MM)
    if thick is None or deep is None or long is None:
        needs = (
            ("leaf.thickness_mm", thick),
            (part_fact(part, CASE_DEPTH_MM), deep),
            (part_fact(bolt, LENGTH_MM), long),
        )
        yield unknown(tuple(name for name, value in needs if value is None), bolt.number)
        return
    needed = thick + deep + nut
    if long < needed - EQUAL_MM:
        yield Verdict(
            f"The bolt is {length(given, long)} long; gate of {length(given, thick)}, case of {length(given, deep)}, "
            f"and a nut of {length(given, nut)} want {length(given, needed)}: short by {length(given, needed - long)}.",
            "Add a longer bolt to the catalogue.",
            values={"bolt_mm": long, "needed_mm": needed, "short_mm": needed - long},
            about=bolt.number,
        )


RULE = Rule(
    id="gate-bolts",
    title="Bolts of a gate lock hold and are long enough",
    discipline="lock-and-cylinder",
    severity="error",
    basis="common practice; the arithmetic is geometry",
    cure="Add the bolt to the catalogue.",
    judge=_judge,
    limits=(
        Limit(
            "nut_mm",
            8.0,
            "What washer and nut take of a bolt's length.",
            "M8: washer 1.6 and nut 6.4, rounded; ISO 7089 and ISO 4032, from memory, unverified",
            unit="mm",
            low=0.0,
            high=60.0,
        ),
    ),
)
