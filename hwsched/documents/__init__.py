"""What is on a page: one file a document; the tuple below is their table of contents. No paper, no file, no query."""

from hwsched.documents.parts.cost_estimate import COST_ESTIMATE
from hwsched.documents.power.battery_calendar import BATTERY_CALENDAR
from hwsched.documents.power.power_schedule import POWER_SCHEDULE
from hwsched.documents.power.wire_list import WIRE_LIST
from hwsched.documents.release.packet import PACKET
from hwsched.documents.release.schedule import SCHEDULE
from hwsched.documents.stock.pick_list import PICK_LIST
from hwsched.documents.survey.return_visit import RETURN_VISIT
from hwsched.documents.view import DocumentKind, OpeningView, ProjectView

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
