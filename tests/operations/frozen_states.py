"""The state of a project read by the ordinary queries, for holding against what a revision says of it."""

from dataclasses import fields

from hwsched.model.power_queries import read_power
from hwsched.model.queries import (
    latest_change,
    read_catalogue,
    read_own_fields,
    read_set_names,
    read_settings,
    read_terms,
)
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.release.project_view import project_view
from hwsched.values import OpeningInput
from tests.operations.exact import TODAY

BESIDE = ("catalogue", "settings")


def facts_of(given):
    return {each.name: getattr(given, each.name) for each in fields(OpeningInput) if each.name not in BESIDE}


def state_now(project, ids=None, today=TODAY):
    """All that a revision says, without a look at how it is frozen."""
    checked = check_openings(project, ids, today=today)
    with project.reading() as connection:
        names = read_set_names(connection)
        catalogue = read_catalogue(connection)
        return {
            "change_set": latest_change(connection),
            "title": project.title,
            "settings": read_settings(connection),
            "terms": read_terms(connection),
            "fields": [(f.entity, f.name, f.label, f.kind, f.unit, f.choices) for f in read_own_fields(connection)],
            "parts": dict(catalogue.parts),
            "keys": (catalogue.key, catalogue.ranks),
            "laid": read_power(connection),
            "openings": [
                {
                    "points": [(facts_of(point.given), point.fit) for point in each.points],
                    "fit": each.fit,
                    "findings": each.findings,
                    "set": names.get(each.given.opening.id, ""),
                    "own": {(o.entity, o.row_id, o.attribute.name): o.value for o in each.own if o.value is not None},
                }
                for each in checked
            ],
        }


def power_now(project):
    """What is worked out of the circuits, with waivers laid over it as of today's real date."""
    return project_view(project).power


def state_then(then):
    """The same of a revision that was read back."""
    return {
        "change_set": then.change_set,
        "title": then.title,
        "settings": then.settings,
        "terms": then.terms,
        "fields": [(f.entity, f.name, f.label, f.kind, f.unit, f.choices) for f in then.own_fields],
        "parts": dict(then.catalogue.parts),
        "keys": (then.catalogue.key, then.catalogue.ranks),
        "laid": then.present,
        "openings": [
            {
                "points": [(facts_of(point.given), point.fit) for point in each.points],
                "fit": each.fit,
                "findings": each.findings,
                "set": each.set_name,
                "own": {(o.entity, o.row_id, o.name): o.value for o in each.own},
            }
            for each in then.openings
        ],
    }
