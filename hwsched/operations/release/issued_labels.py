"""Issuing labels: one a box and opening, with mark, place and the code of the sheet that it belongs to."""

from pathlib import Path

from hwsched.documents import words
from hwsched.documents.view import ProjectView
from hwsched.model.errors import ValueRefusedError
from hwsched.operations.release.sheet_codes import sheet_code
from hwsched.render.labels import Label, LabelSheet, label_sheets, render_labels
from hwsched.writing import made_folder

FURTHEST_MM = 10.0
"""How far labels may be shifted: a printer that feeds farther off is mended, not followed."""


def label_sheet(name: str) -> LabelSheet:
    """Return the label sheet of a name; raises ValueRefusedError."""
    for sheet in label_sheets():
        if sheet.name == name:
            return sheet
    raise ValueRefusedError("sheet", f"there is no '{name}'; accepted: {', '.join(s.name for s in label_sheets())}")


def opening_labels(view: ProjectView) -> list[Label]:
    """Return a label for each opening that may be picked for, in the order of the view."""
    found = []
    for each in view.openings:
        if each.ready:
            opening = each.given.opening
            where = (
                words.place(opening.building, opening.level),
                words.location(opening.room_from, opening.room_to),
            )
            found.append(Label(each.mark, tuple(line for line in where if line), sheet_code(each.points)))
    return found


def issue_labels(
    view: ProjectView,
    folder: Path,
    sheet: str,
    *,
    start: int = 1,
    shift_mm: tuple[float, float] = (0.0, 0.0),
) -> list[Path]:
    """Write labels of the openings of a view that may be picked for, onto sheets of a geometry.

    Parameters
    ----------
    view : ProjectView
        Openings.
    folder : Path
        Made if need be.
    sheet : str
        Name of the label sheet.
    start : int
        Place of the first label on the first sheet, counted from 1 along the rows.
    shift_mm : tuple of float
        Right and down [mm].

    Returns
    -------
    list of Path
        The file.

    Raises
    ------
    ValueRefusedError
        For a sheet or a place that there is not, a shift beyond 10 mm, or where no opening may be picked for.
    UnwritableError
        Where it cannot be written.
    """
    laid = label_sheet(sheet)
    if not 1 <= start <= laid.count:
        raise ValueRefusedError("start", f"the sheet {laid.name} has labels 1 to {laid.count}, not {start}")
    if any(not abs(each) <= FURTHEST_MM for each in shift_mm):
        raise ValueRefusedError("shift", f"at most {FURTHEST_MM:g} mm to either side")
    labels = opening_labels(view)
    if not labels:
        raise ValueRefusedError("labels", "no opening may be picked for; the release gate says what is missing")
    path = made_folder(folder) / "labels.pdf"
    render_labels(labels, path, laid, start=start, shift_mm=shift_mm, title=f"Labels, {view.title}", date=view.date)
    return [path]
