"""Rule: the standby battery holds the hours that are asked."""

from collections.abc import Iterable

from hwsched.rules.rule import SUPPLIES, Inputs, Limit, Limits, Rule, Verdict
from hwsched.rules.wording import short_v
from hwsched.values.power import SupplyResult


def _judge(result: SupplyResult, inputs: Inputs, limits: Limits) -> Iterable[Verdict]:
    supply, found = result.supply, result.standby
    if supply.standby_hours is None or supply.standby_hours == 0 or found is None:
        return
    if supply.temperature_c is None:
        yield Verdict(
            "Unknown: needs the lowest temperature at the battery; 25 C is reckoned.",
            "Fill in the lowest temperature at the battery.",
            about=supply.name,
            needs=("supply.temperature_c",),
        )
    size = f"; the next size is {found.size_ah:g} Ah" if found.size_ah is not None else "; no size suffices"
    by = f" ({found.peukert})" if found.peukert else ""
    more, least = (" or more", "at least ") if found.at_least else ("", "")
    asked = f"{found.hours:g} h at {found.load_a:.3g} A{more} need {least}{found.needed_ah:.2f} Ah{by}"
    values = {"needed_ah": found.needed_ah, "load_a": found.load_a, "hours_h": found.hours}
    if found.held_ah is None:
        yield Verdict(f"{asked}{size}. No standby battery is laid.", values=values, about=supply.name)
    elif found.held_ah < found.needed_ah - 1e-9:
        yield Verdict(
            f"{asked}; {found.held_ah:g} Ah are laid, short by {short_v(found.needed_ah - found.held_ah)} Ah{size}.",
            values={**values, "held_ah": found.held_ah},
            about=supply.battery or "",
        )
    elif found.at_least:
        yield Verdict(
            f"Unknown: whether the {found.held_ah:g} Ah suffice; {asked}.",
            values={**values, "held_ah": found.held_ah},
            about=supply.battery or "",
            needs=tuple(dict.fromkeys((*result.needs, *found.needs))),
        )


RULE = Rule(
    subject=SUPPLIES,
    id="standby-capacity",
    title="Standby capacity",
    discipline="power",
    severity="error",
    basis="sum of current and time with margin (form used with NFPA 72, 1.20 to 1.25), ageing 1.25 and temperature "
    "(beside IEEE 485, from memory)",
    cure="Lay a larger standby battery, or ask for fewer hours.",
    judge=_judge,
    limits=(
        Limit(
            "margin",
            1.25,
            "Factor over the sum of current and time.",
            "NFPA 72 commentary, recent editions",
            unit="",
            low=1.0,
            high=5.0,
        ),
        Limit(
            "ageing",
            1.25,
            "Factor for a battery used until 80 % of its rating.",
            "IEEE 485 / 1188, from memory",
            unit="",
            low=1.0,
            high=3.0,
        ),
        Limit(
            "peukert",
            1.0,
            "Exponent of Peukert's law, stated-hours form; 1: not asked.",
            "lead-acid 1.1 to 1.4",
            unit="",
            low=1.0,
            high=2.0,
        ),
        Limit(
            "rated_hours",
            20.0,
            "Hours of the rating, where the battery does not say.",
            "common practice",
            unit="h",
            low=1.0,
            high=100.0,
        ),
        Limit(
            "release_s",
            5.0,
            "Of an operation, where neither unit nor strike says how long it is held.",
            "common practice of our own, editable",
            unit="s",
            low=0.1,
            high=600.0,
        ),
        Limit(
            "end_share",
            0.875,
            "End voltage, share of nominal, where the battery does not say.",
            "common practice: 1.75 V a lead-acid cell of 2 V",
            unit="",
            low=0.5,
            high=1.0,
        ),
    ),
    defers=True,
)
