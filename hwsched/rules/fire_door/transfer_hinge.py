"""Rule: a transfer hinge has the size of the hinge whose place it takes."""

from collections.abc import Iterable
from typing import Final

from hwsched.attributes.of_parts import FORM, HINGE_HEIGHT_MM, HINGE_WIDTH_MM
from hwsched.rules.reading import entry, lock_leaf, on_leaf, part_fact
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput

_SIZES: Final = (("height_mm", HINGE_HEIGHT_MM, "high"), ("width_mm", HINGE_WIDTH_MM, "wide when open"))


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf = lock_leaf(given)
    for fit_part in fit.parts:
        part = entry(given, fit_part)
        if fit_part.role != "power-transfer" or part is None or part.text_of(FORM) != "transfer-hinge":
            continue
        hinge = next((i for i in given.items if i.kind == "hinge" and (leaf is None or on_leaf(i, leaf))), None)
        needs = [f"existing_item.{name}" for name, _, _ in _SIZES if hinge is None or getattr(hinge, name) is None]
        needs += [part_fact(part, name) for _, name, _ in _SIZES if part.number_of(name) is None]
        if needs:
            yield unknown(
                tuple(needs),
                part.number,
                "Measure the hinge that the transfer hinge replaces: its height, and its width when open."
                if any(n.startswith("existing") for n in needs)
                else "",
            )
            continue
        for name, of_part, word in _SIZES:
            stands, new = getattr(hinge, name), part.number_of(of_part)
            if new is not None and abs(new - stands) > limits["off_mm"]:
                yield Verdict(
                    f"The transfer hinge is {length(given, new)} {word}, the hinge there "
                    f"{length(given, stands)}: it does not "
                    "fill the preparation.",
                    values={"hinge_mm": stands, "part_mm": new},
                    about=part.number,
                )


RULE = Rule(
    id="transfer-hinge",
    title="Transfer hinge of the existing hinge's size",
    discipline="fire-door",
    severity="error",
    basis="BHMA A156.1 and NFPA 80, hinges by size and weight; a hinge of another size is another preparation, common "
    "practice",
    cure="Take the transfer hinge in the size and weight of the hinge that is there, listed as that one is.",
    judge=_judge,
    limits=(
        Limit(
            "off_mm",
            1.6,
            "By which height and width may differ: 1/16 in.",
            "common practice",
            unit="mm",
            low=0.0,
            high=10.0,
        ),
    ),
    defers=True,
)
