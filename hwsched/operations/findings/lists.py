"""Rows of the lists of findings, waivers and rules; see `hwsched.operations.lists`."""

from collections.abc import Collection, Iterator
from typing import Any

from hwsched.model.project import Project
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.findings.waivers import waivers_with_marks
from hwsched.operations.project.reading_settings import settings_of
from hwsched.rules import RULEBOOK


def findings(project: Project, openings: Collection[str] | None) -> Iterator[dict[str, Any]]:
    """Yield a row a finding, opening by opening."""
    for each in check_openings(project, openings):
        for finding in each.findings:
            yield {
                "mark": each.given.opening.mark,
                "rule": finding.rule,
                "discipline": finding.discipline,
                "severity": finding.severity,
                "message": finding.message,
                "basis": finding.basis,
                "cure": finding.cure,
                "about": finding.about,
                "waived": finding.waived,
                "needs": list(finding.needs),
            }


def waivers(project: Project, openings: Collection[str] | None) -> Iterator[dict[str, Any]]:
    """Yield the waivers, oldest first."""
    for each, mark in waivers_with_marks(project):
        if openings is not None and each.opening_id not in openings:
            continue
        yield {
            "rule": each.rule,
            "about": each.about,
            "scope": each.scope,
            "mark": mark or None,
            "person": each.person,
            "reason": each.reason,
            "given_on": each.given_on.isoformat(),
            "until": each.until.isoformat() if each.until else None,
        }


def rules(project: Project, _openings: Collection[str] | None) -> Iterator[dict[str, Any]]:
    """Yield the rulebook as it stands in the project."""
    settings = settings_of(project)
    for rule in RULEBOOK:
        yield {
            "rule": rule.id,
            "title": rule.title,
            "discipline": rule.discipline,
            "severity": rule.severity,
            "off": rule.id in settings.rules_off,
            "limits": dict(settings.limits_for(rule.id, {limit.name: limit.value for limit in rule.limits})),
            "basis": rule.basis,
            "cure": rule.cure,
        }
