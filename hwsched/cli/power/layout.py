"""`hwsched power layout`: plans supplies, wires and runs of a building or of one circuit; lays them when accepted."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.counting import counted
from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse
    from collections.abc import Mapping

    from hwsched.calc.parts.cost import Cost
    from hwsched.operations.power.power_planning import PowerProposal

_AIMS = ("least-cost", "fewest-supplies", "least-wire", "most-margin")


class SupplyPlanned(TypedDict):
    """A supply that a layout uses, and the part that stands there."""

    supply: str
    part: str


# `from` is a word of the language's own.
RunPlanned = TypedDict("RunPlanned", {"from": str, "to": str, "length_m": float})


class LegPlanned(TypedDict):
    """What leaves a supply as one pair of wires: home-run, daisy-chain, or a way with junctions."""

    supply: str
    shape: str
    wire: str
    marks: list[str]
    runs: list[RunPlanned]
    margin_v: float


class Layout(TypedDict):
    """A layout; `shown` is the key by which exactly this one is accepted."""

    building: str
    circuit: str | None
    aim: str
    supplies: list[SupplyPlanned]
    legs: list[LegPlanned]
    wire_m: float
    margin_v: float | None
    """Least room above what an opening needs, as proved."""
    cost_before: str
    """Of what is known: parts with whole reels, and work; of the supplies that are touched."""
    cost_after: str
    proven: bool
    gap: float
    """Share of what is aimed at that a better plan of this kind might save."""
    already: bool
    """What is laid is as good: nothing would be changed."""
    kept: list[str]
    left_out: list[str]
    torn_up: list[str]
    """Runs that are laid and would be taken up."""
    assumed: list[str]
    accepted: bool
    shown: str


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project, add_shown

    add_project(parser)
    add_shown(parser, "the same supplies, runs, volts, costs and findings")
    parser.add_argument("what", help="a building, or SUPPLY/CIRCUIT: only that, with everything else as it is")
    parser.add_argument("--aim", choices=_AIMS, default="least-cost", help="what counts (default: least-cost)")
    parser.add_argument("--wire", metavar="PART", help="the only wire that may be used")
    parser.add_argument(
        "--keep",
        nargs="+",
        default=[],
        metavar="MARK",
        help="openings that stay as they are laid, beside those pinned to their supply",
    )
    parser.add_argument("--gap", type=float, metavar="SHARE", help="of what is aimed at that may stay unproven")
    parser.add_argument("--seconds", type=float, default=120.0, help="give the answer found by then (default: 120)")
    parser.add_argument("--accept", action="store_true", help="lay what is proposed, and fit its openings again")


def _run(arguments: argparse.Namespace) -> int:
    from dataclasses import replace

    from hwsched.cli.session import opened, print_json, said, told_steps, who
    from hwsched.operations.opening.named_openings import openings_of_marks
    from hwsched.operations.power.planning_accepting import accept_plan
    from hwsched.operations.power.power_editing import power_row_named
    from hwsched.operations.power.power_planning import propose_plan
    from hwsched.operations.shown import check_shown, shown_key

    with opened(arguments) as project:
        circuit = power_row_named(project, arguments.what)[1] if "/" in arguments.what else None
        with told_steps(arguments.json or arguments.quiet) as progress:
            found = propose_plan(
                project,
                "" if circuit else arguments.what,
                circuit_id=circuit,
                aim=arguments.aim,
                wire=arguments.wire,
                keep=openings_of_marks(project, arguments.keep),
                gap=arguments.gap,
                time_limit_s=arguments.seconds,
                progress=progress,
            )
        key, change_set = shown_key(replace(found, names={})), None
        if arguments.accept:
            check_shown(arguments.shown, key)
            change_set = accept_plan(project, found, who=who(arguments)).number
    print_json(_layout(found, change_set is not None, key))
    if arguments.json:
        return DONE
    _tell(found)
    if found.already:
        said(arguments, "What is laid is as good: nothing is changed.")
    elif change_set is None:
        said(arguments, f"Nothing is laid yet; --accept lays it. Shown as {key}.")
    else:
        said(arguments, f"Accepted: change set {change_set} written.")
    return DONE


def _layout(found: PowerProposal, accepted: bool, key: str) -> Layout:
    plan, names = found.plan, found.names
    return {
        "building": found.building,
        "circuit": found.circuit or None,
        "aim": found.aim,
        "supplies": [{"supply": names[each], "part": part} for each, part in plan.sizes.items()],
        "legs": [
            {
                "supply": names[leg.place],
                "shape": leg.shape,
                "wire": leg.wire,
                "marks": [names[opening] for opening in leg.openings],
                "runs": [
                    {
                        "from": "supply" if run.begin < 0 else _point(leg.points[run.begin], names),
                        "to": _point(leg.points[run.end], names),
                        "length_m": run.metres,
                    }
                    for run in leg.runs
                ],
                "margin_v": leg.margin_v,
            }
            for leg in plan.legs
        ],
        "wire_m": plan.wire_m,
        "margin_v": plan.margin_v,
        "cost_before": f"{found.before_cost.total:f}",
        "cost_after": f"{found.after_cost.total:f}",
        "proven": plan.proved_best,
        "gap": plan.gap,
        "already": found.already,
        "kept": list(found.kept),
        "left_out": list(found.left_out),
        "torn_up": list(found.torn_up),
        "assumed": list(found.assumed),
        "accepted": accepted,
        "shown": key,
    }


def _point(opening: str | None, names: Mapping[str, str]) -> str:
    return "junction" if opening is None else names[opening]


def _tell(found: PowerProposal) -> None:
    plan, names = found.plan, found.names
    openings, count = sum(len(leg.openings) for leg in plan.legs), len(plan.sizes)
    print(
        f"{found.circuit or found.building}, {found.aim.replace('-', ' ')}: "
        f"{counted(count, 'supply', 'supplies')} for {counted(openings, 'opening')}, "
        f"{plan.wire_m:.1f} m of wire, {plan.proved}"
    )
    for place, part in plan.sizes.items():
        print(f"  {names[place]}: {part}")
        for leg in plan.legs:
            if leg.place == place:
                marks = ", ".join(names[opening] for opening in leg.openings)
                shape = leg.shape.replace("-", " ")
                print(f"    {shape}, {leg.wire_m:.1f} m of {leg.wire}, {leg.margin_v:.2f} V to spare: {marks}")
    print(f"  cost of what is known: {_money(found.before_cost)} as laid, {_money(found.after_cost)} then")
    for title, told in (
        ("assumed", found.assumed),
        ("left out", found.left_out),
        ("taken up", found.torn_up),
        ("kept as laid", found.kept),
    ):
        for line in told:
            print(f"  {title}: {line}")


def _money(cost: Cost) -> str:
    from hwsched.quantities.money import rounded

    return str(rounded(cost.total))


VERB = Verb(_arguments, _run, result=Layout)
