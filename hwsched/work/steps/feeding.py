"""Steps that feed the unit and try it before it is closed."""

from hwsched.attributes.of_parts import TERMINAL_MINUS, TERMINAL_PLUS
from hwsched.language import phrase
from hwsched.work import cautions, tools
from hwsched.work.situation import Situation
from hwsched.work.step import StepKind, Where
from hwsched.work.steps.bench import at_unit
from hwsched.work.steps.release import fed_release, released


def _where(s: Situation) -> Where:
    return "wall" if s.on_wall else "hand" if s.in_edge else "inside"


def _terminals(s: Situation) -> str:
    unit = s.unit
    plus = unit.text_of(TERMINAL_PLUS) if unit is not None else None
    minus = unit.text_of(TERMINAL_MINUS) if unit is not None else None
    named = (
        phrase("plus to {plus}, minus to {minus}", plus=plus, minus=minus)
        if plus and minus
        else phrase("plus and minus as the unit is marked")
    )
    said = phrase("With the output off connect the wire: {named}; no strand stands out.", named=named)
    if not fed_release(s):
        return said
    more = phrase("The pair of the {what} goes to the unit's output for it, as its sheet says.", what=released(s))
    return f"{said} {more}"


FEEDING = (
    StepKind(
        "connect-supply",
        _where,
        _terminals,
        when=lambda s: s.on_supply,
        after=("unit-on",),
        tools=lambda s: (tools.STRIPPER, tools.SCREWDRIVERS),
        cautions=(cautions.LOW_VOLTAGE,),
        brings="connected",
        tasks=("connect-opening",),
    ),
    StepKind(
        "pack-in",
        _where,
        "Put the pack back in, polarity as marked.",
        when=lambda s: s.fit.power == "battery" and s.unit is not None,
        after=("connected",),
        tools=lambda s: (tools.METER,),
        cautions=(cautions.CELLS,),
        readings=lambda s: at_unit(s, phrase("Volts of the pack, nothing operating")),
        brings="fed",
    ),
    StepKind(
        "power-on",
        _where,
        "Switch the output on and measure at the unit.",
        when=lambda s: s.on_supply,
        after=("connected",),
        tools=lambda s: (tools.METER,),
        cautions=(cautions.LOW_VOLTAGE,),
        readings=lambda s: at_unit(s, phrase("Volts at the unit, nothing operating")),
        brings="fed",
    ),
    StepKind(
        "set-clock",
        _where,
        "Set the clock here: no coin cell keeps it.",
        when=lambda s: s.unit is not None and not s.has("coin-cell"),
        after=("fed",),
        tools=lambda s: () if s.of_form("credential", "programming-key") else (tools.PROGRAMMER,),
    ),
    StepKind(
        "try-key",
        "door",
        lambda s: phrase(
            "Try the programmed key, {leaf} open: unit answers, lock follows both ways. If not, look now: the unit is "
            "open.",
            leaf=s.leaf_word,
        ),
        when=lambda s: s.unit is not None and s.leaf is not None,
        after=("set-clock",),
    ),
    StepKind(
        "try-reader",
        "wall",
        "Try the programmed key: the unit answers. If not, look now: the unit is open.",
        when=lambda s: s.unit is not None and s.leaf is None,
        after=("set-clock",),
        brings="try-key",
    ),
)
