"""Issuing true-size templates: one for all openings that share it, in one file at 1:1."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from hwsched.documents.release.packet_facts import situations
from hwsched.documents.release.packet_work import TEMPLATE_STEP
from hwsched.documents.release.template_names import faces_of, template_name
from hwsched.documents.view import ProjectView
from hwsched.drawings import template
from hwsched.drawings.drawing import Drawing
from hwsched.drawings.handing import Face
from hwsched.language import phrase
from hwsched.model.errors import ValueRefusedError
from hwsched.render.true_size import render_true_size
from hwsched.telling.natural import natural
from hwsched.values import PointFit
from hwsched.work.plan import plan
from hwsched.writing import made_folder


def templates(view: ProjectView) -> list[Drawing]:
    """Return the templates of lock points that are fitted and drilled, a face each, under the names that packets use.

    Those alike share one that says at which step of which packets it is laid on.
    """
    return [drawn for drawn, _ in _drawn(view)]


def _drawn(view: ProjectView) -> list[tuple[Drawing, list[str]]]:
    """Return each template with the openings and steps that it holds for."""
    style = view.length_style
    groups: dict[str, list[tuple[PointFit, Face, str]]] = {}
    for opening in view.openings:
        if opening.fit is None or opening.fit.status != "fits":
            continue
        for at, situation in zip(opening.points, situations(opening), strict=True):
            step = plan(situation).step(TEMPLATE_STEP) if at.fit is not None and at.fit.holes else None
            for face in faces_of(at.given, at.fit):
                if at.fit is not None:
                    name = template_name(template(at.given, at.fit, face, (), style))
                    groups.setdefault(name, []).append((at, face, "" if step is None else str(step.number)))
    found = []
    for name, alike in groups.items():
        first, face, _ = alike[0]
        if first.fit is not None:
            said = [_said(at, step) for at, _, step in alike]
            drawn = template(first.given, first.fit, face, said, style)
            found.append((replace(drawn, title=phrase("{name}: {title}", name=name, title=drawn.title)), said))
    return found


def _said(at: PointFit, step: str) -> str:
    name = at.given.point.name
    mark = f"{at.given.opening.mark} ({name})" if name else at.given.opening.mark
    return phrase("{mark} at step {step}", mark=mark, step=step) if step else mark


def issue_templates(
    view: ProjectView,
    folder: Path,
    *,
    paper: str = "letter",
    progress: Callable[[int, int], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> list[Path]:
    """Write the templates of a project view into one PDF at 1:1, in front of them where each lies by its opening.

    Raises
    ------
    ValueRefusedError
        When no opening has a hole to be drilled.
    UnwritableError
        When the folder cannot be written.
    """
    found = _drawn(view)
    if not found:
        raise ValueRefusedError("templates", "no opening fits with a hole to be drilled")
    path = made_folder(folder) / "templates.pdf"
    listed = [(said, place) for place, (_, alike) in enumerate(found) for said in alike]
    render_true_size(
        [drawn for drawn, _ in found],
        path,
        "a4" if paper == "a4" else "letter",
        heading=f"{view.title} · {view.revision} · {view.date}",
        date=view.date,
        progress=progress,
        cancelled=cancelled,
        contents=sorted(listed, key=lambda each: natural(each[0])),
    )
    return [path]
