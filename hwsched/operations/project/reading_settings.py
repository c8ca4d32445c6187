"""Reading what a project decides, for forms."""

from hwsched.model.project import Project
from hwsched.model.queries import read_settings
from hwsched.values import Settings


def settings_of(project: Project) -> Settings:
    """Return the project's settings as they stand."""
    with project.reading() as connection:
        return read_settings(connection)
