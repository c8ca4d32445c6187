"""Reading what a project decides, for forms."""

from hwsched.cases import Settings
from hwsched.model.project import Project
from hwsched.model.queries import read_settings


def settings_of(project: Project) -> Settings:
    """Return the project's settings as they stand."""
    with project.reading() as connection:
        return read_settings(connection)
