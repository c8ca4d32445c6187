"""`hwsched release revision`: lists revisions, freezes one, shows what it holds, compares."""

from __future__ import annotations

from typing import Any, TypedDict

from hwsched.cli.counting import counted
from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse
    from collections.abc import Iterable

    from hwsched.model.project import Project
    from hwsched.operations.release.changed_lines import Changed as Line
    from hwsched.values.piece import PieceThen
    from hwsched.values.revision import FileThen, Scope

_NEXT = "the next"


class ScopeShown(TypedDict):
    """What of the project a revision holds; nothing named: all of it."""

    building: str | None
    level: str | None
    marks: list[str]


class RevisionShown(TypedDict):
    """A state that was frozen."""

    letter: str
    at: str
    who: str
    purpose: str | None
    scope: ScopeShown


class Frozen(TypedDict):
    """What freezing made."""

    letter: str
    opening_count: int
    content_count: int


class PointThen(TypedDict):
    """A lock point as it was: what was chosen by hand, and its fit, field for field."""

    chosen: list[dict[str, Any]]
    fit: dict[str, Any] | None


class OpeningShown(TypedDict):
    """An opening as it was; facts are field for field those of the survey."""

    letter: str
    at: str
    mark: str
    engine: dict[str, Any]
    opening: dict[str, Any]
    leaves: list[dict[str, Any]]
    items: list[dict[str, Any]]
    points: list[PointThen]
    findings: list[dict[str, Any]]
    set: str | None
    own: list[dict[str, Any]]
    files: list[dict[str, Any]] | None
    """Photos and others, each with its sha256; null where an earlier version froze it, which held none."""
    bench: list[dict[str, Any]] | None
    """What was on record from the bench of its pieces; null as for files."""


class Changed(TypedDict):
    """Something that is otherwise; null where it was or is not there."""

    what: str
    before: str | None
    after: str | None


class OpeningChanged(TypedDict):
    """An opening that is otherwise."""

    mark: str
    kind: str
    facts: list[Changed]
    parts: list[Changed]
    place: list[Changed]
    holes: list[Changed]
    findings: list[Changed]
    files: list[Changed]
    bench: list[Changed]


class CircuitChanged(TypedDict):
    """A circuit that is otherwise, by the names of supply and circuit."""

    name: str
    kind: str
    lines: list[Changed]


class DocumentChanged(TypedDict):
    """A document that says something else: the openings whose sheets do, none where it is one for the project."""

    document: str
    marks: list[str]


class Compared(TypedDict):
    """Two states compared."""

    before: str
    after: str
    openings: list[OpeningChanged]
    others: list[Changed]
    circuits: list[CircuitChanged]
    documents: list[DocumentChanged]
    same_count: int


class Revisions(TypedDict):
    """Of what was asked for, the others null: all revisions, the one that was frozen, an opening then, a comparison."""

    revisions: list[RevisionShown] | None
    frozen: Frozen | None
    shown: OpeningShown | None
    compared: Compared | None


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    what = parser.add_mutually_exclusive_group()
    what.add_argument(
        "--freeze", nargs="?", const=_NEXT, metavar="LETTER", help="freeze the project as it stands, under this letter"
    )
    what.add_argument("--show", nargs=2, metavar=("LETTER", "MARK"), help="show an opening as it was")
    what.add_argument(
        "--compare", nargs="+", metavar="LETTER", help="compare two revisions, or one with the project as it stands"
    )
    parser.add_argument("--purpose", default="", help="what it is frozen for, such as 'for approval'")
    parser.add_argument("--building", help="freeze only this building")
    parser.add_argument("--level", help="freeze only this level of the building")
    parser.add_argument(
        "--mark", dest="marks", action="append", default=[], help="freeze only this opening, and others"
    )


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, wrong_usage

    if arguments.compare is not None and len(arguments.compare) > 2:
        return wrong_usage("--compare takes one letter or two")
    if arguments.freeze is None and (arguments.building or arguments.level or arguments.marks or arguments.purpose):
        return wrong_usage("--purpose, --building, --level and --mark go with --freeze")
    if arguments.level and not arguments.building:
        return wrong_usage("--level goes with --building")
    with opened(arguments) as project:
        if arguments.freeze is not None:
            return _freeze(arguments, project)
        if arguments.show is not None:
            return _show(arguments, project)
        if arguments.compare is not None:
            return _compare(arguments, project)
        return _list(arguments, project)


