"""`hwsched power margins`: later openings that circuits bear; who falls out when one thing fails, or on the alarm."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse

    from hwsched.operations.power.margins import SupplyMargins


class RoomShown(TypedDict):
    """Later openings that a circuit bears at the place with the least room, and what stops the next."""

    circuit: str
    later_count: int
    stopped_by: str | None
    why: str | None
    is_known: bool


class FailureShown(TypedDict):
    """What falls out when a supply, its mains, its battery, a circuit or a run fails; hours are null where unknown."""

    what: str
    name: str
    marks: list[str]
    after_h: float | None


class AlarmShown(TypedDict):
    """Who loses and who keeps power on the fire alarm, and of whom nobody said it."""

    dropped: list[str]
    kept: list[str]
    unknown: list[str]


class MarginsShown(TypedDict):
    """What one supply bears."""

    supply: str
    rooms: list[RoomShown]
    failures: list[FailureShown]
    alarm: AlarmShown
    without_power: dict[str, str]
    """By mark: released, locked, or unit where only the unit is dead."""


class Margins(TypedDict):
    """What the supplies bear."""

    supplies: list[MarginsShown]


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument(
        "--most", type=int, default=16, metavar="COUNT", help="later openings tried on a circuit (default: 16; 0: none)"
    )


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, print_json, said
    from hwsched.operations.power.margins import power_margins

    with opened(arguments) as project:
        found = power_margins(project, max(0, min(arguments.most, 64)))
    shown: Margins = {"supplies": [_shown(each) for each in found]}
    print_json(shown)
    if arguments.json:
        return DONE
    for each in shown["supplies"]:
        print(each["supply"])
        for room in each["rooms"]:
            stop = f"; one more: {room['why']}" if room["why"] else " or more"
            later = f"{room['later_count']} later opening{'' if room['later_count'] == 1 else 's'}"
            print(f"  circuit {room['circuit']}: {later}{stop}")
        for failure in each["failures"]:
            last = "" if failure["after_h"] == 0 else f", after {_hours(failure['after_h'])}"
            also = " and the mains" if failure["what"] == "battery" else ""
            out = ", ".join(failure["marks"]) or "nothing"
            print(f"  {failure['what']} {failure['name']}{also} fails{last}: {out}")
        alarm = each["alarm"]
        for words, marks in (
            ("on the fire alarm lose power", alarm["dropped"]),
            ("on the fire alarm keep power", alarm["kept"]),
            ("what the fire alarm does is unknown", alarm["unknown"]),
        ):
            if marks:
                print(f"  {words}: {', '.join(marks)}")
        for mark, stands in each["without_power"].items():
            if stands != "unit":
                print(f"  without power {mark} is {stands}")
    if not found:
        said(arguments, "Nothing is laid yet.")
    return DONE


def _hours(hours: float | None) -> str:
    return "an unknown time" if hours is None else f"{hours:.3g} h"


def _shown(each: SupplyMargins) -> MarginsShown:
    from hwsched.wiring.failure import without_power

    marks = each.result.marks
    return {
        "supply": each.result.supply.name,
        "rooms": [
            {
                "circuit": room.circuit.circuit.name,
                "later_count": room.count,
                "stopped_by": (room.stop.rule or None) if room.stop is not None else None,
                "why": room.stop.why if room.stop is not None else None,
                "is_known": room.stop is None or room.stop.borne is not None,
            }
            for room in each.rooms
        ],
        "failures": [
            {
                "what": failure.what,
                "name": failure.name,
                "marks": [marks[opening] for opening in failure.opening_ids],
                "after_h": failure.after_h,
            }
            for failure in each.failures
        ],
        "alarm": {
            "dropped": [marks[opening] for opening in each.alarm.dropped],
            "kept": [marks[opening] for opening in each.alarm.kept],
            "unknown": [marks[opening] for opening in each.alarm.unknown],
        },
        "without_power": {marks[opening]: stands for opening, stands in without_power(each.result).items()},
    }


VERB = Verb(_arguments, _run, result=Margins)
