"""Pages that are made of the desk alone: one file each, one line below; tab, menu and command follow."""

from typing import Final

from hwsched.desktop.side_place import SidePlace
from hwsched.family import imported

# Their order is that of the tabs and menus.
from hwsched.desktop.survey.deliveries_window import DELIVERIES
from hwsched.desktop.survey.missing_window import MISSING
from hwsched.desktop.opening.what_if_window import WHAT_IF
from hwsched.desktop.findings.why_window import WHY
from hwsched.desktop.findings.findings_window import FINDINGS
from hwsched.desktop.findings.waivers_window import WAIVERS
from hwsched.desktop.opening.upgrade_window import UPGRADE
from hwsched.desktop.parts.parts_window import CATALOGUE
from hwsched.desktop.parts.sets_window import SETS
from hwsched.desktop.parts.fewest_window import FEWEST
from hwsched.desktop.parts.cost_window import COST
from hwsched.desktop.release.revisions_window import REVISIONS
from hwsched.desktop.release.documents_window import DOCUMENTS
from hwsched.desktop.release.gate_window import GATE
from hwsched.desktop.release.transmittals_window import TRANSMITTALS_PLACE
from hwsched.desktop.release.office_window import OFFICE_PLACE
from hwsched.desktop.findings.rulebook_window import RULES_PAGE
from hwsched.desktop.project.history_window import HISTORY
from hwsched.desktop.project.copies_window import COPIES
from hwsched.desktop.project.journal_window import JOURNAL

PAGES: Final = tuple(each.place() for each in imported(globals(), SidePlace))
