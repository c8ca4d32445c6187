"""The lines of the test sheet: what is tried at the end, and what is expected."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final, Literal

from hwsched.attributes.of_parts import FAIL
from hwsched.language import phrase
from hwsched.rules.reading import entry, remains
from hwsched.work.situation import Situation, always
from hwsched.work.step import Check, Reading
from hwsched.work.steps.bench import at_unit
from hwsched.work.steps.release import fed_release


@dataclass(frozen=True, slots=True)
class _Line:
    text: str
    expected: str | Callable[[Situation], str]
    when: Callable[[Situation], bool] = always
    turn: Literal["each", "leaf"] = "each"
    reading: Callable[[Situation], tuple[Reading, ...]] = lambda _: ()


def without_power(s: Situation) -> str:
    """Say how an opening is opened with power off or cells dead: what its parts say of it, and what nobody has said.

    A cylinder or lock on the key side changes nothing of how the inside is worked (common practice).
    """
    parts = (entry(s.given, part) for part in s.fit.parts)
    told = [part.text_of(FAIL) for part in parts if part is not None] + [
        item.fail for item in s.given.items if remains(item)
    ]
    modes = tuple(dict.fromkeys(mode for mode in told if mode))
    if modes:
        return ", ".join(modes)
    if s.leaf is None:
        return phrase("unknown: needs the fail mode of what the reader opens")
    return phrase("inside as before, key side unknown: needs its maker's word")


def _leaf(s: Situation) -> bool:
    return s.leaf is not None


def _pair(s: Situation) -> bool:
    return s.given.opening.form == "pair"


def _connected(s: Situation) -> bool:
    return s.given.opening.controller_output not in (None, "none")


def _door(s: Situation) -> bool:
    return _leaf(s) and s.lock_form not in ("gate", "cabinet")


_LINES: Final = (
    _Line("The programmed key, leaf open", "10 times of 10", _door),
    _Line("The programmed key, gate open", "10 times of 10", lambda s: _leaf(s) and s.lock_form == "gate"),
    _Line("The programmed key, cabinet open", "10 times of 10", lambda s: _leaf(s) and s.lock_form == "cabinet"),
    _Line("The programmed key", "10 times of 10", lambda s: s.leaf is None),
    _Line("A key without permission is refused", "refused"),
    _Line("Bolt or latch, closed", "fully out and back", _leaf),
    _Line("From inside, powered", "one movement opens", lambda s: s.egress and _leaf(s)),
    _Line("From inside, no power", "one movement opens", lambda s: s.egress and _leaf(s)),
    _Line("The leaf let go anywhere", "closes and latches", lambda s: s.rated and _leaf(s) and not _pair(s)),
    _Line("Both leaves let go, anywhere", "close in order, latch", lambda s: s.rated and _leaf(s) and _pair(s)),
    _Line("What the controller does", "as its contractor says", lambda s: not _leaf(s) and _connected(s)),
    _Line("Fire service or alarm", "goes before the reader", lambda s: not _leaf(s) and _connected(s)),
    _Line("Fire label on leaf and frame", "can be read", lambda s: s.rated and _leaf(s), "leaf"),
    _Line("Cylinder head in its collar", "level with its rim", lambda s: s.has("collar")),
    _Line("Lead and cover", "unpinched, unforced", lambda s: s.fit.cable is not None),
    _Line(
        "Volts at unit, at rest",
        "",
        lambda s: s.unit is not None and s.fit.power != "none",
        reading=lambda s: at_unit(s, phrase("Voltage at the unit, nothing operating")),
    ),
    _Line(
        "Volts at unit, operating",
        "",
        lambda s: s.unit is not None and s.fit.power != "none",
        reading=lambda s: at_unit(s, phrase("Voltage at the unit while it operates"), operating=True),
    ),
    _Line("Strike or magnet in the frame", "lets go, then holds", fed_release),
    _Line("On loss of the supply", without_power, lambda s: s.on_supply),
    _Line("Clock, and record of the tests", "right, shown", lambda s: s.unit is not None),
)


def checks(situation: Situation) -> tuple[Check, ...]:
    """Return the lines of the test sheet of a lock point."""
    found = []
    for line in _LINES:
        if (line.turn == "leaf" and not situation.new_leaf) or not line.when(situation):
            continue
        reading = next(iter(line.reading(situation)), None)
        expected = line.expected if isinstance(line.expected, str) else line.expected(situation)
        found.append(Check(line.text, reading.expected if reading is not None else expected, reading))
    return tuple(found)
