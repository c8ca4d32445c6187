"""Loads what pages need before anybody goes to them: libraries take longer to load than a person waits for a page.

Here belongs when that is done, and in which order; what a page needs is said by the import lines of its file. Nothing
of it is made: a page is made on the screen's thread, when somebody goes to it.
"""

import sys
import time
from collections.abc import Iterator, Sequence
from functools import partial
from importlib import import_module
from typing import Any, Final

from PySide6.QtCore import QObject, QTimer

from hwsched.desktop.frame import Frame
from hwsched.desktop.later import Later
from hwsched.desktop.place import Place

_AFTER_MS: Final = 300
"""So long the window has been at rest with an open project before anything is loaded."""
_REST_S: Final = 0.02
"""Between two modules: whatever the person does goes first."""
_JOBS: Final = (
    "hwsched.operations.survey.survey_import",
    "hwsched.operations.opening.fitting_openings",
    "hwsched.operations.release.issued_documents",
)
"""What is loaded where it is called and not by a page: dialogs and jobs of the menus."""


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
        self.jobs = frame.jobs.beside(frame.window)
        """Those who close the project wait for it, as for all that reads beside."""
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(_AFTER_MS)
        self._rest.timeout.connect(self._begin)
        frame.state.reloaded.connect(self._on_reloaded)
        frame.state.leaving.connect(self._on_leaving)

    def _on_reloaded(self) -> None:
        if not self._begun:
            self._rest.start()

    def _on_leaving(self) -> None:
        self._rest.stop()

    def _begin(self) -> None:
        if self._begun or self._frame.state.workspace is None or self._frame.following.closing:
            return
        if self._frame.jobs.busy:
            self._rest.start()
            return
        self._begun = True
        wanted = modules_of(tuple(self._frame.pages.places.values()))
        modules = [module for module in wanted if module not in sys.modules]
        if not modules:
            return

        def work(_progress: Any, cancelled: Any) -> None:
            for module in modules:
                if cancelled():
                    return
                import_module(module)
                time.sleep(_REST_S)

        self.jobs.run("", work, kept=False)


def modules_of(places: Sequence[Place]) -> Iterator[str]:
    """Return the modules in which pages and what the menus call stand, those of the pages first."""
    for place in places:
        for called in (place.make, place.show):
            # A page of the desk hands its window over to what makes it.
            said = called.args[0] if isinstance(called, partial) and called.args else called
            if isinstance(said, Later):
                yield said.module
    yield from _JOBS
