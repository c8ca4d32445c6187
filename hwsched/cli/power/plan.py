"""`hwsched power plan`: proposes where the supplies of a building go, and lays it when accepted."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.counting import counted
from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class Pair(TypedDict):
    """An opening with the supply that is to feed it."""

    mark: str
    supply: str
    length_m: float


class Plan(TypedDict):
    """A siting; `shown` is the key by which exactly this one is accepted."""

    building: str
    supplies: list[str]
    pairs: list[Pair]
    wire: str
    wire_m: float
    proven: bool
    gap: float
    left_out: list[str]
    torn_up: list[str]
    """Runs that are laid and would be taken up, or would lead to nothing any more."""
    accepted: bool
    shown: str


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project, add_shown

    add_project(parser)
    add_shown(parser, "the same supplies, runs, volts and findings")
    parser.add_argument("building")
    parser.add_argument(
        "--wire", metavar="PART", help="catalogue number; default: the cheapest of those that need the fewest supplies"
    )
    parser.add_argument("--gap", type=float, metavar="SHARE", help="of the wire that may stay unproven")
    parser.add_argument("--seconds", type=float, default=300.0, help="give the answer found by then (default: 300)")
    parser.add_argument("--accept", action="store_true", help="lay what is proposed, and fit its openings again")


def _run(arguments: argparse.Namespace) -> int:
    from dataclasses import replace

    from hwsched.cli.session import opened, print_json, said, told_steps, who
    from hwsched.operations.power.siting_accepting import accept_siting
    from hwsched.operations.power.supply_siting import propose_siting
    from hwsched.operations.shown import check_shown, shown_key

    with opened(arguments) as project:
        with told_steps(arguments.json or arguments.quiet) as progress:
            found = propose_siting(
                project,
                arguments.building,
                wire=arguments.wire,
                gap=arguments.gap,
                time_limit_s=arguments.seconds,
                progress=progress,
            )
        key, change_set = shown_key(replace(found, names={})), None
        if arguments.accept:
            check_shown(arguments.shown, key)
            change_set = accept_siting(project, found, who=who(arguments)).number
    names, siting = found.names, found.siting
    plan: Plan = {
        "building": found.building,
        "supplies": [names[each] for each in siting.open],
        "pairs": [
            {"mark": names[opening], "supply": names[supply], "length_m": found.lengths_m[opening]}
            for opening, supply in siting.pairs.items()
        ],
        "wire": found.wire,
        "wire_m": siting.wire_m,
        "proven": siting.optimal,
        "gap": 0.0 if siting.optimal else siting.gap,
        "left_out": list(found.left_out),
        "torn_up": list(found.torn_up),
        "accepted": change_set is not None,
        "shown": key,
    }
    print_json(plan)
    if arguments.json:
        return DONE
    proven = "proven least" if siting.optimal else f"within {siting.gap:.2%} of the least"
    count = len(siting.open)
    print(
        f"{found.building}: {counted(count, 'supply', 'supplies')} for {counted(len(siting.pairs), 'opening')}, "
        f"{siting.wire_m:.1f} m of {found.wire}, {proven}; {found.measured} routes measured, the others estimated"
    )
    for supply in siting.open:
        connected_devices = sorted(names[o] for o, s in siting.pairs.items() if s == supply)
        print(f"  {names[supply]}: {', '.join(connected_devices)}")
    for line in found.left_out:
        print(f"  left out: {line}")
    for line in found.torn_up:
        print(f"  {line}")
    if change_set is None:
        said(arguments, f"Nothing is laid yet; --accept lays it. Shown as {key}.")
    else:
        said(arguments, f"Accepted: change set {change_set} written.")
    return DONE


VERB = Verb(_arguments, _run, result=Plan)
