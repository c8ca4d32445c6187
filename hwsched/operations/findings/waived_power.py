"""The power of a project with waivers laid over: as its pages and lists show what the rules of circuits say."""

from collections.abc import Iterable
from dataclasses import replace

from hwsched.model.project import Project
from hwsched.operations.findings.checked import Checked
from hwsched.operations.findings.checking import check_openings, waiver_book
from hwsched.operations.findings.waiver_book import WaiverBook
from hwsched.operations.power.power_results import power_result
from hwsched.operations.snapshot import of_one_state
from hwsched.values.power import PowerResult


@of_one_state
def power_with_waivers(project: Project) -> PowerResult:
    """Work out the supplies of a project, and mark what is waived."""
    work = power_result(project)
    book = waiver_book(project, project.today())
    if book is None:
        return work
    hanging = sorted({opening for supply in work.supplies for opening in supply.openings})
    return waived_power(work, check_openings(project, hanging), book)


def waived_power(work: PowerResult, checked: Iterable[Checked], book: WaiverBook | None) -> PowerResult:
    """Mark what the rules of circuits say as waived: at all openings that it concerns, or at the supply."""
    present = {
        (each.given.opening.id, finding.rule, finding.about, finding.message): finding
        for each in checked
        for finding in each.findings
        if finding.waived
    }
    supplies = {supply.supply.id: supply for supply in work.supplies}
    found = []
    for each in work.findings:
        said = each.finding
        if not each.opening_ids:
            over = said if book is None else book.of_supply(supplies[each.supply_id], said)
            found.append(replace(each, finding=over) if over.waived else each)
            continue
        held = [present.get((opening, said.rule, said.about, said.message)) for opening in each.opening_ids]
        waived = [finding for finding in held if finding is not None]
        found.append(replace(each, finding=waived[0]) if waived and len(waived) == len(held) else each)
    return replace(work, findings=tuple(found))
