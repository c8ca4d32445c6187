"""Issuing true-size templates: one for all openings that share it, in one file at 1:1."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from hwsched.documents.release.packet_facts import situations
from hwsched.documents.release.packet_work import TEMPLATE_STEP
from hwsched.documents.release.template_names import TEMPLATE_FILE, faces_of, template_name
from hwsched.documents.view import ProjectView
from hwsched.drawings.drawing import Drawing
from hwsched.drawings.handing import Face
from hwsched.drawings.opening.template import template
from hwsched.language import in_language, phrase
from hwsched.model.errors import ValueRefusedError
from hwsched.render.true_size import render_true_size
from hwsched.telling.natural import natural
from hwsched.values import PointFit
from hwsched.work.plan import plan
from hwsched.writing import HeldFileError, HeldFilesError, made_folder


def templates(view: ProjectView) -> list[Drawing]:
    """Return the templates of lock points that are fitted and drilled, a face each, under the names that packets use.

    Those alike share one that says at which step of which packets it is laid on.
    """
    return [drawn for drawn, _ in _drawn(view).values()]


def _drawn(view: ProjectView) -> dict[str, tuple[Drawing, list[str]]]:
    """Return each template by its name, with the openings and steps that it holds for."""
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
    found = {}
    for name, alike in groups.items():
        first, face, _ = alike[0]
        if first.fit is not None:
            said = [_said(at, step) for at, _, step in alike]
            drawn = template(first.given, first.fit, face, said, style)
            found[name] = replace(drawn, title=phrase("{name}: {title}", name=name, title=drawn.title)), said
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
    HeldFilesError
        When another program has the file open.
    UnwritableError
        When the folder cannot be written.
    """
    _, files = issue_templates_first(view, folder, paper=paper, progress=progress, cancelled=cancelled)
    return files


def issue_templates_first(
    view: ProjectView,
    folder: Path,
    *,
    paper: str = "",
    progress: Callable[[int, int], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> tuple[ProjectView, list[Path]]:
    """Write the templates; return also the view of which packets and strips name the page of each as it was written.

    The parameters and errors are those of `issue_templates`.
    """
    # A project's documents speak its office's language, whoever prints them: names of templates hang on it.
    with in_language(view.office.language):
        return _issued(view, folder, paper or view.office.paper, progress, cancelled)


def _issued(
    view: ProjectView,
    folder: Path,
    paper: str,
    progress: Callable[[int, int], None] | None,
    cancelled: Callable[[], bool] | None,
) -> tuple[ProjectView, list[Path]]:
    found = _drawn(view)
    if not found:
        raise ValueRefusedError("templates", "no opening fits with a hole to be drilled")
    path = made_folder(folder) / TEMPLATE_FILE
    listed = [(said, place) for place, (_, alike) in enumerate(found.values()) for said in alike]
    try:
        sheets = render_true_size(
            [drawn for drawn, _ in found.values()],
            path,
            "a4" if paper == "a4" else "letter",
            heading=f"{view.title} · {view.revision} · {view.date}",
            date=view.date,
            progress=progress,
            cancelled=cancelled,
            contents=sorted(listed, key=lambda each: natural(each[0])),
        )
    except HeldFileError as error:
        raise HeldFilesError([path], []) from error
    return replace(view, template_pages=dict(zip(found, sheets.first, strict=True))), [path]
