"""What is on a page: one file a document; the tuple below is their table of contents. No paper, no file, no query."""

from hwsched.documents.packet import PACKET
from hwsched.documents.pick_list import PICK_LIST
from hwsched.documents.schedule import SCHEDULE
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView

DOCUMENTS: tuple[DocumentKind, ...] = (SCHEDULE, PICK_LIST, PACKET)

__all__ = ["DOCUMENTS", "DocumentKind", "OpeningView", "ProjectView"]
