"""Steps that bring a supply's wire to where the unit comes."""

from hwsched.attributes.of_parts import FORM
from hwsched.language import phrase
from hwsched.rules.network.across_leaf import THROUGH
from hwsched.rules.reading import in_role
from hwsched.work import cautions, tools
from hwsched.work.situation import Situation
from hwsched.work.step import StepKind
from hwsched.work.steps.bench import at_unit
from hwsched.work.steps.drilling import hollow
from hwsched.work.steps.release import fed_release, released


def _transfer(s: Situation) -> str:
    part = in_role(s.given, s.fit, "power-transfer")
    if part is not None and part.text_of(FORM) == "transfer-hinge":
        return phrase(
            "Take the leaf's weight on wedges, exchange the hinge named in the wiring for the transfer "
            "hinge, its wires led clear of the screws; the leaf swings as before."
        )
    return phrase(
        "Fit the door loop at the hinge side, so that it hangs free from closed to fully open and is "
        "not pinched between."
    )


def _wire(s: Situation) -> str:
    if s.leaf is None:
        return phrase("Lay the wire from the supply to where the unit comes, apart from mains wiring.")
    wire = phrase("the wire")
    if fed_release(s):
        # Pulled together: through a bore with a wire in it no second one goes.
        wire = phrase("the wire and the pair for the {what}", what=released(s))
    goal = phrase("the unit's pocket") if s.in_edge else phrase("the access hole")
    if not s.in_edge and not s.holes("cable", "channel"):
        # Along the face of glass nothing is drilled.
        goal = phrase("where the unit comes")
    if s.has(THROUGH):
        return phrase(
            "Lay {wire} over the power transfer and in the raceway to {goal}; close the raceway.", wire=wire, goal=goal
        )
    if s.holes(THROUGH):
        pushed = (
            phrase("with a leader")
            if any(hole.tool == "installer-bit" for hole in s.holes(THROUGH))
            else phrase("with a pull rod")
        )
        return phrase(
            "Pull {wire} over the power transfer, in at the hinge edge and {pushed} across the leaf to "
            "{hollow}, then out at {goal}; a grommet where it passes sheet.{beside}",
            wire=wire,
            pushed=pushed,
            hollow=hollow(s),
            goal=goal,
            beside=phrase(" It lies beside the case's place, not in it.") if s.cased else "",
        )
    return phrase(
        "Lay {wire} over the power transfer to {goal}; leave the loop that the hinge side needs.",
        wire=wire,
        goal=goal,
    )


def _measured(s: Situation) -> str:
    """Say how the wire is tried before the unit comes: nobody else ties its far end."""
    far, live = phrase("where the wiring shows"), phrase("Switch the output on")
    plus = phrase("that the wiring calls plus")
    if s.has("supply"):
        # Of one opening alone nobody draws the wiring.
        far, live, plus = (
            phrase("to the supply's output"),
            phrase("Once licensed hands have connected its mains, switch the output on"),
            phrase("from its plus"),
        )
    return phrase(
        "With the output off connect the wire's far end {far}. {live} and measure at this end: volts "
        "in range, plus on the wire {plus}. Mark it, and switch the output off again.",
        far=far,
        live=live,
        plus=plus,
    )


SUPPLY = (
    StepKind(
        "supply-mount",
        "wall",
        lambda s: phrase(
            "Mount the supply{part} where the owner and its listing allow; its mains connection waits for licensed hands.",
            part="" if s.leaf is None else phrase(" off the leaf,"),
        ),
        when=lambda s: s.has("supply", "standby-battery"),
        after=("supply-off",),
        parts=lambda s: s.parts("supply", "standby-battery"),
        tools=lambda s: (tools.SCREWDRIVERS, tools.LEVEL),
        cautions=(cautions.LOW_VOLTAGE,),
        tasks=("mount-supply",),
    ),
    StepKind(
        "transfer",
        "hinge edge",
        _transfer,
        when=lambda s: s.has("power-transfer"),
        after=("leaf-hung",),
        parts=lambda s: s.parts("power-transfer"),
        tools=lambda s: (tools.SCREWDRIVERS,),
        brings="wire-way",
        tasks=("fit-transfer-hinge", "fit-door-loop"),
    ),
    StepKind(
        "raceway",
        "inside",
        "Fit the raceway level over the inside face, from the hinge edge to where the unit comes; nothing is drilled "
        "through the leaf for it.",
        when=lambda s: s.has(THROUGH),
        after=("clean",),
        parts=lambda s: s.parts(THROUGH),
        tools=lambda s: (tools.LEVEL, tools.SCREWDRIVERS, tools.RULE),
        brings="wire-way",
        tasks=("fit-surface-raceway",),
    ),
    StepKind(
        "wire-in",
        lambda s: "wall" if s.leaf is None else "hinge edge",
        _wire,
        when=lambda s: s.on_supply,
        after=("supply-mount", "wire-way", "line-holes"),
        parts=lambda s: s.parts("wire"),
        tools=lambda s: (tools.PULL_WIRE, tools.STRIPPER),
        cautions=(cautions.LOW_VOLTAGE,),
        tasks=("lay-wire",),
    ),
    StepKind(
        "polarity",
        lambda s: "wall" if s.leaf is None else "inside",
        _measured,
        when=lambda s: s.on_supply,
        after=("wire-in",),
        tools=lambda s: (tools.STRIPPER, tools.SCREWDRIVERS, tools.METER, tools.TAPE),
        cautions=(cautions.LOW_VOLTAGE,),
        readings=lambda s: at_unit(s, phrase("Volts at the wire's end, nothing connected")),
    ),
)
