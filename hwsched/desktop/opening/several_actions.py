"""What is done with several openings at once: their facts edited as one step."""

from collections.abc import Sequence
from typing import Final

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.frame.subject import Subject
from hwsched.desktop.jobs.jobs import Cancelled, Progress
from hwsched.desktop.opening.inspected import Inspected
from hwsched.language import phrase
from hwsched.operations.opening.side_by_side import SharedFact, shared_facts
from hwsched.operations.survey.fact_edit import FactEdit

_AT_ONCE: Final = 300
"""Of so many openings facts are read while one looks; of more when they are asked for."""


class SeveralActions(Subject):
    """Follows the selection, and makes edits of many.

    Parameters
    ----------
    frame : Frame
        Open project, jobs, edits, telling.
    inspected : Inspected
        Shows what is selected.
    """

    def __init__(self, frame: Frame, inspected: Inspected) -> None:
        super().__init__(frame)
        self.inspected, self.several = inspected, inspected.several
        self._base: int | None = None
        self.several.proposal.taken.connect(self.edit_facts)
        self.several.form.echoed.connect(lambda words: frame.say(words, 0))
        self.several.wants_facts.connect(self.read_facts)
        self.state.selected.connect(self.follow)
        self.state.touched.connect(self._on_touched)
        self.state.reloaded.connect(self.follow)

    def enable(self) -> None:
        """Let what is possible at present be done."""
        super().enable()
        self.several.form.setEnabled(not self.jobs.busy and self.state.workspace is not None)

    def follow(self) -> None:
        """Show what is selected."""
        workspace = self.state.workspace
        ids = [each for each in self.state.ids if workspace is not None and each in workspace.checked]
        self.inspected.show_count(len(ids))
        if workspace is None or len(ids) < 2:
            return
        openings = [workspace.checked[each] for each in ids]
        self.several.bare_unit = workspace.project.bare_unit
        self.several.show_openings(openings, self.state.style_of_lengths)
        self._base = min((each.base for each in openings if each.base is not None), default=None)
        if len(ids) <= _AT_ONCE:
            self.several.show_facts(shared_facts(openings), len(ids), self._base)
        else:
            self.several.offer_facts()

    def read_facts(self) -> None:
        """Read what very many have in common, beside the window."""
        workspace, ids = self.state.workspace, self.state.ids
        if workspace is None:
            return
        openings = [workspace.checked[each] for each in ids if each in workspace.checked]

        def read(_progress: Progress, _cancelled: Cancelled) -> tuple[SharedFact, ...]:
            return shared_facts(openings)

        def then(facts: tuple[SharedFact, ...]) -> None:
            if self.state.ids == ids:
                self.several.show_facts(facts, len(openings), self._base)

        self.jobs.run(phrase("Reading what they have in common"), read, then)

    def edit_facts(self, edits: Sequence[FactEdit], seen: int | None) -> None:
        """Make an edit of many, as one step of the journal."""
        from hwsched.operations.survey.many_facts import edit_many

        workspace = self.state.workspace
        if workspace is None or self.jobs.busy:
            return
        self.frame.edit_seen(
            lambda base: edit_many(workspace.project, edits, who=workspace.who, base=base),
            seen,
            lambda _changes: self.several.form.setFocus(),
        )

    def _on_touched(self, ids: frozenset[str]) -> None:
        if ids & set(self.state.ids):
            self.follow()
