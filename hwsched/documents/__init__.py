"""What is on a page: one file a document; the lines below are their table of contents. No paper, no file, no query."""

from typing import Final

from hwsched.documents.view import DocumentKind, OpeningView, ProjectView
from hwsched.family import imported

# Their order is the order in which people see them.
from hwsched.documents.release.schedule import SCHEDULE
from hwsched.documents.stock.pick_list import PICK_LIST
from hwsched.documents.release.packet import PACKET
from hwsched.documents.power.power_schedule import POWER_SCHEDULE
from hwsched.documents.power.wire_list import WIRE_LIST
from hwsched.documents.power.battery_calendar import BATTERY_CALENDAR
from hwsched.documents.survey.return_visit import RETURN_VISIT
from hwsched.documents.parts.cost_estimate import COST_ESTIMATE

DOCUMENTS: Final = imported(globals(), DocumentKind)

__all__ = ["DOCUMENTS", "DocumentKind", "OpeningView", "ProjectView"]
