"""`hwsched release transmit`: writes down which files went to whom; lists that; fetches them as they went out."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse
    from pathlib import Path

    from hwsched.model.project import Project


class SentRecord(TypedDict):
    """A file that went out; null where it showed the project as it stood."""

    name: str
    sha256: str
    byte_count: int
    revision: str | None


class TransmittalRecord(TypedDict):
    """What went to whom."""

    number: int
    at: str
    who: str
    recipient: str
    purpose: str | None
    note: str | None
    files: list[SentRecord]


class Transmittals(TypedDict):
    """Transmittals, the oldest first, and the files that were fetched."""

    transmittals: list[TransmittalRecord]
    fetched: list[str]


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_output, add_project

    add_project(parser)
    parser.add_argument("files", nargs="*", metavar="FILE", help="files that went out; none: list what is written down")
    parser.add_argument("--recipient", default="", help="to whom they went")
    parser.add_argument("--purpose", default="", help="what for, such as 'for approval'")
    parser.add_argument("--note", default="", help="what else should be known")
    parser.add_argument("--revision", metavar="LETTER", help="revision that they show, if any")
    parser.add_argument("--fetch", type=int, metavar="NUMBER", help="write the files of a transmittal as they went out")
    add_output(parser, "folder for what is fetched (default: here)", "--to", folder=True)


def _run(arguments: argparse.Namespace) -> int:
    from pathlib import Path

    from hwsched.cli.session import opened, said, who, wrong_usage
    from hwsched.operations.release.transmittals import fetch_transmittal, transmit

    if arguments.files and not arguments.recipient:
        return wrong_usage("files go to somebody: --recipient NAME")
    if arguments.fetch is not None and arguments.files:
        return wrong_usage("--fetch takes no files")
    if not arguments.files and (arguments.recipient or arguments.purpose or arguments.note or arguments.revision):
        return wrong_usage("--recipient, --purpose, --note and --revision go with files")
    fetched: list[Path] = []
    with opened(arguments) as project:
        if arguments.files:
            changes = transmit(
                project,
                arguments.recipient,
                [Path(each) for each in arguments.files],
                who=who(arguments),
                purpose=arguments.purpose,
                note=arguments.note,
                revision=arguments.revision,
            )
            said(arguments, f"Written down; change set {changes.number} written.")
        elif arguments.fetch is not None:
            fetched = fetch_transmittal(project, arguments.fetch, Path(arguments.output or "."))
            for path in fetched:
                said(arguments, f"Wrote {path}")
        return _tell(arguments, project, fetched)


def _tell(arguments: argparse.Namespace, project: Project, fetched: list[Path]) -> int:
    from hwsched.cli.session import print_json, said
    from hwsched.model.time_zone import second_of
    from hwsched.operations.release.transmittals import transmittals

    found = transmittals(project)
    told: Transmittals = {
        "transmittals": [
            {
                "number": each.number,
                "at": each.at,
                "who": each.person,
                "recipient": each.recipient,
                "purpose": each.purpose or None,
                "note": each.note or None,
                "files": [
                    {
                        "name": file.name,
                        "sha256": file.hash,
                        "byte_count": file.size,
                        "revision": file.revision or None,
                    }
                    for file in each.files
                ],
            }
            for each in found
        ],
        "fetched": [str(path) for path in fetched],
    }
    print_json(told)
    if arguments.json or fetched:
        return DONE
    for each in found:
        what = f", {each.purpose}" if each.purpose else ""
        print(f"{each.number:<4} {second_of(each.at)}  {each.person:<16} to {each.recipient}{what}")
        for file in each.files:
            print(f"       {file.name} ({file.revision or 'as it stood'}, {file.hash[:12]})")
    if not found:
        said(arguments, "Nothing is written down as sent.")
    return DONE


VERB = Verb(_arguments, _run, result=Transmittals)
