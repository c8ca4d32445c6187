"""`hwsched release attachments`: lists files at things, and writes them into a folder."""

from __future__ import annotations

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("words", nargs="*", metavar="THING", help="as for hwsched attach; all when left out")
    parser.add_argument("--fetch", metavar="FOLDER", help="write them into this folder; nothing there is overwritten")


def _run(arguments: argparse.Namespace) -> int:
    from dataclasses import asdict
    from pathlib import Path

    from hwsched.cli.session import opened, print_json
    from hwsched.operations.release.attachments import attachments_of, fetch_into
    from hwsched.operations.survey.things import thing_named

    with opened(arguments) as project:
        thing = thing_named(project, arguments.words) if arguments.words else None
        # An opening's mark alone means all that hangs at it, at its leaves and at what stands on them.
        opening = thing.row_id if thing is not None and thing.entity == "opening" else None
        found = attachments_of(project, None if opening else thing, opening_id=opening)
        written = fetch_into(project, found, Path(arguments.fetch)) if arguments.fetch else []
    if arguments.json:
        print_json({"attachments": [asdict(each) for each in found], "written": [str(path) for path in written]})
        return DONE
    for each in found:
        words = " · ".join(word for word in (each.title, each.note) if word)
        print(f"{each.id[:8]}  {each.about:<20} {each.name}  {each.media_type}, {each.size:,} bytes  {words}".rstrip())
    for path in written:
        print(f"Wrote {path}")
    if not found:
        print("Nothing is attached.")
    return DONE


VERB = Verb(_arguments, _run)
