"""Steps at what the unit lets go in the frame: an electric strike or an electromagnetic lock, new or staying."""

from hwsched.attributes.of_parts import TERMINAL_MINUS, TERMINAL_PLUS
from hwsched.language import phrase
from hwsched.rules.network.devices import releases_kept
from hwsched.rules.reading import RELEASES, entry
from hwsched.values import FitPart, Part
from hwsched.work import cautions, tools
from hwsched.work.situation import Situation
from hwsched.work.step import StepKind


def released(s: Situation) -> str:
    """Name what the unit lets go; empty where it works the lock alone."""
    kinds: list[str | None] = [part.kind for part in _parts(s)]
    if s.given.point.number == 1:
        kinds += [item.kind for item in releases_kept(s.given)]
    names: dict[str | None, str] = {
        "electric-strike": phrase("electric strike"),
        "electromagnetic-lock": phrase("electromagnetic lock"),
    }
    return phrase(" and the ").join(dict.fromkeys(names[kind] for kind in kinds))


def fed_release(s: Situation) -> bool:
    """Tell whether the unit's supply also feeds something in the frame that it lets go."""
    return s.on_supply and bool(released(s))


def _new(s: Situation) -> tuple[FitPart, ...]:
    return tuple(part for part in s.parts("strike") if (known := entry(s.given, part)) and known.kind in RELEASES)


def _parts(s: Situation) -> list[Part]:
    return [known for part in _new(s) if (known := entry(s.given, part)) is not None]


def _mount(s: Situation) -> str:
    called = ", ".join(s.called(part) for part in _new(s))
    if any(part.kind == "electromagnetic-lock" for part in _parts(s)):
        return phrase(
            "Fix {part} under the frame's head and its armature to the leaf by their own template: leaf shut, the "
            "armature meets it flat and can still tilt.",
            part=called,
        )
    return phrase(
        "Take out the old strike and cut the frame for {part} by its own template, no farther than it says. Leaf shut, "
        "the latch drops in without force or play.",
        part=called,
    )


def _connect(s: Situation) -> str:
    plus, minus = (
        next((text for part in _parts(s) if (text := part.text_of(name))), None)
        for name in (TERMINAL_PLUS, TERMINAL_MINUS)
    )
    named = (
        phrase("plus to {plus}, minus to {minus}", plus=plus, minus=minus)
        if plus and minus
        else phrase("plus and minus as its label says")
    )
    return phrase(
        "With the output off connect the pair at the {what}: {named}. A coil without a suppressor of its own gets one "
        "across it.",
        what=released(s),
        named=named,
    )


RELEASE = (
    StepKind(
        "release-mount",
        "frame",
        _mount,
        when=lambda s: bool(_new(s)),
        after=("wedge", "supply-off"),
        parts=_new,
        tools=lambda s: (tools.FRAME_CUTTER, tools.RULE, tools.SCREWDRIVERS, tools.GLASSES),
        cautions=(cautions.FIRE, cautions.DRILL),
        tasks=("fit-release",),
    ),
    StepKind(
        "release-wire",
        "frame",
        lambda s: phrase(
            "Lay the pair for the {what} from {start}, clear of what moves and of screws.",
            what=released(s),
            start=phrase("where the unit comes") if s.leaf is None else phrase("the power transfer in the frame to it"),
        ),
        when=fed_release,
        after=("release-mount", "wire-in"),
        tools=lambda s: (tools.PULL_WIRE, tools.STRIPPER),
        cautions=(cautions.LOW_VOLTAGE,),
    ),
    StepKind(
        "release-connect",
        "frame",
        _connect,
        when=fed_release,
        after=("release-wire", "polarity"),
        tools=lambda s: (tools.STRIPPER, tools.SCREWDRIVERS),
        cautions=(cautions.LOW_VOLTAGE,),
        brings="connected",
        tasks=("connect-release",),
    ),
    StepKind(
        "release-try",
        "frame",
        lambda s: phrase(
            "With the programmed key the {what} lets go while the unit opens, and holds again after.", what=released(s)
        ),
        when=fed_release,
        after=("set-clock",),
        brings="try-key",
    ),
)
