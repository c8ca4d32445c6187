"""Rule: where panic hardware is required there is some on the side from which people leave, and it stays."""

from collections.abc import Iterable

from hwsched.rules.reading import remains
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.ways_out import SIDE, holding, is_door, leaving_from
from hwsched.rules.wording import unknown
from hwsched.values import Fit, Item, OpeningInput

_BY_LOAD = ("A", "E")
"""Groups in which the number of people decides."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    egress = given.opening.egress
    # That stays: an exit device that comes off for the work leaves the opening without one.
    devices = [i for i in given.items if (i.kind == "exit-device" or i.function == "exit") and remains(i)]
    if egress == "panic":
        yield from _by_side(given, devices, "Panic hardware is required here")
    elif egress == "egress" and is_door(given) and not devices and holding(given):
        yield from _by_group(given, limits)


def _by_side(given: OpeningInput, devices: list[Item], why: str) -> Iterable[Verdict]:
    if not devices:
        yield Verdict(f"{why}; the survey shows no exit device that stays.", about="egress")
        return
    faces = leaving_from(given)
    if faces is None:
        yield unknown(("opening.egress_toward",), "egress")
        return
    # By its function an exit lock has its key outside and its bar on the inside.
    stands = [device.face or ("inside" if device.function == "exit" else None) for device in devices]
    for face in faces:
        if face in stands or "both" in stands:
            continue
        if None in stands:
            yield unknown(("existing_item.face",), "exit device")
        else:
            yield Verdict(
                f"{why}, and people leave from the {SIDE[face]}; the survey shows no exit device on that side.",
                about="egress",
            )


def _by_group(given: OpeningInput, limits: Limits) -> Iterable[Verdict]:
    group, load, code = given.opening.occupancy_group, given.opening.occupant_load, given.opening.code
    if group is None:
        yield unknown(("opening.occupancy_group",), "panic hardware")
        return
    if group == "H":
        yield Verdict(
            "Group H: a lock or latch on an egress path is panic hardware whatever the number of people; the survey "
            "shows no exit device.",
            about="panic hardware",
        )
    if group not in _BY_LOAD:
        return
    if load is None:
        yield unknown(("opening.occupant_load",), "panic hardware")
        return
    ibc, nfpa = limits["ibc_people"], limits["nfpa_people"]
    if load >= ibc and load < nfpa and code is None:
        # Between the two numbers the code decides, and only there is it asked.
        yield unknown(("opening.code",), "panic hardware")
    elif load >= (nfpa if code == "nfpa-101" else ibc):
        yield Verdict(
            f"Group {group} with {load} people: a lock or latch on an egress path is panic hardware; the survey "
            "shows no "
            "exit device.",
            values={"load_people": float(load), "ibc_people": ibc, "nfpa_people": nfpa},
            about="panic hardware",
        )


RULE = Rule(
    id="panic-hardware",
    title="Panic hardware where it is required",
    discipline="egress",
    severity="error",
    basis="IBC 1010.2.9 (2021): groups A and E from 50 people, group H; NFPA 101, 7.2.1.7: from 100 people in "
    "assembly and "
    "education (secondary copies); UL 305 (release at 15 lbf, 66.7 N)",
    cure="Keep or fit a listed exit device on the side from which people leave; do not convert the opening without it.",
    judge=_judge,
    limits=(
        Limit(
            "ibc_people",
            50.0,
            "People from which groups A and E want it.",
            "IBC 1010.2.9, secondary copy",
            unit="",
            low=1.0,
            high=10000.0,
        ),
        Limit(
            "nfpa_people",
            100.0,
            "People from which NFPA 101 wants it.",
            "NFPA 101, 7.2.1.7, secondary copy",
            unit="",
            low=1.0,
            high=10000.0,
        ),
    ),
    defers=True,
)
