"""What can be read of a damaged project, open to be looked at, and what is said of it."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import ExitStack
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from hwsched.language import phrase, phrase_of_count
from hwsched.model.errors import DamagedProjectError, ProjectError, ValueRefusedError
from hwsched.model.project import Project

if TYPE_CHECKING:
    from hwsched.operations.project.rescuing import Rescued


@dataclass(frozen=True, slots=True)
class Remains:
    """What is left of a damaged project, open to be read only."""

    place: Path
    """Of the damaged file, which is left as it is."""
    why: str
    """What is wrong with it."""
    project: Project
    found: Rescued
    close: Callable[[], None]
    """Closes the project; what was read of it goes."""

    @property
    def words(self) -> str:
        """What is said of it when it is opened."""
        from hwsched.operations.project.rescuing import lost_words

        return phrase(
            "{name} is damaged.\n\nWhat can be read of it is shown, and nothing can be changed in it: save "
            "that into a new project, or put back a good copy (Specify, Copies).\n\nRows lost: "
            "{lost_words}.",
            name=self.place.name,
            lost_words=lost_words(self.found),
        )


def remains_of(target: str, error: DamagedProjectError) -> Remains:
    """Open what can be read of a damaged project; raises the error where nothing can."""
    from hwsched.operations.project.rescuing import what_is_left

    stack = ExitStack()
    try:
        project, found = stack.enter_context(what_is_left(target))
    except (ProjectError, ValueRefusedError):
        stack.close()
        # The damage is what there is to tell.
        raise error from None
    return Remains(Path(target), str(error), project, found, stack.close)


def rescued_words(found: Rescued, target: Path) -> tuple[str, str]:
    """Say what was saved of a project and what was not: in short, and all that was left out, a line each."""
    from hwsched.operations.project.rescuing import lost_words

    rows = sum(each.rows for each in found.tables)
    back = sum(each.from_journal for each in found.tables)
    from_journal = phrase(", {back} of them put back from the journal", back=back) if back else ""
    text = phrase_of_count(
        "{rows} row was saved into {target}{from_journal}.\n\nRows lost: {lost_words}.",
        "{rows} rows were saved into {target}{from_journal}.\n\nRows lost: {lost_words}.",
        rows,
        rows=rows,
        target=target,
        from_journal=from_journal,
        lost_words=lost_words(found),
    )
    count = len(found.left_out)
    if not count:
        return text, ""
    left_out = (
        phrase("1 row or value could not stay")
        if count == 1
        else phrase("{count} rows and values could not stay", count=count)
    )
    return f"{text}\n{left_out}.", "\n".join(found.left_out)
