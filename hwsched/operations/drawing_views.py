"""Drawing one view of an opening into a file: SVG for a screen, light or dark."""

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Final

from hwsched.cases import Case, Fit
from hwsched.drawings import bore_detail, edge_view, elevation, face_detail, section, template
from hwsched.drawings.drawing import Drawing
from hwsched.model.errors import ValueRefusedError
from hwsched.model.project import Project
from hwsched.operations.checking import Checker, look_again
from hwsched.operations.choosing import openings_of_marks
from hwsched.quantities import LENGTH_STYLES, LengthStyle
from hwsched.render.atomic import replacing
from hwsched.render.screen import DARK, LIGHT
from hwsched.render.svg import render_svg

VIEWS: Final[Mapping[str, Callable[[Case, Fit, LengthStyle], Drawing]]] = {
    "secured-side": lambda case, fit, style: elevation(case, fit, "secured", style),
    "key-side": lambda case, fit, style: elevation(case, fit, "key", style),
    "detail": lambda case, fit, style: face_detail(case, fit, "secured", style),
    "section": section,
    "edge": edge_view,
    "bores": bore_detail,
    "template": lambda case, fit, style: template(case, fit, "secured", (case.opening.mark,), style),
}

SCALE: Final = 1 / 8
"""Letters keep their paper size, so this decides how large the opening is beside them."""


def draw(project: Project, mark: str, view: str, path: Path, *, dark: bool = False) -> Path:
    """Write one view of an opening as SVG; the file appears whole or not at all.

    Raises
    ------
    MissingRowError, ValueRefusedError
        For an unknown mark or view, or a folder that cannot be written.
    """
    made = VIEWS.get(view)
    if made is None:
        raise ValueRefusedError("view", f"there is no '{view}'; accepted: {', '.join(VIEWS)}")
    opening = openings_of_marks(project, [mark])[0]
    (checked,) = look_again(project, [opening], checker=Checker())
    style: LengthStyle = next((s for s in LENGTH_STYLES if s == project.length_style), "fraction")
    text = render_svg(made(checked.case, checked.fit or Fit("unknown"), style), SCALE, DARK if dark else LIGHT)
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        with replacing(path) as partial:
            partial.write_text(text, encoding="utf-8")
    except OSError as error:
        raise ValueRefusedError("file", f"{path} cannot be written: {error.strerror or error}") from error
    return path
