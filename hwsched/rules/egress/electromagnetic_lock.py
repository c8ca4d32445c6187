"""Rule: an electromagnetic lock is a special arrangement with conditions of its own."""

from collections.abc import Iterable

from hwsched.rules.reading import entry, remains
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.ways_out import SIDE, leaving_from
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput

_ABOUT = "electromagnetic lock"
_BY_SENSOR = ("A", "B", "E", "I-1", "I-2", "I-4", "M", "R")
"""Groups in which a sensor may release it; a switch in the leaf's hardware may in all but H."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    stays = any(i.kind == "electromagnetic-lock" and remains(i) for i in given.items)
    fit_part = any(part.kind == "electromagnetic-lock" for f in fit.parts if (part := entry(given, f)))
    # Unknown counts as an egress path: the arrangement has to be approved before anybody finds out otherwise.
    if not (stays or fit_part) or given.opening.egress == "none":
        return
    yield Verdict(
        "An electromagnetic lock holds this opening. It is fail-safe by nature and needs a release of its own: "
        "sensor or switch in the hardware, a manual release 40 to 48 in high within 5 ft, release on loss of power "
        "and on the fire alarm.",
        about=_ABOUT,
    )
    faces = leaving_from(given)
    if faces is None:
        yield unknown(("opening.egress_toward",), _ABOUT)
        return
    sensors = {face: _released(given, face, "release-sensor") for face in faces}
    for face in faces:
        if _released(given, face, "release-switch"):
            continue
        missing = [
            word
            for kind, word in (("release-sensor", "sensor"), ("release-button", "button"))
            if not _released(given, face, kind)
        ]
        if missing:
            yield Verdict(
                f"It holds the {SIDE[face]} too, from which people leave; the survey shows no release "
                f"{' and no release '.join(missing)} there, and no switch in the leaf's hardware.",
                about=_ABOUT,
                severity="error",
            )
    yield from _by_group(given, limits, sensor=any(sensors.values()))


def _released(given: OpeningInput, face: str, kind: str) -> bool:
    # What stands on the frame's head serves the side on which it is hung, which a survey seldom says.
    return any(i.kind == kind and remains(i) and i.face in (face, "both") for i in given.items)


def _by_group(given: OpeningInput, limits: Limits, *, sensor: bool) -> Iterable[Verdict]:
    group, edition = given.opening.occupancy_group, given.opening.code_edition
    if group is None:
        yield unknown(("opening.occupancy_group",), _ABOUT)
        return
    if group == "H" or (sensor and group not in _BY_SENSOR):
        yield Verdict(
            f"Group {group} is none in which {'a sensor may release' if group != 'H' else 'there is'} an "
            "electromagnetic "
            "lock.",
            about=_ABOUT,
            severity="error",
        )
    if sensor and given.opening.egress == "panic" and given.opening.code != "nfpa-101":
        if edition is None:
            yield unknown(("opening.code_edition",), _ABOUT)
        elif edition >= limits["sensor_edition"]:
            yield Verdict(
                f"From the edition of {limits['sensor_edition']:.0f} on no sensor releases a leaf that wants "
                "panic hardware; "
                f"here the edition of {edition} is in force.",
                values={"edition": float(edition), "sensor_edition": limits["sensor_edition"]},
                about=_ABOUT,
                severity="error",
            )


RULE = Rule(
    id="electromagnetic-lock",
    title="Electromagnetic lock: release conditions",
    discipline="egress",
    severity="warning",
    basis="IBC 1010.1.9.8 and 1010.1.9.9 (2015), 1010.2.11 and 1010.2.12 (2021), end of the sensor's release on "
    "panic doors "
    "2024; NFPA 101, 7.2.1.6.2, secondary copies",
    cure="Check occupancy, alarm tie-in, signs and release devices, and get approval before ordering. A battery does "
    "not make it fail-secure; for its suppression use a varistor, a plain diode delays release.",
    judge=_judge,
    limits=(
        Limit(
            "sensor_edition",
            2024.0,
            "Edition from which no sensor releases a panic door.",
            "IBC 2024, list of changes, secondary copy",
            unit="",
            low=1990.0,
            high=2100.0,
        ),
    ),
    defers=True,
)
