"""`hwsched release attachments`: lists files at things, and writes them into a folder."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class AttachmentShown(TypedDict):
    """A file at a thing."""

    id: str | None
    """Null of one that a revision holds."""
    mark: str | None
    about: str
    name: str
    title: str | None
    note: str | None
    media_type: str
    byte_count: int
    sha256: str


class Attachments(TypedDict):
    """Files at things, and where they were written to."""

    attachments: list[AttachmentShown]
    files: list[str]


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_output, add_project

    add_project(parser)
    parser.add_argument("--revision", metavar="LETTER", help="those that hung there when this revision was frozen")
    parser.add_argument("words", nargs="*", metavar="THING", help="as for hwsched release attach; all when left out")
    add_output(parser, "write them into this folder; nothing there is overwritten", "--fetch", folder=True)


def _run(arguments: argparse.Namespace) -> int:
    from pathlib import Path

    from hwsched.cli.session import opened, print_json, said
    from hwsched.operations.opening.named_openings import marks_by_id
    from hwsched.operations.release.attachments import attachments_of, fetch_into
    from hwsched.operations.release.frozen_files import attachments_then
    from hwsched.operations.survey.things import thing_named

    with opened(arguments) as project:
        thing = thing_named(project, arguments.words) if arguments.words else None
        # An opening's mark alone means all that hangs at it, at its leaves and at what stands on them.
        opening = thing.row_id if thing is not None and thing.entity == "opening" else None
        alone = None if opening else thing
        if arguments.revision is None:
            found = attachments_of(project, alone, opening_id=opening)
        else:
            found = attachments_then(project, arguments.revision, alone, opening_id=opening)
        written = fetch_into(project, found, Path(arguments.output)) if arguments.output else []
        marks = marks_by_id(project, {each.opening_id for each in found if each.opening_id})
    shown: Attachments = {
        "attachments": [
            {
                "id": each.id or None,
                "mark": marks.get(each.opening_id or ""),
                "about": each.about,
                "name": each.name,
                "title": each.title or None,
                "note": each.note or None,
                "media_type": each.media_type,
                "byte_count": each.size,
                "sha256": each.hash,
            }
            for each in found
        ],
        "files": [str(path) for path in written],
    }
    print_json(shown)
    if arguments.json:
        return DONE
    for each in found:
        words = " · ".join(word for word in (each.title, each.note) if word)
        known, size = (each.id or each.hash)[:8], f"{each.size:,} bytes"
        print(f"{known}  {each.about:<20} {each.name}  {each.media_type}, {size}  {words}".rstrip())
    for path in written:
        said(arguments, f"Wrote {path}")
    if not found:
        said(arguments, "Nothing is attached.")
    return DONE


VERB = Verb(_arguments, _run, result=Attachments)
