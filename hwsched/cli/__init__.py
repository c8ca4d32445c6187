"""The command line: one verb a file; the lines below are their table of contents. No calculation and no query here."""

from hwsched.cli.verb import Verb
from hwsched.family import imported

# Their order is the order in which people see them.
from hwsched.cli.project.demo import DEMO
from hwsched.cli.project.new import NEW
from hwsched.cli.project.upgrade import UPGRADE
from hwsched.cli.project.verify import VERIFY
from hwsched.cli.project.backups import BACKUPS
from hwsched.cli.project.rescue import RESCUE
from hwsched.cli.survey.import_survey import IMPORT_SURVEY
from hwsched.cli.import_verbs import IMPORT_VERBS
from hwsched.cli.parts.export_catalogue import EXPORT_CATALOGUE
from hwsched.cli.survey.survey_form import SURVEY_FORM
from hwsched.cli.survey.add import ADD
from hwsched.cli.survey.edit import EDIT
from hwsched.cli.survey.remove import REMOVE
from hwsched.cli.survey.field import FIELD
from hwsched.cli.release.attach import ATTACH
from hwsched.cli.release.attachments import ATTACHMENTS
from hwsched.cli.release.detach import DETACH
from hwsched.cli.project.settings import SETTINGS
from hwsched.cli.opening.choose import CHOOSE
from hwsched.cli.opening.place import PLACE
from hwsched.cli.opening.release import RELEASE
from hwsched.cli.power.level import LEVEL_VERB
from hwsched.cli.power.lay import LAY
from hwsched.cli.power.lift import LIFT
from hwsched.cli.power.hang import HANG
from hwsched.cli.power.route import ROUTE
from hwsched.cli.power.site import SITE
from hwsched.cli.power.power import POWER
from hwsched.cli.parts.hardware_set import HARDWARE_SET
from hwsched.cli.opening.fit import FIT
from hwsched.cli.findings.check import CHECK
from hwsched.cli.opening.show import SHOW
from hwsched.cli.findings.why import WHY
from hwsched.cli.findings.waive import WAIVE
from hwsched.cli.findings.waivers import WAIVERS
from hwsched.cli.survey.missing import MISSING
from hwsched.cli.opening.what_if import WHAT_IF
from hwsched.cli.parts.successors import SUCCESSORS
from hwsched.cli.parts.fewest_kinds import FEWEST_KINDS
from hwsched.cli.parts.cost import COST
from hwsched.cli.parts.terms import TERMS
from hwsched.cli.release.print import PRINT
from hwsched.cli.opening.draw import DRAW
from hwsched.cli.opening.pieces import PIECES
from hwsched.cli.project.undo import UNDO
from hwsched.cli.project.redo import REDO
from hwsched.cli.project.history import HISTORY
from hwsched.cli.project.people import PEOPLE
from hwsched.cli.release.revision import REVISION
from hwsched.cli.findings.rules import RULES_VERB
from hwsched.cli.project.calc import CALC
from hwsched.cli.project.desktop import DESKTOP

VERBS: tuple[Verb, ...] = imported(globals(), Verb)
