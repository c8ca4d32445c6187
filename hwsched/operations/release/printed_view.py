"""What a document is printed from besides the project's state: the order of a walk, photos of the doors."""

from typing import Final

from hwsched.documents.release.bound_packets import BOUND_PACKETS
from hwsched.documents.release.packet import PACKET
from hwsched.documents.view import ProjectView
from hwsched.model.project import Project
from hwsched.operations.release.photos import with_photos
from hwsched.operations.release.walking_order import in_walking_order

_WITH_PHOTOS: Final = (PACKET.name, BOUND_PACKETS.name)


def printed_view(project: Project, view: ProjectView, name: str, walk: str = "mark") -> ProjectView:
    """Return a view as a document of that name is printed from it.

    Parameters
    ----------
    project : Project
        Open project.
    view : ProjectView
        Of it.
    name : str
        Of what is printed.
    walk : {"mark", "surveyed"}
        Order of the openings on each level, where packets are bound.
    """
    if name == BOUND_PACKETS.name:
        view = in_walking_order(project, view, walk)
    return with_photos(project, view) if name in _WITH_PHOTOS else view
