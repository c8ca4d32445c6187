"""Drawing one view of an opening into a file: SVG or PDF, light or dark."""

from collections.abc import Callable, Collection, Mapping, Sequence
from pathlib import Path
from typing import Final

from hwsched.choices import ALL_VIEWS, POWER_VIEWS
from hwsched.drawings.drawing import Drawing, View
from hwsched.drawings.layers import LAYERS, Layer
from hwsched.drawings.opening.bore_detail import bore_detail
from hwsched.drawings.opening.edge_view import edge_view
from hwsched.drawings.opening.elevation import elevation
from hwsched.drawings.opening.exploded import exploded
from hwsched.drawings.opening.face_detail import face_detail
from hwsched.drawings.opening.scene import views_of
from hwsched.drawings.opening.section import section
from hwsched.drawings.opening.template import template
from hwsched.drawings.power.riser import risers
from hwsched.drawings.power.voltage_plot import voltage_plot
from hwsched.drawings.power.wiring_sheet import wiring_sheet
from hwsched.drawings.power.wiring_way import leaves_of
from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.project import Project
from hwsched.operations.findings.checking import Checker, look_again
from hwsched.operations.opening.lock_points import point_named
from hwsched.operations.opening.named_openings import openings_of_marks
from hwsched.operations.power.power_results import opening_levels, power_result
from hwsched.operations.snapshot import of_one_state
from hwsched.quantities import LENGTH_STYLES, LengthStyle
from hwsched.render.scene import Region, Scene, on_paper, stood
from hwsched.render.scene_pdf import render_scene_pdf
from hwsched.render.screen import DARK, LIGHT, Look
from hwsched.render.svg import render_svg, svg_of
from hwsched.render.view_pdf import render_view_pdf
from hwsched.values import Fit, OpeningInput, PointFit
from hwsched.writing import UnwritableError, check_ending, is_stream, made_folder, replacing

_Beside = Sequence[PointFit]
"""The opening's other lock points."""

VIEWS: Final[Mapping[str, Callable[[OpeningInput, Fit, LengthStyle, _Beside], Drawing]]] = {
    "inside": lambda given, fit, style, beside: elevation(given, fit, "inside", style, beside=beside),
    "key-side": lambda given, fit, style, beside: elevation(given, fit, "key", style, beside=beside),
    "detail": lambda given, fit, style, _: face_detail(given, fit, "inside", style),
    "section": lambda given, fit, style, _: section(given, fit, style),
    "edge": lambda given, fit, style, _: edge_view(given, fit, style),
    "bores": lambda given, fit, style, _: bore_detail(given, fit, style),
    "template": lambda given, fit, style, _: template(given, fit, "inside", (given.opening.mark,), style),
    "exploded": lambda given, fit, _, __: exploded(given, fit),
}

SCALE: Final = 1 / 8
"""Letters keep their paper size, so this decides how large the opening is beside them."""


@of_one_state
def draw(
    project: Project,
    mark: str,
    view: str,
    path: Path,
    *,
    dark: bool = False,
    point: str | None = None,
    layers: Collection[Layer] = tuple(LAYERS),
    paper: str = "letter",
) -> list[Path]:
    """Write one view of an opening, or of what feeds openings; the ending says whether as SVG or PDF.

    A riser that takes several sheets is one PDF of several pages, and as SVG several files: ``name.svg``,
    ``name-2.svg``. Of an opening with several lock points one is drawn: that of this name or number, else the first.
    Each file appears whole or not at all.

    ``all`` is one sheet with both faces, edge and section, of which ``layers`` are shown; as PDF it stands on ``paper``
    at the largest standard scale.

    Returns
    -------
    list of Path
        The files.

    Raises
    ------
    MissingRowError, ValueRefusedError
        For an unknown mark or view.
    UnwritableError
        For a folder that cannot be written, a file that ends otherwise, or several sheets for one pipe.
    """
    check_ending(path, (".svg", ".pdf"), "a drawing")
    look = DARK if dark else LIGHT
    if view in POWER_VIEWS:
        return _write(path, _power(project, mark, view), 1.0, look)
    made = VIEWS.get(view)
    if made is None and view != ALL_VIEWS:
        raise ValueRefusedError(
            "view", f"there is no '{view}'; accepted: {', '.join((*VIEWS, ALL_VIEWS, *POWER_VIEWS))}"
        )
    opening = openings_of_marks(project, [mark])[0]
    (checked,) = look_again(project, [opening], checker=Checker())
    style: LengthStyle = next((s for s in LENGTH_STYLES if s == project.length_style), "fraction")
    wanted = point_named(project, opening, point) or checked.points[0].given.point.id
    at = next((each for each in checked.points if each.given.point.id == wanted), checked.points[0])
    beside = [each for each in checked.points if each is not at]
    if made is None:
        views = views_of(at.given, at.fit or Fit("to-measure"), style, beside=beside)
        return [_write_all(path, views, mark, layers, paper, style, look)]
    return _write(path, [made(at.given, at.fit or Fit("to-measure"), style, beside)], SCALE, look)