def _list(arguments: argparse.Namespace, project: Project) -> int:
    from hwsched.cli.session import said
    from hwsched.model.time_zone import second_of
    from hwsched.operations.release.revisions import revisions
    from hwsched.values.revision import Scope

    found = revisions(project)
    _answer(
        revisions=[
            {
                "letter": each.letter,
                "at": each.at,
                "who": each.person,
                "purpose": each.purpose or None,
                "scope": _scope(Scope.of(each.scope)),
            }
            for each in found
        ]
    )
    if arguments.json:
        return DONE
    for each in found:
        words = " · ".join(word for word in (Scope.of(each.scope).words, each.purpose) if word)
        print(f"{each.letter:<3} {second_of(each.at)}  {each.person:<16} {words}")
    if not found:
        said(arguments, "No revision yet; hwsched release revision PROJECT --freeze makes one.")
    return DONE


def _answer(
    *,
    revisions: list[RevisionShown] | None = None,
    frozen: Frozen | None = None,
    shown: OpeningShown | None = None,
    compared: Compared | None = None,
) -> None:
    from hwsched.cli.session import print_json

    told: Revisions = {"revisions": revisions, "frozen": frozen, "shown": shown, "compared": compared}
    print_json(told)


def _scope(held: Scope) -> ScopeShown:
    return {"building": held.building, "level": held.level, "marks": list(held.marks)}


def _freeze(arguments: argparse.Namespace, project: Project) -> int:
    from hwsched.cli.session import progress_bar, said, who
    from hwsched.operations.release.freezing import freeze
    from hwsched.values.revision import Scope

    with progress_bar("Freeze", arguments.json or arguments.quiet) as progress:
        made = freeze(
            project,
            who=who(arguments),
            letter=None if arguments.freeze == _NEXT else arguments.freeze,
            purpose=arguments.purpose,
            scope=Scope(arguments.building, arguments.level, tuple(arguments.marks)),
            progress=progress,
        )
    _answer(frozen={"letter": made.letter, "opening_count": made.openings, "content_count": made.contents})
    said(
        arguments,
        f"Revision {made.letter}: {counted(made.openings, 'opening')} frozen; "
        f"change set {made.changes.number} written.",
    )
    return DONE


def _show(arguments: argparse.Namespace, project: Project) -> int:
    from dataclasses import asdict

    import msgspec

    from hwsched.model.time_zone import second_of
    from hwsched.operations.release.revisions import read_revision

    letter, mark = arguments.show
    then = read_revision(project, letter, [mark])
    (opening,) = then.openings
    plain = msgspec.to_builtins
    points = [{"chosen": list(point.given.chosen), "fit": point.fit} for point in opening.points]
    _answer(
        shown={
            "letter": then.letter,
            "at": then.at,
            "mark": opening.mark,
            "engine": dict(then.engine),
            "opening": plain(opening.given.opening),
            "leaves": plain(list(opening.given.leaves)),
            "items": plain(list(opening.given.items)),
            "points": plain(points),
            "findings": plain(list(opening.findings)),
            "set": opening.set_name or None,
            "own": plain(list(opening.own)),
            "files": None if then.files is None else [_file(each) for each in opening.files],
            "bench": None if then.files is None else [_piece(each) for each in opening.pieces],
        }
    )
    if arguments.json:
        return DONE
    from hwsched.values.amounts import times_words

    program = then.engine.get("program", "")
    print(f"{mark} as of revision {then.letter}, frozen {second_of(then.at)} by {then.person}, {program}")
    for row in (asdict(opening.given.opening), *map(asdict, opening.given.leaves), *map(asdict, opening.given.items)):
        print("  " + ", ".join(f"{name} {value}" for name, value in row.items() if name != "id" and value is not None))
    for point in opening.points:
        print(f"  {'not worked out' if point.fit is None else point.fit.status}")
        for part in () if point.fit is None else point.fit.parts:
            much = times_words(point.given.catalogue.get(part.part), part.quantity, point.given.settings.length_style)
            print(f"    {part.role:<15} {part.part:<12} {much}  {part.reason}")
    for finding in opening.findings:
        print(f"  {finding.severity}: {finding.message}" + (f" Waived by {finding.waived_by}." * finding.waived))
    for piece in opening.pieces:
        words = [*piece.done, *(f"{w} {text}" for w, text in (("serial", piece.serial), ("lot", piece.lot)) if text)]
        print(f"  bench: {piece.role} {piece.part} #{piece.number}: {', '.join(words) or 'nothing on record'}")
    for file in opening.files:
        print(f"  file: {file.title or file.name} ({file.name}, {file.size:,} bytes, {file.hash[:8]})")
    if then.files is None:
        print("  Files and bench work are unknown: an earlier version froze this revision, which held none.")
    return DONE


