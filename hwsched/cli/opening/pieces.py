"""`hwsched opening pieces`: lists the pieces of an opening; writes down serial numbers, lots and bench work."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse

    from hwsched.values import Catalogue
    from hwsched.values.piece import Piece


class PieceRecord(TypedDict):
    """A piece, or a lot that is counted."""

    name: str
    """As --serial and --lot take it."""
    lock_point: str | None
    role: str
    part: str
    description: str | None
    quantity: float
    source: str
    serial: str | None
    lot: str | None
    state: str
    done: list[str]
    """At the bench: built, programmed, tested."""
    in_fit: bool


class Pieces(TypedDict):
    """The pieces of an opening."""

    mark: str
    pieces: list[PieceRecord]


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_point, add_project

    add_project(parser)
    parser.add_argument("mark", help="the opening")
    add_point(parser)
    what = "a piece as ROLE, ROLE#2 or ROLE/PART#2; may be repeated; nothing behind = takes it away"
    parser.add_argument(
        "--serial", action="append", default=[], metavar="PIECE=NUMBER", help=f"serial number of {what}"
    )
    parser.add_argument("--lot", action="append", default=[], metavar="PIECE=LOT", help=f"lot of {what}")
    parser.add_argument(
        "--done", action="append", default=[], metavar="PIECE=WORK,WORK",
        help=f"all that was done at the bench (built, programmed, tested) to {what}",
    )  # fmt: skip


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, print_json, who
    from hwsched.model.errors import ValueRefusedError
    from hwsched.operations.opening.lock_points import point_named
    from hwsched.operations.opening.named_openings import marks_of, openings_of_marks
    from hwsched.operations.opening.pieces import piece_named, pieces, record_piece
    from hwsched.operations.parts.part_edits import part_form

    with opened(arguments) as project:
        opening = openings_of_marks(project, [arguments.mark])[0]
        point = point_named(project, opening, arguments.point)
        for option in ("serial", "lot"):
            for text in getattr(arguments, option):
                name, told, value = text.partition("=")
                if not told:
                    raise ValueRefusedError(f"--{option}", f"'{text}' names no piece; accepted: PIECE=VALUE")
                piece = piece_named(pieces(project, opening), name, point)
                record_piece(project, opening, piece.id, who=who(arguments), **{option: value})
        for text in arguments.done:
            name, told, value = text.partition("=")
            if not told:
                raise ValueRefusedError("--done", f"'{text}' names no piece; accepted: PIECE=WORK,WORK")
            piece = piece_named(pieces(project, opening), name, point)
            work = [word.strip() for word in value.split(",") if word.strip()]
            record_piece(project, opening, piece.id, who=who(arguments), done=work)
        found = [each for each in pieces(project, opening) if point in (None, each.point_id)]
        mark = marks_of(project, [opening])[0]
        catalogue, style = part_form(project).catalogue, project.length_style
    result: Pieces = {"mark": mark, "pieces": [_record(each) for each in found]}
    print_json(result)
    if arguments.json:
        return DONE
    for each in found:
        print(_line(each, catalogue, style))
    if not found:
        print(f"{mark} has no pieces: it has no fit.")
    return DONE


def _line(piece: Piece, catalogue: Catalogue, style: str) -> str:
    from hwsched.values.amounts import times_words

    count = "" if piece.quantity == 1 else f" {times_words(catalogue.get(piece.part), piece.quantity, style)}"
    known = [f"serial {piece.serial}"] if piece.serial else []
    known += [f"lot {piece.lot}"] if piece.lot else []
    known += piece.done
    known += [] if piece.state == "planned" else [piece.state]
    known += [] if piece.in_fit else ["no longer in the fit"]
    where = f"{piece.point_name}: " if piece.point_name else ""
    return f"{where}{piece.role}/{piece.part}#{piece.number}{count}  {piece.description}  {', '.join(known)}".rstrip()


def _record(piece: Piece) -> PieceRecord:
    return {
        "name": f"{piece.role}/{piece.part}#{piece.number}",
        "lock_point": piece.point_name or None,
        "role": piece.role,
        "part": piece.part,
        "description": piece.description or None,
        "quantity": piece.quantity,
        "source": piece.source,
        "serial": piece.serial or None,
        "lot": piece.lot or None,
        "state": piece.state,
        "done": list(piece.done),
        "in_fit": piece.in_fit,
    }


VERB = Verb(_arguments, _run, result=Pieces, in_batch=True)
