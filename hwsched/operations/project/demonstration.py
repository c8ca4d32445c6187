"""The main job on the invented sample: both workbooks in, every opening fitted and checked, all documents out."""

import os
import shutil
from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from hwsched.documents.documents import DOCUMENTS
from hwsched.documents.survey.survey_sheets import SURVEY_SHEETS
from hwsched.exchange.problems import CellProblem, FileProblem
from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model.errors import BusyProjectError, ExistingProjectError
from hwsched.model.file.sqlite_file import check_file, close_file, set_aside, verbs_of
from hwsched.model.journal.written import apart
from hwsched.model.project import Project, create_project
from hwsched.operations.findings.checking import Checker
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.parts.catalogue_import import import_catalogue
from hwsched.operations.power.power_import import import_power
from hwsched.operations.power.power_results import power_result
from hwsched.operations.power.siting_accepting import accept_siting
from hwsched.operations.power.supply_siting import propose_siting
from hwsched.operations.release.issued_documents import issue
from hwsched.operations.release.project_view import project_view
from hwsched.operations.survey.survey_import import import_survey
from hwsched.paths import SAMPLE
from hwsched.values import SEVERITIES
from hwsched.writing import made_folder, part_beside

NAME = "Quayside Works"


@dataclass(frozen=True, slots=True)
class Shown:
    """What the demonstration made."""

    project: Path
    kept: Path | None
    """The earlier project, where somebody had worked in it."""
    files: tuple[Path, ...]
    statuses: Mapping[str, int]
    severities: Mapping[str, int]
    problems: tuple[CellProblem | FileProblem, ...]
    """Cells of the survey that were refused and left out."""
    lines: tuple[str, ...]
    """The report for people."""


def demonstrate(
    folder: Path, *, who: str, again: bool = False, progress: Callable[[int, int], None] | None = None
) -> Shown:
    """Run the main job on the sample into a folder.

    Parameters
    ----------
    folder : Path
        Made if need be.
    who : str
        For the journal.
    again : bool
        Put the new project in the place of the one that is there. One in which a person has worked is kept under
        another name; one that is open is left where it is.
    progress : callable, optional
        Told done and total.

    Raises
    ------
    InputRejected, ChangeError, ProjectError, UnwritableError
        As the verbs that it calls; ExistingProjectError where a project is there and `again` does not say so,
        BusyProjectError where it is open.
    """
    target = made_folder(folder) / "quayside-works.hwsched"
    if target.exists():
        # Said now, not after all the work.
        check_file(target)
        if not again:
            raise ExistingProjectError(
                f"{target} is already there; it was left alone. Take another folder; on the command line --again puts "
                "a new one in its place, and keeps it where somebody has worked in it"
            )
        close_file(target)
    # Worked out beside the old file, so that a demonstration that is stopped leaves the earlier one whole.
    with apart(), _work_folder(folder) as work:
        fresh = work / target.name
        project = create_project(str(fresh), NAME, length_style="fraction", bare_unit="in")
        try:
            catalogue = import_catalogue(project, SAMPLE / "catalogue.xlsx", who=who)
            survey = import_survey(
                project, SAMPLE / "survey.xlsx", SurveyOptions(bare_unit="in"), who=who, accept="good-rows"
            )
            # Before the fits: how far an opening is from the cable way is wire that its fit needs.
            power = import_power(project, SAMPLE / "power.xlsx", who=who)
            _, outcomes = fit_openings(project, who=who, progress=progress)
            sited = []
            for building in _with_places(project):
                proposal = propose_siting(project, building)
                accept_siting(project, proposal, who=who)
                sited.append(proposal)
            _, outcomes = fit_openings(project, who=who)
            view = project_view(project, checker=Checker())
        finally:
            project.close()
        kept = _replace(target, fresh)
    # Its survey is done: sheets to survey it by would only lie about.
    kinds = [kind for kind in DOCUMENTS if kind is not SURVEY_SHEETS]
    files = [path for kind in kinds for path in issue(view, kind, folder, progress=progress)]
    # One sheet may be written in several forms.
    by_opening = Counter(place for place, _ in {(path.parent, path.stem) for path in files} if place != folder)
    statuses: Counter[str] = Counter(each.fit.status for each in outcomes)
    severities: Counter[str] = Counter(f.severity for opening in view.openings for f in opening.findings)
    held = sum(bool(opening.blocking) for opening in view.openings)
    lines = [
        f"Project      {target}",
        *([f"Kept         {kept}: the earlier project, in which you have worked"] if kept else []),
        f"Catalogue    {catalogue.parts} parts from {SAMPLE / 'catalogue.xlsx'}",
        f"Survey       {len(outcomes)} openings from {SAMPLE / 'survey.xlsx'}",
        *(f"  left out:  {problem.describe()}" for problem in survey.problems),
        "Fit          " + ", ".join(f"{statuses.get(s, 0)} {s}" for s in ("fits", "does-not-fit", "to-measure")),
        "Check        " + ", ".join(f"{severities.get(s, 0)} {s}" for s in SEVERITIES) + f"; {held} openings held",
        f"Power        {power.rows['supplies']} places for supplies from {SAMPLE / 'power.xlsx'}; "
        + ", ".join(f"{len(p.siting.pairs)} openings of {p.building} on {len(p.siting.open)}" for p in sited),
        *(f"Printed      {path}" for path in files if path.parent == folder),
        *(
            f"Printed      {count} {place.name.replace('-', ' ')} in {place}"
            for place, count in sorted(by_opening.items())
        ),
        "",
        f"Look first at {folder / 'schedule.pdf'}, then at a packet in {folder / 'packets'};",
        f"then open the desktop: hwsched project desktop {target}",
    ]
    return Shown(target, kept, tuple(files), statuses, severities, tuple(survey.problems), tuple(lines))


@contextmanager
def _work_folder(folder: Path) -> Iterator[Path]:
    work = part_beside(folder / "demo")
    work.mkdir()
    try:
        yield work
    finally:
        shutil.rmtree(work, ignore_errors=True)


def _replace(target: Path, fresh: Path) -> Path | None:
    """Put the new project in its place; one in which somebody has worked is set aside, and its new name returned."""
    if not target.exists():
        os.replace(fresh, target)
        return None
    # Under another name first: whatever somebody writes into it from now on is not lost, and is looked for below.
    kept = set_aside(target)
    os.replace(fresh, target)
    if verbs_of(kept) != verbs_of(target):
        return kept
    try:
        close_file(kept)
    except BusyProjectError:
        # Opened in the last moment, before it had its new name.
        return kept
    kept.unlink()
    return None


def _with_places(project: Project) -> list[str]:
    """Return the buildings that have a place for a supply."""
    return list(dict.fromkeys(s.supply.building for s in power_result(project).supplies if s.supply.building))
