"""What is on a page: one file a document; the tuple below is their table of contents. No paper, no file, no query."""

from hwsched.documents.battery_calendar import BATTERY_CALENDAR
from hwsched.documents.cost_estimate import COST_ESTIMATE
from hwsched.documents.packet import PACKET
from hwsched.documents.pick_list import PICK_LIST
from hwsched.documents.power_schedule import POWER_SCHEDULE
from hwsched.documents.return_visit import RETURN_VISIT
from hwsched.documents.schedule import SCHEDULE
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.documents.wire_list import WIRE_LIST

DOCUMENTS: tuple[DocumentKind, ...] = (
    SCHEDULE,
    PICK_LIST,
    PACKET,
    POWER_SCHEDULE,
    WIRE_LIST,
    BATTERY_CALENDAR,
    RETURN_VISIT,
    COST_ESTIMATE,
)

__all__ = ["DOCUMENTS", "DocumentKind", "OpeningView", "ProjectView"]