def _write_all(
    path: Path,
    views: Sequence[View],
    mark: str,
    layers: Collection[Layer],
    paper: str,
    style: LengthStyle,
    look: Look,
) -> Path:
    scene = stood(views, SCALE)
    made_folder(path.parent)
    if path.suffix.casefold() == ".pdf":
        render_scene_pdf(scene, path, mark, layers=layers, paper=paper, lengths=style, look=look)
    else:
        with replacing(path) as partial:
            partial.write_text(svg_of(on_paper(scene, SCALE, layers), mark, look), encoding="utf-8")
    return path


def print_seen(
    scene: Scene,
    path: Path,
    title: str,
    *,
    layers: Collection[Layer],
    within: Region | None,
    paper: str = "letter",
    lengths: LengthStyle = "fraction",
) -> float:
    """Write what is seen of a scene as PDF, to scale; returns the scale's denominator.

    Raises
    ------
    UnwritableError
        Where it cannot be written.
    """
    check_ending(path, (".pdf",), "a drawing")
    made_folder(path.parent)
    return render_scene_pdf(scene, path, title, layers=layers, within=within, paper=paper, lengths=lengths)


def _write(path: Path, drawings: Sequence[Drawing], scale: float, look: Look) -> list[Path]:
    made_folder(path.parent)
    if path.suffix.casefold() == ".pdf":
        render_view_pdf(drawings, path, scale, look)
        return [path]
    if len(drawings) > 1 and is_stream(path):
        raise UnwritableError(f"{path} cannot be written: these are {len(drawings)} sheets; write them to a file")
    written = [path if n == 1 else path.with_name(f"{path.stem}-{n}{path.suffix}") for n in range(1, len(drawings) + 1)]
    for each, drawing in zip(written, drawings, strict=True):
        with replacing(each) as partial:
            partial.write_text(render_svg(drawing, scale, look), encoding="utf-8")
    return written


def _power(project: Project, name: str, view: str) -> Sequence[Drawing]:
    """Draw what feeds openings; raises MissingRowError where nothing of that name is laid."""
    style: LengthStyle = next((s for s in LENGTH_STYLES if s == project.length_style), "fraction")
    work = power_result(project)
    if view == "riser":
        if all(supply.supply.building != name for supply in work.supplies):
            raise MissingRowError(f"no supply stands in {name}")
        levels = opening_levels(project)
        return risers(work, name, levels, style)
    if view == "voltages":
        for supply in work.supplies:
            for circuit in supply.circuits:
                if f"{supply.supply.name}/{circuit.circuit.name}" == name:
                    return [voltage_plot(supply, circuit, style)]
        raise MissingRowError(f"no circuit {name} is laid; a circuit is named SUPPLY/CIRCUIT")
    opening = openings_of_marks(project, [name])[0]
    found = work.circuit_of(opening)
    if found is None:
        raise MissingRowError(f"{name} is on no circuit")
    return [wiring_sheet(*found, opening, style, leaf=leaf) for leaf in leaves_of(found[1], opening)]
