"""Rule: a lock on the stair side of a stair door needs re-entry, and the leaf stays latched."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import FAIL
from hwsched.rules.reading import entry, leafless, remains
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.ways_out import SIDE, entered_again_from, holding, locked_on, on_exit
from hwsched.rules.wording import unknown
from hwsched.values import Fit, Opening, OpeningInput

_RELEASED = {
    "one-place": "from one place",
    "fire-alarm": "on the fire alarm",
    "both": "from one place and on the fire alarm",
}


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if leafless(given) or given.opening.form in ("cabinet", "gate") or given.opening.stair is False:
        return
    if given.opening.stair is None:
        yield unknown(("opening.stair",), "stair")
        return
    yield from _by_side(given, limits)
    for fit_part in fit.parts:
        part = entry(given, fit_part)
        # Re-entry unlocks without unlatching; a strike without power lets go of the latch, and the leaf no longer
        # holds shut.
        if fit_part.role == "strike" and part is not None and part.text_of(FAIL) == "fail-safe":
            yield Verdict(
                "A fail-safe strike unlatches the stair door and is no answer to re-entry.",
                "Take a fail-safe lock or fail-safe trim that stays latched.",
                about=fit_part.part,
                severity="error",
            )
    for item in given.items:
        if item.kind == "electric-strike" and remains(item) and item.fail == "fail-safe":
            yield Verdict(
                "The fail-safe strike that stays unlatches the stair door and is no answer to re-entry.",
                "Take a fail-safe lock or fail-safe trim that stays latched.",
                about="electric strike",
                severity="error",
            )


def _by_side(given: OpeningInput, limits: Limits) -> Iterable[Verdict]:
    faces = entered_again_from(given)
    if on_exit(given) and faces is None:
        yield unknown(("opening.egress_toward",), "stair")
        return
    if not on_exit(given) or not faces:
        yield Verdict(
            "Stair door: a lock on the stair side needs a re-entry release that unlocks without unlatching, on "
            "the fire "
            "alarm or from one place.",
            about="stair",
        )
        return
    for face in faces:
        held = [(lock, *locked_on(lock, face)) for lock in holding(given)]
        if any(locked for _, locked, _ in held):
            yield from _release(given.opening, SIDE[face], limits)
            for lock, locked, _ in held:
                if locked and lock.fail == "fail-secure":
                    yield Verdict(
                        f"The fail-secure lock stays locked on the {SIDE[face]} without power: re-entry wants "
                        "one that is "
                        "fail-safe and stays latched.",
                        about="lock",
                        severity="error",
                    )
        elif missing := sorted({fact for _, locked, fact in held if locked is None}):
            yield unknown(tuple(f"existing_item.{fact}" for fact in missing), "stair")


def _release(opening: Opening, side: str, limits: Limits) -> Iterable[Verdict]:
    """Judge how a stair side that can be locked is unlocked."""
    release, storeys, most = opening.stair_release, opening.storeys_served, limits["most_storeys"]
    if release is None:
        yield unknown(("opening.stair_release",), "stair")
    elif release != "none":
        alone = {"ibc": "fire-alarm", "nfpa-101": "one-place", "both": None}.get(opening.code or "")
        if opening.code is None:
            yield unknown(("opening.code",), "stair")
        elif release == alone or (opening.code == "both" and release != "both"):
            yield Verdict(
                f"The stair door is unlocked on the {side} {_RELEASED[release]} only: the IBC wants it from one "
                "place, NFPA "
                "101 on the fire alarm, save in stairs of few storeys.",
                about="stair",
            )
        else:
            yield Verdict(
                f"Stair door: the {side} can be locked and is unlocked {_RELEASED[release]}; it must stay "
                "latched, and what "
                "is new on it must hear the same signal, a unit on batteries included.",
                about="stair",
                severity="note",
            )
    elif storeys is None or opening.code is None:
        missing = [name for name in ("storeys_served", "code") if getattr(opening, name) is None]
        yield unknown(tuple(f"opening.{name}" for name in missing), "stair")
    elif opening.code == "nfpa-101" and storeys <= most:
        yield Verdict(
            f"Stair door without re-entry: NFPA 101 lets stairs of {most:.0f} storeys or fewer be, and this one serves "
            f"{storeys}.",
            values={"storeys": float(storeys), "most_storeys": most},
            about="stair",
            severity="note",
        )
    else:
        yield Verdict(
            f"The stair door can be locked on the {side} and nothing unlocks it; the stair serves {storeys} storeys.",
            values={"storeys": float(storeys), "most_storeys": most},
            about="stair",
            severity="error",
        )


RULE = Rule(
    id="stair-re-entry",
    title="Stair re-entry",
    discipline="egress",
    severity="warning",
    basis="IBC 1010.2.7 (2021); NFPA 101, 7.2.1.5.8 (exceptions: four storeys or fewer, selected re-entry), secondary "
    "copies",
    cure="Have the release and its tie-in decided by the authority before ordering.",
    judge=_judge,
    limits=(
        Limit(
            "most_storeys",
            4.0,
            "Storeys up to which NFPA 101 asks no re-entry.",
            "NFPA 101, 7.2.1.5.8, secondary copy",
            unit="",
            low=1.0,
            high=20.0,
        ),
    ),
    defers=True,
)
