"""Assembling what documents are built from: a project's openings with fits and findings, as plain values."""

from collections.abc import Iterable, Sequence

from hwsched.attributes import show_value
from hwsched.documents.view import OpeningView, ProjectView
from hwsched.model.power_queries import level_heights, read_power
from hwsched.model.project import Project
from hwsched.model.queries import latest_change, read_catalogue, read_set_names, read_settings, read_terms
from hwsched.operations.collector import collector_paused
from hwsched.operations.findings.checked import Checked
from hwsched.operations.findings.checking import Checker, Progress, check_openings, waiver_book
from hwsched.operations.findings.of_circuit import waived_power
from hwsched.operations.opening.pieces import recorded_pieces
from hwsched.operations.power.power_results import read_power_result
from hwsched.operations.release.holding import held_back
from hwsched.operations.release.office import read_held_office
from hwsched.operations.release.transmittals import read_transmittals
from hwsched.operations.snapshot import of_one_state
from hwsched.operations.survey.deliveries import questions_by_opening
from hwsched.quantities import LENGTH_STYLES, LengthStyle
from hwsched.rules import RULEBOOK
from hwsched.stopping import Asking, asking
from hwsched.survey import OPENING
from hwsched.values.piece import bench_of
from hwsched.wiring import ConnectedOpening


@of_one_state
def project_view(
    project: Project,
    ids: Iterable[str] | None = None,
    *,
    checked: Sequence[Checked] | None = None,
    checker: Checker | None = None,
    progress: Progress | None = None,
) -> ProjectView:
    """Check openings and return the project as documents see it.

    The revision is the number of the latest change set: a working state, not a frozen one. Who has the openings just
    checked, by their stored fits, hands them over as `checked`.
    """
    with collector_paused():
        return _view(project, ids, checked, checker, progress)


def _view(
    project: Project,
    ids: Iterable[str] | None,
    checked: Sequence[Checked] | None,
    checker: Checker | None,
    progress: Progress | None,
) -> ProjectView:
    if checked is None and ids is None and checker is not None:
        with project.reading() as connection:
            # Read and judged once more it would be the same, and be held twice.
            checked = checker.last.whole(project, connection, project.today())
    if checked is None:
        checked = check_openings(project, ids, checker=checker, progress=progress)
    with project.reading() as connection:
        settings = read_settings(connection)
        catalogue = read_catalogue(connection)
        change = latest_change(connection)
        heights = level_heights(connection)
        terms, sets = read_terms(connection), read_set_names(connection)
        known = {each.given.opening.id: ConnectedOpening.of(each.points) for each in checked}
        # Of some openings only the supplies on which they hang: another building's are no part of what was asked for.
        hanging = None if ids is None else list(known)
        questions = questions_by_opening(connection)
        pieces = recorded_pieces(connection, hanging)
        sent, office = read_transmittals(connection), read_held_office(connection)
        work = read_power_result(connection, catalogue, read_power(connection), known, hanging)
    work = waived_power(work, checked, waiver_book(project, project.today()))
    style: LengthStyle = next((s for s in LENGTH_STYLES if s == settings.length_style), "fraction")
    return ProjectView(
        title=project.title,
        revision=f"working state {change}",
        date=project.today().isoformat(),
        length_style=style,
        openings=Asking(
            OpeningView(
                each.given,
                each.fit,
                each.findings,
                _own(each, style),
                sets.get(each.given.opening.id, ""),
                each.points,
                each.standing,
                bench=bench_of(pieces.get(each.given.opening.id, ())),
                held=held_back(each.given.opening.id, each.findings, work, questions.get(each.given.opening.id, ())),
            )
            for each in asking(checked)
        ),
        catalogue=catalogue,
        rules_off=tuple(sorted(settings.rules_off)),
        rules_run=sum(rule.id not in settings.rules_off for rule in RULEBOOK),
        power=work,
        terms=terms,
        level_heights=heights,
        sent=sent,
        office=office,
    )


def _own(checked: Checked, style: LengthStyle) -> tuple[tuple[str, str], ...]:
    """Put the project's own fields of an opening into words."""
    return tuple(
        (own.attribute.label, show_value(own.attribute, own.value, style))
        for own in checked.own
        if own.entity == OPENING.name
    )
