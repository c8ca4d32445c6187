"""In which order openings are walked: place by place, and within each by mark or as the survey went."""

from dataclasses import replace
from typing import Final

from hwsched.documents.view import OpeningView, ProjectView
from hwsched.language import to_phrase
from hwsched.model.journal.history import first_written
from hwsched.model.project import Project
from hwsched.stopping import Asking

WALKS: Final = {"mark": to_phrase("By mark"), "surveyed": to_phrase("As surveyed")}
"""Orders within a place: by mark as people count; as the openings came into the project, row by row of the survey."""


def in_walking_order(project: Project, view: ProjectView, walk: str) -> ProjectView:
    """Return a view whose openings stand in the order of a walk.

    Parameters
    ----------
    project : Project
        Open project.
    view : ProjectView
        Of it; its openings stand by building, level from the lowest, and mark.
    walk : {"mark", "surveyed"}
        Order within a building's level.
    """
    if walk != "surveyed":
        return view
    with project.reading() as connection:
        came = first_written(connection, "opening", [each.given.opening.id for each in view.openings])
    places: dict[tuple[str | None, str | None], int] = {}
    for each in view.openings:
        places.setdefault(_place(each), len(places))
    # What nobody wrote down comes last, and those that came at once stay as they were.
    last = (max(came.values(), default=(0, 0))[0] + 1, 0)

    def turn(each: OpeningView) -> tuple[int, tuple[int, int]]:
        return places[_place(each)], came.get(each.given.opening.id, last)

    return replace(view, openings=Asking(sorted(view.openings, key=turn)))


def _place(each: OpeningView) -> tuple[str | None, str | None]:
    return each.given.opening.building, each.given.opening.level
