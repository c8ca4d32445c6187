"""Loads what pages need before anybody goes to them: libraries take longer to load than a person waits for a page.

Here belongs when that is done, and in which order; what a page needs is said by the import lines of its file. Nothing
of it is made: a page is made when somebody goes to it. What knows nothing of the toolkit is loaded beside the person's
work; classes of the toolkit may only come into being on the screen's thread, a file at a time. What judges openings was
loaded before (`loading_judges`).
"""

import sys
import time
from collections import deque
from collections.abc import Iterator, Sequence
from functools import partial
from importlib import import_module
from typing import Any, Final

from PySide6.QtCore import QObject, QTimer

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.frame.later import Later
from hwsched.desktop.frame.place import Place

_AFTER_MS: Final = 300
"""So long the window has shown an open project before anything is loaded."""
_REST_MS: Final = 20
"""Between two modules: whatever the person does goes first."""
BESIDE: Final = (
    "hwsched.operations.project.today",
    "hwsched.documents.parts.cost_estimate",
    "hwsched.operations.parts.cost_since",
    "hwsched.operations.release.issued_documents",
    "hwsched.operations.release.previewing",
    "hwsched.render.pdf_pages",
    "hwsched.operations.survey.many_facts",
    "hwsched.operations.findings.waivers",
    "hwsched.operations.survey.answering",
    "hwsched.operations.opening.what_if",
    "hwsched.operations.opening.since_upgrade",
    "hwsched.operations.parts.part_edits",
    "hwsched.operations.release.document_differences",
    "hwsched.operations.release.release_gate",
    "hwsched.rules.page",
)
"""What pages, dialogs and jobs need, and takes time; first what is gone to first. A test tells what is missing."""

APART: Final = (
    "hwsched.desktop.power.power_place",
    "hwsched.desktop.power.power_window",
    "hwsched.desktop.parts.fewest_window",
    "hwsched.desktop.project.calculators",
)
"""Pages that are loaded when somebody goes there: what solves linear programs takes much memory, and few go there."""


class LoadingAhead(QObject):
    """Loads the files of all places, one after the other, beside what the person does.

    Parameters
    ----------
    frame : Frame
        Whose places are loaded, once a project is open in it.
    """

    def __init__(self, frame: Frame) -> None:
        super().__init__(frame)
        self._frame = frame
        self._begun = False
        self._pages: deque[str] = deque()
        self._jobs = frame.jobs.beside(frame.window)
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.timeout.connect(self._go_on)
        frame.state.reloaded.connect(self._on_reloaded)
        frame.state.leaving.connect(self._rest.stop)

    def _on_reloaded(self) -> None:
        if not self._begun or self._pages:
            self._rest.start(_AFTER_MS)

    def _go_on(self) -> None:
        """Load one page's file, or begin with what they all need."""
        if self._frame.state.workspace is None or self._frame.following.closing:
            return
        if self._frame.jobs.busy:
            self._rest.start(_AFTER_MS)
        elif not self._begun:
            self._begin()
        elif self._pages:
            import_module(self._pages.popleft())
            self._rest.start(_REST_MS)

    def _begin(self) -> None:
        self._begun = True
        self._pages.extend(dict.fromkeys(pages_of(tuple(self._frame.pages.places.values()))))
        wanted = [each for each in BESIDE if each not in sys.modules]
        jobs = self._frame.jobs

        def work(_progress: Any, cancelled: Any) -> None:
            for module in wanted:
                if cancelled():
                    return
                import_module(module)
                time.sleep(_REST_MS / 1000)
                # Beside a job of the person's, and the showing of what came of it, the screen would wait for both.
                while jobs.busy and not cancelled():
                    time.sleep(_REST_MS / 1000)
                    if not jobs.busy:
                        time.sleep(_AFTER_MS / 1000)

        if wanted:
            self._jobs.run("", work, lambda _done: self._rest.start(_REST_MS), kept=False)
        else:
            self._rest.start(_REST_MS)


def pages_of(places: Sequence[Place]) -> Iterator[str]:
    """Return the modules in which pages stand that are to be loaded and are not."""
    for place in places:
        for called in (place.make, place.show):
            # A page of the desk hands its window over to what makes it.
            said = called.args[0] if isinstance(called, partial) and called.args else called
            if isinstance(said, Later) and said.module not in sys.modules and said.module not in APART:
                yield said.module
