"""A revision as documents see it, to be laid beside the project as it stands."""

from typing import Any, cast

from hwsched.attributes import Attribute, Choice, show_value
from hwsched.documents.view import OpeningView, ProjectView
from hwsched.operations.release.holding import held_back
from hwsched.quantities import LENGTH_STYLES, LengthStyle
from hwsched.survey import OPENING
from hwsched.values.office import Office
from hwsched.values.piece import bench_of
from hwsched.values.revision import OpeningThen, RevisionThen


def revision_view(then: RevisionThen, office: Office | None = None) -> ProjectView:
    """Return a revision as documents see it, without photos.

    Parameters
    ----------
    then : RevisionThen
        As it was frozen.
    office : Office, optional
        How its documents look; as by default when left out.
    """
    style: LengthStyle = next((s for s in LENGTH_STYLES if s == then.settings.length_style), "fraction")
    return ProjectView(
        title=then.title,
        revision=then.letter,
        date=then.day,
        length_style=style,
        openings=tuple(
            OpeningView(
                each.given,
                each.fit,
                each.findings,
                _own(then, each, style),
                each.set_name,
                each.points,
                "current" if each.fit is not None else "not-worked-out",
                bench=bench_of(each.pieces),
                unheld_by=then.letter if then.files is None else "",
                held=held_back(each.given.opening.id, each.findings, then.power, each.asked),
            )
            for each in then.openings
        ),
        catalogue=then.catalogue,
        rules_off=tuple(sorted(then.settings.rules_off)),
        rules_run=sum(rule.id not in then.settings.rules_off for rule in then.rules),
        power=then.power,
        terms=then.terms,
        level_heights={(level.building, level.level): level.height_m for level in then.levels},
        office=office or Office(),
    )


def _own(then: RevisionThen, opening: OpeningThen, style: LengthStyle) -> tuple[tuple[str, str], ...]:
    """Put the project's own fields of an opening into words."""
    values = {value.name: value.value for value in opening.own if value.entity == OPENING.name}
    return tuple(
        (
            field.label,
            show_value(
                Attribute(
                    field.name,
                    field.label,
                    cast("Any", field.kind),
                    cast("Any", field.unit),
                    choices=tuple(Choice(each, each) for each in field.choices),
                ),
                values[field.name],
                style,
            ),
        )
        for field in then.own_fields
        if field.entity == OPENING.name and field.name in values
    )
