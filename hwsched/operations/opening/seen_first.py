"""Openings seen before they are judged: read and told as they stand in the survey, then gone on with in one state.

Here belongs nothing that needs a rule: rules take longer to load than ten thousand openings take to be read.
"""

from collections.abc import Callable, Sequence
from typing import TypeVar

from hwsched.model.project import Project
from hwsched.model.queries import by_opening, read_inputs
from hwsched.operations.collector import collector_paused
from hwsched.operations.snapshot import of_one_state
from hwsched.values import OpeningInput

ReadOpenings = list[tuple[OpeningInput, ...]]
"""The inputs of the lock points of each opening, in the order of the project's openings."""
_Found = TypeVar("_Found")


@of_one_state
def seen_first(
    project: Project, tell: Callable[[Sequence[OpeningInput]], None], then: Callable[[ReadOpenings], _Found]
) -> _Found:
    """Read all openings, tell them, and go on with them.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    tell : callable
        Gets each opening by its first lock point.
    then : callable
        Gets what was read, and may let go of it: `check_openings` takes it for what it would read itself.

    Returns
    -------
    object
        What came of going on.
    """
    with project.reading() as connection, collector_paused():
        catalogue = project.catalogue.read(connection)
        openings = list(by_opening(read_inputs(connection, None, catalogue, project.memory)))
        tell([inputs[0] for inputs in openings])
        return then(openings)
