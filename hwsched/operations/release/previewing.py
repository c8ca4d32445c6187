"""A document as it would be printed, in hand instead of in a folder, so that it is seen first."""

from collections.abc import Callable

from hwsched.documents.view import ProjectView
from hwsched.operations.release.issued_documents import issue_by_name
from hwsched.writing import scratch_folder


def preview(
    view: ProjectView,
    name: str,
    *,
    paper: str = "letter",
    progress: Callable[[int, int], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> list[bytes]:
    """Return the PDFs of a document in the order in which they are printed; nothing is written down as gone out.

    They are made as `issue_by_name` makes them: what may not go out carries its STOP here too.

    Parameters
    ----------
    view : ProjectView
        The project as it stands, or the openings of it that are wanted.
    name : str
        Of a document that is a PDF.
    paper : {"letter", "a4"}
        Sheet.
    progress, cancelled : callable, optional
        Told how far it is; asked whether to stop.

    Raises
    ------
    ValueRefusedError
        For a document that there is not, or one that has nothing to show.
    """
    with scratch_folder() as folder:
        files = issue_by_name(view, name, folder, ["pdf"], paper=paper, progress=progress, cancelled=cancelled)
        return [each.read_bytes() for each in files]
