"""`hwsched power goods`: all that is ordered for what is laid, how wire is cut, and what is licensed work."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse

    from hwsched.documents.view import ProjectView
    from hwsched.wiring.goods import Bill, Goods
    from hwsched.wiring.take_off import WireLine


class GoodsShown(TypedDict):
    """So many of one part, and what for; quantity is exact: pieces, of wire and raceway order units."""

    role: str
    building: str | None
    level: str | None
    part: str | None
    quantity: str
    unit: str | None
    text: str
    supply: str | None
    marks: list[str]
    needs: list[str]


class PieceShown(TypedDict):
    """A piece that is cut from a reel or bar, with the allowance for its ends."""

    name: str
    length_m: float


class ReelShown(TypedDict):
    """A reel or bar with what is cut from it."""

    pieces: list[PieceShown]
    left_m: float


class CutShown(TypedDict):
    """A wire or raceway of a building; reels are null where nobody said how long one is, gap 0 where it is exact."""

    kind: str
    building: str | None
    part: str | None
    conductor: str
    runs_m: float
    leaves_m: float
    needed_m: float
    reel_m: float | None
    reels: int | None
    fewest: int | None
    gap: int | None
    spliced: int
    cut: list[ReelShown]


class LicensedShown(TypedDict):
    """What somebody with a licence brings and does."""

    building: str | None
    level: str | None
    place: str | None
    supply: str
    text: str
    needs: list[str]


class BillShown(TypedDict):
    """The bill of what is laid."""

    goods: list[GoodsShown]
    wires: list[CutShown]
    licensed: list[LicensedShown]
    needs: list[str]


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("--going", action="store_true", help="only what goes out now, as the pick list has it")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, print_json, said
    from hwsched.operations.release.project_view import project_view

    with opened(arguments) as project:
        view = project_view(project)
    bill = view.going if arguments.going else view.bill
    print_json(as_json(view, bill))
    if arguments.json:
        return DONE
    _print(view, bill)
    if not bill.goods:
        said(arguments, "Nothing is laid yet.")
    return DONE


def _print(view: ProjectView, bill: Bill) -> None:
    from hwsched.documents.power.power_words import far, run_lengths
    from hwsched.documents.words import needed
    from hwsched.quantities import run_unit
    from hwsched.wiring.goods import ROLES

    style = view.length_style
    unit = run_unit(style)
    for building in dict.fromkeys(each.building for each in bill.goods):
        print(building or "no building")
        for each in (goods for goods in bill.goods if goods.building == building):
            told = each.text if each.line is None else f"{each.text}, {run_lengths(each.line, style)}".strip(", ")
            needs = f" (unknown: needs {needed(each.needs, view.catalogue)})" if each.needs else ""
            amount = f"{each.quantity.normalize():f} {_unit(view, each) or ''}".strip()
            print(f"  {ROLES[each.role]:<18} {each.part or '-':<14} {amount:>10}  {told}{needs}")
            for number, pieces in enumerate(each.line.cuts if each.line is not None else ()):
                cuts = "; ".join(f"{piece.name} {far(piece.length_m, style, 2)} {unit}" for piece in pieces)
                left = far(each.line.left_m(number), style, 2) if each.line is not None else 0.0
                print(f"    {number + 1}: {cuts}; {left} {unit} left")
    for work in bill.licensed:
        needs = f" (unknown: needs {needed(work.needs, view.catalogue)})" if work.needs else ""
        print(f"licensed work, {work.supply}: {work.text}{needs}")


def _unit(view: ProjectView, goods: Goods) -> str | None:
    part = view.catalogue.get(goods.part)
    return part.unit or None if part is not None else None


def as_json(view: ProjectView, bill: Bill) -> BillShown:
    """Return a bill for machines."""
    names = {each.supply.id: each.supply.name for each in view.power.supplies}
    marks = view.marks
    return {
        "goods": [
            {
                "role": each.role,
                "building": each.building or None,
                "level": each.level or None,
                "part": each.part or None,
                "quantity": f"{each.quantity:f}",
                "unit": _unit(view, each),
                "text": each.text,
                "supply": names.get(each.supply_id),
                "marks": [marks[opening] for opening in each.opening_ids],
                "needs": list(each.needs),
            }
            for each in bill.goods
        ],
        "wires": [_cut(line) for line in bill.wires],
        "licensed": [
            {
                "building": each.building or None,
                "level": each.level or None,
                "place": each.place or None,
                "supply": each.supply,
                "text": each.text,
                "needs": list(each.needs),
            }
            for each in bill.licensed
        ],
        "needs": list(bill.needs),
    }


def _cut(line: WireLine) -> CutShown:
    return {
        "kind": line.kind,
        "building": line.building or None,
        "part": line.part or None,
        "conductor": f"{line.gauge} {line.stranding}".strip(),
        "runs_m": line.length_m,
        "leaves_m": line.leaf_m,
        "needed_m": line.with_waste_m,
        "reel_m": line.reel_m,
        "reels": line.reels,
        "fewest": line.fewest,
        "gap": line.gap,
        "spliced": line.spliced,
        "cut": [
            {
                "pieces": [{"name": piece.name, "length_m": piece.length_m} for piece in pieces],
                "left_m": line.left_m(number),
            }
            for number, pieces in enumerate(line.cuts)
        ],
    }


VERB = Verb(_arguments, _run, result=BillShown)
