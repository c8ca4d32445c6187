"""Rule: delayed egress is a special arrangement with conditions of its own."""

from collections.abc import Iterable

from hwsched.rules.reading import remains
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.ways_out import SIDE, leaving_from
from hwsched.rules.wording import unknown
from hwsched.values import Fit, Opening, OpeningInput

_ABOUT = "delayed egress lock"
_GROUPS = ("B", "F", "I-1", "I-2", "I-3", "I-4", "M", "R", "S", "U")
"""Groups in which the IBC has it."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    devices = [item for item in given.items if item.kind == "delayed-egress" and remains(item)]
    if not devices:
        return
    if given.opening.egress is None:
        yield unknown(("opening.egress",), _ABOUT)
        return
    if given.opening.egress == "none":
        return
    yield Verdict(
        f"Delayed egress: it lets go within {limits['delay_s']:g} s of a push of {limits['force_n']:.0f} N (15 lbf) "
        f"held for at most {limits['push_s']:g} s, cannot be stopped, sounds at the door, is armed again by hand, and "
        f"lets go at once on the sprinkler, on detection and on loss of power; its sign says so in letters 25.4 mm "
        f"(1 in) high. Only in the occupancies that allow it, one such door a path.",
        values={"delay_s": limits["delay_s"], "force_n": limits["force_n"], "push_s": limits["push_s"]},
        about=_ABOUT,
    )
    faces = leaving_from(given)
    if faces is None:
        yield unknown(("opening.egress_toward",), _ABOUT)
    else:
        for device in devices:
            if device.face in SIDE and device.face not in faces:
                yield Verdict(
                    f"The delayed egress lock is worked from the {SIDE[device.face or '']}, and nobody leaves "
                    "from there.",
                    about=_ABOUT,
                    severity="error",
                )
    yield from _allowed(given.opening, limits)


def _allowed(opening: Opening, limits: Limits) -> Iterable[Verdict]:
    # NFPA 101 has it by chapters of occupancy, which letters do not tell.
    if opening.code in ("ibc", "both", None):
        if opening.code is None or opening.occupancy_group is None:
            missing = [name for name in ("code", "occupancy_group") if getattr(opening, name) is None]
            yield unknown(tuple(f"opening.{name}" for name in missing), _ABOUT)
        elif opening.occupancy_group == "E":
            yield from _classroom(opening, limits)
        elif opening.occupancy_group not in _GROUPS:
            yield Verdict(
                f"Group {opening.occupancy_group} is none that has delayed egress.", about=_ABOUT, severity="error"
            )
    if not (opening.sprinkler or opening.fire_alarm):
        if opening.sprinkler is None or opening.fire_alarm is None:
            missing = [name for name in ("sprinkler", "fire_alarm") if getattr(opening, name) is None]
            yield unknown(tuple(f"opening.{name}" for name in missing), _ABOUT)
        else:
            yield Verdict(
                "Delayed egress wants sprinklers or detection throughout, and the building has neither.",
                about=_ABOUT,
                severity="error",
            )


def _classroom(opening: Opening, limits: Limits) -> Iterable[Verdict]:
    missing = [name for name in ("code_edition", "occupant_load") if getattr(opening, name) is None]
    if missing:
        yield unknown(tuple(f"opening.{name}" for name in missing), _ABOUT)
    elif (opening.code_edition or 0) < limits["classroom_edition"] or (opening.occupant_load or 0) >= limits[
        "load_people"
    ]:
        yield Verdict(
            f"Group E has delayed egress from the edition of {limits['classroom_edition']:.0f} on, for classrooms of "
            f"fewer than {limits['load_people']:.0f} people; here {opening.occupant_load} under the edition of "
            f"{opening.code_edition}.",
            values={"load_people": float(opening.occupant_load or 0), "classroom_edition": limits["classroom_edition"]},
            about=_ABOUT,
            severity="error",
        )


RULE = Rule(
    id="delayed-egress",
    title="Delayed egress: release conditions",
    discipline="egress",
    severity="warning",
    basis="NFPA 101, 7.2.1.6.1; IBC 1010.2.13 (2021), secondary copies: groups B, F, I, M, R, S and U; "
    "classrooms of group E "
    "since 2018; sprinklers or detection throughout",
    cure="Check occupancy, sprinkler and detection, tie-in, sign and release, and get approval before ordering. The "
    "new lock or unit must not hold the opening when the delay is over.",
    judge=_judge,
    limits=(
        Limit(
            "delay_s",
            15.0,
            "Longest delay; 30 s only where the authority approves.",
            "NFPA 101, 7.2.1.6.1",
            unit="s",
            low=0.0,
            high=60.0,
        ),
        Limit("push_s", 3.0, "Longest push that starts it.", "NFPA 101, 7.2.1.6.1", unit="s", low=0.0, high=15.0),
        Limit(
            "force_n",
            66.7,
            "Greatest force that starts it: 15 lbf.",
            "NFPA 101, 7.2.1.6.1",
            unit="N",
            low=1.0,
            high=250.0,
        ),
        Limit(
            "load_people",
            50.0,
            "People from which a classroom has none.",
            "IBC 1010.2.13 (2021), secondary copy",
            unit="",
            low=1.0,
            high=1000.0,
        ),
        Limit(
            "classroom_edition",
            2018.0,
            "Edition from which classrooms have it.",
            "IBC, list of changes, secondary copy",
            unit="",
            low=1990.0,
            high=2100.0,
        ),
    ),
    defers=True,
)
