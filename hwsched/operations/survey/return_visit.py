"""The return visit: the sheet as PDF, and per building a survey workbook, as far as known, to be imported back."""

from collections.abc import Collection
from pathlib import Path

from hwsched.documents.survey.return_visit import RETURN_VISIT, to_visit
from hwsched.model.errors import ValueRefusedError
from hwsched.model.project import Project
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.release.issued_documents import issue
from hwsched.operations.release.project_view import project_view
from hwsched.operations.snapshot import of_one_state
from hwsched.operations.survey.survey_forms import write_form
from hwsched.render.file_names import safe_file_name
from hwsched.rules.missing import MissingFact, missing_facts


@of_one_state
def missing_and_visit(
    project: Project, folder: Path | None, *, ids: Collection[str] | None = None, paper: str = "letter"
) -> tuple[tuple[MissingFact, ...], list[Path]]:
    """Return the facts that are missing, most useful first; with a folder, write the return visit of the same state.

    With ``ids`` only of these openings. Raises as `issue_return_visit`.
    """
    checked = check_openings(project, ids)
    found = missing_facts((each.given.opening.mark, each.fit, each.findings) for each in checked)
    return found, issue_return_visit(project, folder, ids=ids, paper=paper) if folder is not None else []


@of_one_state
def issue_return_visit(
    project: Project, folder: Path, *, ids: Collection[str] | None = None, paper: str = "letter"
) -> list[Path]:
    """Write the sheet of all buildings, and a workbook a building.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    folder : Path
        Made if need be.
    ids : collection of str, optional
        Openings to visit; all when left out.
    paper : {"letter", "a4"}
        Of the sheet.

    Returns
    -------
    list of Path
        Files written.

    Raises
    ------
    ValueRefusedError
        When no opening needs a fact of the survey.
    UnwritableError
        When the folder cannot be written.
    """
    view = project_view(project, ids)
    visited = to_visit(view)
    if not visited:
        raise ValueRefusedError("return visit", "no opening needs a fact of the survey")
    written = issue(view, RETURN_VISIT, folder, paper=paper)
    taken: set[str] = set()
    for building in dict.fromkeys(each.given.opening.building for each in visited):
        here = [each.given.opening.id for each in visited if each.given.opening.building == building]
        stem = safe_file_name(f"return-visit {building or 'no building'}", taken)
        path = folder / f"{stem}.xlsx"
        write_form(project, path, ids=here)
        written.append(path)
    return written
