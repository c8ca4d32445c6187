"""Issuing true-size templates: one for all openings that share it, in one file at 1:1."""

from collections.abc import Callable
from pathlib import Path

from hwsched.cases import Fit
from hwsched.documents import ProjectView
from hwsched.drawings import template
from hwsched.drawings.drawing import Drawing
from hwsched.drawings.handing import Face
from hwsched.model.errors import ValueRefusedError
from hwsched.render.true_size import render_true_size
from hwsched.writing import made_folder


def templates(view: ProjectView) -> list[Drawing]:
    """Return the templates of openings that are fitted and drilled, a face each.

    Openings alike share one that names their marks.
    """
    style = view.length_style
    groups: dict[tuple[object, ...], list[tuple[int, Face]]] = {}
    for place, opening in enumerate(view.openings):
        fit = opening.fit
        if fit is None or fit.status != "fitted" or not fit.holes or opening.lock_leaf is None:
            continue
        for face in _faces(fit):
            drawn = template(opening.case, fit, face, (), style)
            groups.setdefault((face, drawn.shapes, drawn.bounds, drawn.notes), []).append((place, face))
    found = []
    for places in groups.values():
        number, face = places[0]
        first = view.openings[number]
        marks = [view.openings[place].mark for place, _ in places]
        if first.fit is not None:
            found.append(template(first.case, first.fit, face, marks, style))
    return found


def _faces(fit: Fit) -> tuple[Face, ...]:
    """Name the faces that want a template: the unit's side, and the key side where a hole's centre is marked there."""
    on_key_side = any(hole.face == "key" and not hole.by_template for hole in fit.holes)
    return ("secured", "key") if on_key_side else ("secured",)


def issue_templates(
    view: ProjectView,
    folder: Path,
    *,
    paper: str = "letter",
    progress: Callable[[int, int], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> list[Path]:
    """Write the templates of a project view into one PDF at 1:1.

    Raises
    ------
    ValueRefusedError
        When no opening has a hole to be drilled.
    UnwritableError
        When the folder cannot be written.
    """
    drawings = templates(view)
    if not drawings:
        raise ValueRefusedError("templates", "no opening is fitted with a hole to be drilled")
    path = made_folder(folder) / "templates.pdf"
    render_true_size(
        drawings,
        path,
        "a4" if paper == "a4" else "letter",
        heading=f"{view.title} · {view.revision} · {view.date}",
        progress=progress,
        cancelled=cancelled,
    )
    return [path]
