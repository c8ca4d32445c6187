"""What a project holds: tables, the journal under every edit, opening and migrating, queries.

Verbs stand in `hwsched.operations`; what is computed from these facts stands in `hwsched.calc`, `rules` and `fitting`.
"""

from hwsched.model.errors import ChangeError, ProjectError
from hwsched.model.journal import Change
from hwsched.model.project import Project, create_project, open_project

__all__ = ["Change", "ChangeError", "Project", "ProjectError", "create_project", "open_project"]
