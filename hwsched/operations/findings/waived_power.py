"""The power of a project with waivers laid over: as its pages and lists show what the rules of circuits say."""

from hwsched.model.project import Project
from hwsched.operations.findings.checking import check_openings, waiver_book
from hwsched.operations.findings.of_circuit import waived_power
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
