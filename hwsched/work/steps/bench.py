"""Steps before the way to the site: the box, the key and the unit, the new cylinder put together."""

from hwsched.attributes.of_parts import CELLS, PACK_HIGH_V, PACK_LOW_V, SUPPLY_HIGH_V, SUPPLY_LOW_V, VOLTAGE_V
from hwsched.language import phrase, phrase_of_count
from hwsched.rules.reading import entry
from hwsched.work import cautions, tools
from hwsched.work.situation import Situation
from hwsched.work.step import Reading, StepKind


def at_unit(s: Situation, what: str, *, operating: bool = False) -> tuple[Reading, ...]:
    """Return the reading of what the unit is fed with.

    A supply, and a pack while it operates, must give what the unit works at. New cells at rest give their nominal
    voltage or more (common practice): a pack that only just lasts an operation is not what one leaves at a door.
    """
    unit = s.unit
    if unit is None or s.fit.power == "none":
        return ()
    names = (SUPPLY_LOW_V, SUPPLY_HIGH_V) if s.on_supply else (PACK_LOW_V, PACK_HIGH_V)
    low, high = (unit.number_of(name) for name in names)
    needs = (
        phrase("part {number}, lowest and highest supply voltage that it works at", number=unit.number)
        if s.on_supply
        else phrase("part {number}, lowest and highest pack voltage that it works at", number=unit.number)
    )
    if not s.on_supply and not operating:
        cell = next((entry(s.given, part) for part in s.parts("battery")), None)
        each, count = cell.number_of(VOLTAGE_V) if cell is not None else None, unit.number_of(CELLS)
        if each is None or count is None:
            low, needs = None, phrase("part {number}, its cells and their voltage", number=unit.number)
        else:
            low = each * count
    return (Reading(what, "V", low, high, needs),)


def _power(s: Situation) -> str:
    if s.on_supply:
        return phrase("Connect the unit to a bench supply set within the reading, plus and minus as marked.")
    count = sum(part.quantity for part in s.parts("battery"))
    return phrase_of_count(
        "Put the cell into the pack, polarity as marked.",
        "Put the {count} cells into the pack, polarity as marked.",
        int(count),
    )


def _program(s: Situation) -> str:
    clock = phrase(", set the clock") if s.has("coin-cell") else ""
    return phrase(
        "Program key and unit{clock}. Try them: this key works, one without permission is refused.", clock=clock
    )


def _feed_off(s: Situation) -> str:
    kept = phrase(": the coin cell keeps time") if s.has("coin-cell") else ""
    return f"{phrase('Take the bench supply off') if s.on_supply else phrase('Take the pack out')}{kept}."


def _built(s: Situation) -> str:
    named = phrase(" and ").join(map(s.called, s.parts("cam", "tailpiece")))
    cut = s.fit.stack.cut_off_mm if s.fit.stack is not None else 0.0
    locked = phrase(", thread lock on its screws") if s.of_form("consumable", "thread-lock") else ""
    off = phrase(" Break {length} off the tailpiece.", length=s.length(cut)) if cut else ""
    return phrase(
        "Screw the {named} to the new cylinder{locked}; the lead stays clear of it.{off}",
        named=named,
        locked=locked,
        off=off,
    )


BENCH = (
    StepKind("lay-out-box", "bench", "Lay out the box contents and tick them off.", turn="first", brings="ready"),
    StepKind(
        "coin-cell",
        "bench",
        "Put the coin cell into the unit, plus as marked.",
        when=lambda s: s.has("coin-cell"),
        after=("lay-out-box",),
        parts=lambda s: s.parts("coin-cell"),
        cautions=(cautions.CELLS,),
        on_record=(("unit", "built"),),
        done_text="The coin backup cell is in the unit.",
        brings="ready",
    ),
    StepKind(
        "bench-power",
        "bench",
        _power,
        when=lambda s: s.unit is not None and s.fit.power != "none",
        after=("coin-cell",),
        parts=lambda s: s.parts("battery"),
        tools=lambda s: (tools.METER, tools.BENCH_SUPPLY) if s.on_supply else (tools.METER,),
        cautions=(cautions.CELLS, cautions.STATIC),
        readings=lambda s: at_unit(s, phrase("Volts on the bench")),
        brings="ready",
        on_record=(("unit", "programmed"), ("unit", "tested")),
        done_text="The unit was fed.",
    ),
    StepKind(
        "program",
        "bench",
        _program,
        when=lambda s: s.unit is not None,
        after=("bench-power",),
        parts=lambda s: s.parts("credential"),
        tools=lambda s: () if s.of_form("credential", "programming-key") else (tools.PROGRAMMER,),
        brings="ready",
        tasks=("programme-and-test",),
        on_record=(("unit", "programmed"), ("unit", "tested")),
        done_text="Key and unit are programmed with each other, and tried.",
    ),
    StepKind(
        "feed-off",
        "bench",
        _feed_off,
        when=lambda s: s.unit is not None and s.fit.power != "none",
        after=("program",),
        cautions=(cautions.COIN,),
        brings="ready",
        on_record=(("unit", "programmed"), ("unit", "tested")),
        done_text="What fed it is off again.",
    ),
    StepKind(
        "build-cylinder",
        "bench",
        _built,
        when=lambda s: s.new_lock == "mortise-cylinder" and s.has("cam", "tailpiece"),
        after=("lay-out-box",),
        parts=lambda s: (*s.parts("cam", "tailpiece"), *s.of_form("consumable", "thread-lock")),
        tools=lambda s: (tools.SCREWDRIVERS, *((tools.PLIERS,) if s.has("tailpiece") else ())),
        brings="ready",
        on_record=(("cylinder", "built"),),
        done_text="Cam or tailpiece is screwed to the new cylinder.",
    ),
)