def _file(held: FileThen) -> dict[str, Any]:
    return {
        "entity": held.entity,
        "name": held.name,
        "title": held.title or None,
        "note": held.note or None,
        "media_type": held.media_type,
        "byte_count": held.size,
        "sha256": held.hash,
    }


def _piece(held: PieceThen) -> dict[str, Any]:
    return {
        "role": held.role,
        "part": held.part,
        "number": held.number,
        "done": list(held.done),
        "serial": held.serial or None,
        "lot": held.lot or None,
    }


def _compare(arguments: argparse.Namespace, project: Project) -> int:
    from hwsched.cli.session import progress_bar
    from hwsched.operations.release.document_differences import document_differences
    from hwsched.operations.release.revision_differences import differences

    with progress_bar("Compare", arguments.json or arguments.quiet) as progress:
        found = differences(project, *arguments.compare, progress=progress)
    with progress_bar("Compare documents", arguments.json or arguments.quiet) as progress:
        documents = document_differences(project, found, progress=progress)
    _answer(
        compared={
            "before": found.before,
            "after": found.after,
            "openings": [
                {
                    "mark": each.mark,
                    "kind": each.kind,
                    "facts": _changed(each.facts),
                    "parts": _changed(each.parts),
                    "place": _changed(each.place),
                    "holes": _changed(each.holes),
                    "findings": _changed(each.findings),
                    "files": _changed(each.files),
                    "bench": _changed(each.bench),
                }
                for each in found.openings
            ],
            "others": _changed(found.others),
            "circuits": [
                {"name": each.name, "kind": each.kind, "lines": _changed(each.lines)} for each in found.circuits
            ],
            "documents": [{"document": each.name, "marks": list(each.marks)} for each in documents],
            "same_count": found.same,
        }
    )
    if arguments.json:
        return DONE
    otherwise = counted(len(found.openings), "opening is", "openings are")
    same = "1 is" if found.same == 1 else f"{found.same} are"
    print(f"{found.before} -> {found.after}: {otherwise} otherwise, {same} the same")
    for each in found.others:
        print(f"  {each.what}: {each.before or '-'} -> {each.after or '-'}")
    for opening in found.openings:
        print(f"{opening.mark}: {opening.kind}")
        for line in opening.lines:
            print(f"  {line.what}: {line.before or '-'} -> {line.after or '-'}")
    for circuit in found.circuits:
        print(f"Circuit {circuit.name}: {circuit.kind}")
        for line in circuit.lines:
            print(f"  {line.what}: {line.before or '-'} -> {line.after or '-'}")
    for document in documents:
        print(f"{document.title}: otherwise" + (f" for {', '.join(document.marks)}" if document.marks else ""))
    return DONE


def _changed(lines: Iterable[Line]) -> list[Changed]:
    return [{"what": each.what, "before": each.before or None, "after": each.after or None} for each in lines]


VERB = Verb(_arguments, _run, result=Revisions)
