"""`hwsched parts used`: where a part is used, and how many are needed and at hand."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class AtOpening(TypedDict):
    """An opening that uses the part."""

    mark: str
    role: str
    quantity: float
    by_hand: bool
    in_fit: bool


class InSet(TypedDict):
    """A line of a hardware set."""

    name: str
    role: str
    quantity: float


class InBox(TypedDict):
    """A part in whose box it is."""

    number: str
    quantity: float


class Use(TypedDict):
    """Where a part is used."""

    number: str
    openings: list[AtOpening]
    sets: list[InSet]
    boxes: list[InBox]
    supersedes: list[str]
    supplies: list[str]
    needed_count: float
    issued_count: float
    stock: float | None


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("number", help="the part")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, print_json
    from hwsched.model.errors import MissingRowError
    from hwsched.operations.parts.part_edits import part_form
    from hwsched.operations.parts.where_used import where_used
    from hwsched.telling.nearest import nearest_words
    from hwsched.values.amounts import plain_amount, times_words, whole

    number = arguments.number
    with opened(arguments) as project:
        part = part_form(project).catalogue.get(number)
        found, style = where_used(project, number), project.length_style
        if part is None and not found.used:
            near = nearest_words(number, part_form(project).catalogue.parts)
            raise MissingRowError(f"the catalogue has no part '{number}', and nothing uses one{near}")
    told: Use = {
        "number": number,
        "openings": [
            {
                "mark": each.mark,
                "role": each.role,
                "quantity": each.quantity,
                "by_hand": each.by_hand,
                "in_fit": each.in_fit,
            }
            for each in found.openings
        ],
        "sets": [{"name": name, "role": role, "quantity": quantity} for name, role, quantity in found.sets],
        "boxes": [{"number": box, "quantity": quantity} for box, quantity in found.boxes],
        "supersedes": list(found.follows),
        "supplies": list(found.supplies),
        "needed_count": found.needed,
        "issued_count": found.issued,
        "stock": part.stock if part is not None else None,
    }
    print_json(told)
    if arguments.json:
        return DONE
    for each in found.openings:
        how = "chosen by hand" if each.by_hand else "worked out"
        print(
            f"{each.mark}: {each.role} {times_words(part, each.quantity, style)}, {how}"
            + ("" if each.in_fit else ", not in a fit")
        )
    for name, role, quantity in found.sets:
        print(f"set {name}: {role} {times_words(part, quantity, style)}")
    for box, quantity in found.boxes:
        print(f"in the box of {box} {times_words(part, quantity, style)}")
    for label, names in (("supersedes", found.follows), ("supply", found.supplies)):
        if names:
            print(f"{label} {', '.join(names)}")
    stock = "not counted" if part is None or part.stock is None else plain_amount(part.stock)
    unit = part.unit if part is not None else ""
    print(f"needed {whole(found.needed, unit)}, went out {whole(found.issued, unit)}, in stock {stock}")
    return DONE


VERB = Verb(_arguments, _run, result=Use)
