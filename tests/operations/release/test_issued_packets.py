"""Packets on record: what makes one old that the survey does not know of."""

from dataclasses import replace

import pytest

from hwsched.model.project import open_project
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.release.issued_packets import write_down_packets
from hwsched.operations.release.project_view import project_view
from tests.once import copied
from tests.operations.exact import TODAY, findings, small
from tests.operations.powered import more_parts
from tests.rules.scenario import catalogue, part

WHO = "ann"
PACK = part("PACK", "fastener", form="wood-screw", size="#8", leaf_material="wood", kit=(("SCREW", 4.0),))


def with_kit(*kit):
    """Return the unit of the usual openings with that in its box."""
    return replace(catalogue().parts["UNIT"], kit=kit)


def older(project):
    """Return the marks whose packet is older than what stands."""
    fit_openings(project, who=WHO)
    return {
        mark
        for mark, said in findings(project, today=TODAY).items()
        if ("packet-out-of-date", "", "warning", False) in said
    }


@pytest.fixture
def shop(tmp_path):
    """Two usual openings; in each unit's box lie 2 packs of 4 screws. Their packets went out."""

    def make(path):
        with small(path, ("1", "2")) as made:
            more_parts(made, PACK, with_kit(("PACK", 2.0)))
            fit_openings(made, who=WHO)
            write_down_packets(made, project_view(made), who=WHO, today=TODAY)

    copied("packets that went out", tmp_path / "s.hwsched", make)
    with open_project(tmp_path / "s.hwsched") as made:
        yield made


def test_nothing_changed(shop):
    assert older(shop) == set()


@pytest.mark.parametrize(
    "change",
    [
        (with_kit(("PACK", 3.0)),),
        (with_kit(),),
        (with_kit(("PACK", 2.0), ("COIN", 1.0)),),
        # A box in the box: the pack alone changes.
        (replace(PACK, kit=(("SCREW", 5.0),)),),
    ],
    ids=["more of it", "nothing in it", "something else too", "what is inside what is in it"],
)
def test_a_packet_that_lists_another_box_is_old(shop, change):
    more_parts(shop, *change)
    assert older(shop) == {"1", "2"}
    write_down_packets(shop, project_view(shop), who=WHO, today=TODAY)
    assert older(shop) == set()


def test_the_box_of_a_part_that_is_not_fitted_does_not_matter(shop):
    more_parts(shop, replace(catalogue().parts["RIM"], kit=(("COIN", 1.0),)))
    assert older(shop) == set()
