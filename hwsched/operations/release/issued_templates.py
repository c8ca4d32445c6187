"""Issuing true-size templates: one for all openings that share it, in one file at 1:1."""

from collections.abc import Callable
from pathlib import Path

from hwsched.documents.view import ProjectView
from hwsched.drawings import template
from hwsched.drawings.drawing import Drawing
from hwsched.drawings.handing import Face
from hwsched.model.errors import ValueRefusedError
from hwsched.render.true_size import render_true_size
from hwsched.rules.reading import lock_leaf
from hwsched.values import Fit, PointFit
from hwsched.writing import made_folder


def templates(view: ProjectView) -> list[Drawing]:
    """Return the templates of lock points that are fitted and drilled, a face each.

    Those alike share one that names their marks.
    """
    style = view.length_style
    groups: dict[tuple[object, ...], list[tuple[PointFit, Face]]] = {}
    for opening in view.openings:
        for at in opening.points if opening.fit is not None and opening.fit.status == "fits" else ():
            if at.fit is None or not at.fit.holes or lock_leaf(at.given) is None:
                continue
            for face in _faces(at.fit):
                drawn = template(at.given, at.fit, face, (), style)
                groups.setdefault((face, drawn.shapes, drawn.bounds, drawn.notes), []).append((at, face))
    found = []
    for alike in groups.values():
        first, face = alike[0]
        if first.fit is not None:
            found.append(template(first.given, first.fit, face, [_said(at) for at, _ in alike], style))
    return found


def _said(at: PointFit) -> str:
    name = at.given.point.name
    return f"{at.given.opening.mark} ({name})" if name else at.given.opening.mark


def _faces(fit: Fit) -> tuple[Face, ...]:
    """Name the faces that want a template: the unit's side, and the key side where a hole's centre is marked there."""
    on_key_side = any(hole.face == "key" and not hole.by_template for hole in fit.holes)
    return ("inside", "key") if on_key_side else ("inside",)


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
        raise ValueRefusedError("templates", "no opening fits with a hole to be drilled")
    path = made_folder(folder) / "templates.pdf"
    render_true_size(
        drawings,
        path,
        "a4" if paper == "a4" else "letter",
        heading=f"{view.title} · {view.revision} · {view.date}",
        date=view.date,
        progress=progress,
        cancelled=cancelled,
    )
    return [path]
