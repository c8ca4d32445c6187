"""Which openings a change touches beyond those whose rows it wrote. No widgets."""

from dataclasses import replace
from typing import TYPE_CHECKING, Final

from hwsched.desktop.project.workspace import Workspace
from hwsched.operations.changes import Changes
from hwsched.operations.findings.checked import Checked
from hwsched.operations.project.reading_settings import settings_of
from hwsched.operations.survey.open_counts import questioned
from hwsched.operations.survey.places import otherwise_closed, otherwise_placed

if TYPE_CHECKING:
    from hwsched.operations.findings.waiver_book import WaiverBook

_POWER_TABLES: Final = {"supply", "circuit", "run", "route", "level"}
"""What feeds openings: it touches all that hang there, though no row of theirs changes."""
_OF_ALL_POWER: Final = {"supply", "circuit", "level"}
_PLACE_TABLES: Final = {"building", "level"}
_SET_TABLES: Final = {"hardware_set", "set_line"}


def touched_openings(workspace: Workspace, changes: Changes) -> set[str]:
    """Return the openings that are to be read anew; the sets of the workspace are, where they may have changed."""
    from hwsched.operations.findings.waiver_book import WaiverBook
    from hwsched.operations.findings.waivers import waivers
    from hwsched.operations.power.power_results import on_same_supplies, power_facts

    touched, project = set(changes.openings), workspace.project
    if "waiver" in changes.entities:
        book = WaiverBook.of(waivers(project), settings_of(project), project.today())
        touched |= {id_ for id_, each in workspace.checked.items() if _waived_otherwise(each, book)}
    if changes.entities & {*_SET_TABLES, "opening"}:
        before = set(workspace.sets)
        workspace.read_sets()
        if changes.entities & _SET_TABLES:
            touched |= before | set(workspace.sets)
    if changes.entities & _PLACE_TABLES:
        touched |= otherwise_placed(project, workspace.checked)
    if "open_question" in changes.entities:
        touched |= _waiting_otherwise(workspace)
    if "opening" in changes.entities:
        touched |= otherwise_closed(project, workspace.checked, changes.openings)
    if changes.entities & _POWER_TABLES:
        every = changes.entities & _OF_ALL_POWER
        touched = on_same_supplies(project, touched | set(power_facts(project).connected()) if every else touched)
    return touched


def _waiting_otherwise(workspace: Workspace) -> set[str]:
    """Return the openings about which a question was left or is left, of those that are shown."""
    with workspace.project.reading() as connection:
        asked = questioned(connection)
    return {id_ for id_, each in workspace.checked.items() if each.waits or id_ in asked}


def _waived_otherwise(checked: Checked, book: "WaiverBook") -> bool:
    """Tell whether other findings of an opening are waived than its sheet shows."""
    bare = [replace(each, waived=False, waived_by="") if each.waived else each for each in checked.findings]
    present = book.lay_over(checked.inputs, bare).findings
    return [each.waived_by for each in present] != [each.waived_by for each in checked.findings]
