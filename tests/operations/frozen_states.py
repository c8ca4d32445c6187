"""The state of a project read by the ordinary queries, for holding against what a revision says of it."""

from dataclasses import fields

from sqlalchemy import select

from hwsched.model.power_queries import read_power
from hwsched.model.queries import (
    latest_change,
    read_catalogue,
    read_own_fields,
    read_set_names,
    read_settings,
    read_terms,
)
from hwsched.model.tables import ASSIGNED_PART, ATTACHMENT
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.release.attachments import attachments_of
from hwsched.operations.release.office import office_text
from hwsched.operations.release.project_view import project_view
from hwsched.operations.survey.deliveries import open_questions
from hwsched.values import OpeningInput
from hwsched.values.piece import bench_of
from tests.operations.exact import TODAY

BESIDE = ("catalogue", "settings")


def facts_of(given):
    return {each.name: getattr(given, each.name) for each in fields(OpeningInput) if each.name not in BESIDE}


def state_now(project, ids=None, today=TODAY):
    """All that a revision says, without a look at how it is frozen."""
    checked = check_openings(project, ids, today=today)
    files, asked = files_now(project), asked_now(project)
    with project.reading() as connection:
        names = read_set_names(connection)
        catalogue = read_catalogue(connection)
        bench, serials = bench_now(connection)
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
                    "files": files.get(each.given.opening.id, []),
                    "bench": bench.get(each.given.opening.id, frozenset()),
                    "serials": serials.get(each.given.opening.id, {}),
                    "asked": asked.get(each.given.opening.id, []),
                }
                for each in checked
            ],
            "others": sorted(files.get(None, [])),
            "office": office_text(project),
        }


def file_of(each):
    return each.entity, each.row_id, each.name, each.hash, each.media_type, each.size, each.title, each.note


def files_now(project):
    """By opening, in their order; of None what is no opening's."""
    found = {}
    for each in attachments_of(project):
        found.setdefault(each.opening_id, []).append(each)
    with project.reading() as connection:
        order = {row.id: (row.ordinal, row.id) for row in connection.execute(select(ATTACHMENT))}
    return {
        opening: [file_of(each) for each in sorted(files, key=lambda each: order[each.id])]
        for opening, files in found.items()
    }


def bench_now(connection):
    """What the sheets say is done, and the serial numbers, as the rows have them."""
    done, serials = {}, {}
    for row in connection.execute(select(ASSIGNED_PART)):
        place = (row.lock_point_id or "", row.role)
        words = {word for word in ("built", "programmed", "tested") if word in row.state.split(", ")}
        at = done.setdefault(row.opening_id, {})
        at[place] = words & at.get(place, words)
        if row.serial:
            serials.setdefault(row.opening_id, {})[(*place, row.part, row.piece)] = row.serial
    bench = {o: frozenset((*place, word) for place, words in at.items() for word in words) for o, at in done.items()}
    return bench, serials


def asked_now(project):
    found = {}
    for each in open_questions(project):
        found.setdefault(each.undecided.opening_id, []).append((each.delivery, each.undecided.kind))
    return found


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
                "files": [file_of(file) for file in each.files],
                "bench": bench_of(each.pieces),
                "serials": {(p.point_id, p.role, p.part, p.number): p.serial for p in each.pieces if p.serial},
                "asked": list(each.asked),
            }
            for each in then.openings
        ],
        "others": sorted(map(file_of, then.files)),
        "office": then.office.text,
    }
