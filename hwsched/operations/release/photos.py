"""Photos of doors for their packets: of the pictures that are attached to an opening, or to its leaf, the first."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Final

from sqlalchemy import Connection

from hwsched.documents.view import OpeningView, Photo, ProjectView
from hwsched.model.blobs import read_blob
from hwsched.model.errors import DamagedProjectError, MissingRowError
from hwsched.model.project import Project
from hwsched.model.tables import LEAF_TABLE, OPENING_TABLE
from hwsched.operations.release.frozen_files import files_of_openings
from hwsched.render.pictures import PictureRefusedError, printed_photo
from hwsched.stopping import Asking, asking
from hwsched.values.revision import FileThen, RevisionThen

_OF_DOORS: Final = (OPENING_TABLE.name, LEAF_TABLE.name)


def with_photos(project: Project, view: ProjectView) -> ProjectView:
    """Return a view whose openings have their photos.

    What cannot be printed stands in no way of the packet, which says so; where a later picture can be, that is taken.

    Parameters
    ----------
    project : Project
        Open project.
    view : ProjectView
        Of it.
    """
    with project.reading() as connection:
        files = files_of_openings(connection, [each.given.opening.id for each in view.openings])
        openings = Asking(
            _with(connection, each, _of_door(files.get(each.given.opening.id, ()))) for each in view.openings
        )
    return replace(view, openings=openings)


def with_photos_then(project: Project, view: ProjectView, then: RevisionThen) -> ProjectView:
    """Return the view of a revision whose openings have the photos that hung there when it was frozen."""
    files = {each.given.opening.id: _of_door(each.files) for each in then.openings}
    with project.reading() as connection:
        openings = Asking(_with(connection, each, files.get(each.given.opening.id, ())) for each in view.openings)
    return replace(view, openings=openings)


def with_photos_unread(view: ProjectView, files: Mapping[str, Sequence[FileThen]]) -> ProjectView:
    """Return a view whose openings have their photos by hash alone: enough to tell which sheet has another one."""
    openings = tuple(
        replace(each, photo=Photo(found[0].title or found[0].name, found[0].hash.encode()))
        if (found := _of_door(files.get(each.given.opening.id, ())))
        else each
        for each in view.openings
    )
    return replace(view, openings=openings)


def _of_door(files: Sequence[FileThen]) -> list[FileThen]:
    found = [each for each in files if each.entity in _OF_DOORS and each.media_type.startswith("image/")]
    return sorted(found, key=lambda each: _OF_DOORS.index(each.entity))


def _with(connection: Connection, view: OpeningView, files: Sequence[FileThen]) -> OpeningView:
    first: Photo | None = None
    for file in asking(files):
        name = file.title or file.name
        try:
            return replace(view, photo=Photo(name, printed_photo(read_blob(connection, file.hash))))
        except (PictureRefusedError, DamagedProjectError, MissingRowError) as error:
            first = first or Photo(name, refused=str(error))
    return view if first is None else replace(view, photo=first)
