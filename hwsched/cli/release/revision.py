"""`hwsched release revision`: lists revisions, freezes one, shows what it holds, compares."""

from __future__ import annotations

from hwsched.cli.verb import DONE, WRONG_USAGE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse

    from hwsched.model.project import Project

_NEXT = "the next"


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
    import sys

    from hwsched.cli.session import opened

    if arguments.compare is not None and len(arguments.compare) > 2:
        print("hwsched revision: --compare takes one letter or two", file=sys.stderr)
        return WRONG_USAGE
    if arguments.freeze is None and (arguments.building or arguments.level or arguments.marks or arguments.purpose):
        print("hwsched revision: --purpose, --building, --level and --mark go with --freeze", file=sys.stderr)
        return WRONG_USAGE
    if arguments.level and not arguments.building:
        print("hwsched revision: --level goes with --building", file=sys.stderr)
        return WRONG_USAGE
    with opened(arguments) as project:
        if arguments.freeze is not None:
            return _freeze(arguments, project)
        if arguments.show is not None:
            return _show(arguments, project)
        if arguments.compare is not None:
            return _compare(arguments, project)
        return _list(arguments, project)


def _list(arguments: argparse.Namespace, project: Project) -> int:
    from hwsched.cli.session import print_json
    from hwsched.operations.release.revisions import revisions
    from hwsched.values.revision import Scope

    found = revisions(project)
    if arguments.json:
        print_json(
            [
                {"letter": r.letter, "at": r.at, "person": r.person, "purpose": r.purpose, "scope": r.scope}
                for r in found
            ]
        )
        return DONE
    for each in found:
        words = " · ".join(word for word in (Scope.of(each.scope).words, each.purpose) if word)
        print(f"{each.letter:<3} {each.at}  {each.person:<16} {words}")
    if not found:
        print("No revision yet; hwsched revision PROJECT --freeze makes one.")
    return DONE


def _freeze(arguments: argparse.Namespace, project: Project) -> int:
    from hwsched.cli.session import print_json, progress_bar, who
    from hwsched.operations.release.freezing import freeze
    from hwsched.values.revision import Scope

    with progress_bar("Freeze", arguments.json) as progress:
        made = freeze(
            project,
            who=who(arguments),
            letter=None if arguments.freeze == _NEXT else arguments.freeze,
            purpose=arguments.purpose,
            scope=Scope(arguments.building, arguments.level, tuple(arguments.marks)),
            progress=progress,
        )
    if arguments.json:
        print_json(
            {
                "letter": made.letter,
                "openings": made.openings,
                "contents": made.contents,
                "change_set": made.changes.number,
            }
        )
    else:
        print(f"Revision {made.letter}: {made.openings} openings frozen; change set {made.changes.number} written.")
    return DONE


def _show(arguments: argparse.Namespace, project: Project) -> int:
    from dataclasses import asdict

    import msgspec

    from hwsched.cli.session import print_json
    from hwsched.operations.release.revisions import read_revision

    letter, mark = arguments.show
    then = read_revision(project, letter, [mark])
    (opening,) = then.openings
    if arguments.json:
        facts = {"opening": opening.given.opening, "leaves": opening.given.leaves, "items": opening.given.items}
        points = [{"chosen": point.given.chosen, "fit": point.fit} for point in opening.points]
        shown = {**facts, "points": points, "findings": opening.findings, "set": opening.set_name, "own": opening.own}
        print_json({"letter": then.letter, "at": then.at, "engine": then.engine, **msgspec.to_builtins(shown)})
        return DONE
    print(f"{mark} as of revision {then.letter}, frozen {then.at} by {then.person}, {then.engine.get('program', '')}")
    for row in (asdict(opening.given.opening), *map(asdict, opening.given.leaves), *map(asdict, opening.given.items)):
        print("  " + ", ".join(f"{name} {value}" for name, value in row.items() if name != "id" and value is not None))
    for point in opening.points:
        print(f"  {'not worked out' if point.fit is None else point.fit.status}")
        for part in () if point.fit is None else point.fit.parts:
            print(f"    {part.role:<15} {part.part:<12} x{part.quantity:g}  {part.reason}")
    for finding in opening.findings:
        print(f"  {finding.severity}: {finding.message}" + (f" Waived by {finding.waived_by}." * finding.waived))
    return DONE


def _compare(arguments: argparse.Namespace, project: Project) -> int:
    from dataclasses import asdict

    from hwsched.cli.session import print_json, progress_bar
    from hwsched.operations.release.revision_differences import differences

    with progress_bar("Compare", arguments.json) as progress:
        found = differences(project, *arguments.compare, progress=progress)
    if arguments.json:
        print_json(asdict(found))
        return DONE
    print(f"{found.before} -> {found.after}: {len(found.openings)} openings are otherwise, {found.same} are the same")
    for each in found.others:
        print(f"  {each.what}: {each.before or '-'} -> {each.after or '-'}")
    for opening in found.openings:
        print(f"{opening.mark}: {opening.kind}")
        for line in opening.lines:
            print(f"  {line.what}: {line.before or '-'} -> {line.after or '-'}")
    return DONE


VERB = Verb(_arguments, _run)
