"""Photos of doors for their packets: of the pictures that are attached to an opening, or to its leaf, the first."""

from dataclasses import replace
from typing import Any

from sqlalchemy import Connection, select

from hwsched.documents.view import OpeningView, Photo, ProjectView
from hwsched.model.blobs import read_blob
from hwsched.model.bulk import among
from hwsched.model.errors import DamagedProjectError
from hwsched.model.project import Project
from hwsched.model.tables import ATTACHMENT, BLOB, LEAF_TABLE, OPENING_TABLE
from hwsched.render.pictures import PictureRefusedError, printed_photo
from hwsched.stopping import Asking, asking

_OF_DOORS = (OPENING_TABLE.name, LEAF_TABLE.name)


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
        attached = _pictures(connection, [each.given.opening.id for each in view.openings])
        openings = Asking(_with(connection, each, attached.get(each.given.opening.id, ())) for each in view.openings)
    return replace(view, openings=openings)


def _pictures(connection: Connection, ids: list[str]) -> dict[str, list[Any]]:
    """Return the pictures of openings in the order in which they were attached, those of a leaf last."""
    query = (
        select(
            ATTACHMENT.c.opening_id, ATTACHMENT.c.entity, ATTACHMENT.c.ordinal, ATTACHMENT.c.id, ATTACHMENT.c.name,
            ATTACHMENT.c.title, ATTACHMENT.c.blob,
        )
        .join(BLOB, ATTACHMENT.c.blob == BLOB.c.hash)
        .where(ATTACHMENT.c.entity.in_(_OF_DOORS), BLOB.c.media_type.like("image/%"))
    )  # fmt: skip
    found: dict[str, list[Any]] = {}
    for row in among(connection, query, ATTACHMENT.c.opening_id, ids):
        found.setdefault(row.opening_id, []).append(row)
    for rows in found.values():
        rows.sort(key=lambda row: (_OF_DOORS.index(row.entity), row.ordinal, row.id))
    return found


def _with(connection: Connection, view: OpeningView, rows: Any) -> OpeningView:
    first: Photo | None = None
    for row in asking(rows):
        name = row.title or row.name
        try:
            return replace(view, photo=Photo(name, printed_photo(read_blob(connection, row.blob))))
        except (PictureRefusedError, DamagedProjectError) as error:
            first = first or Photo(name, refused=str(error))
    return view if first is None else replace(view, photo=first)
