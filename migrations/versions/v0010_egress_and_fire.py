"""Facts of egress and fire doors, and what openings take from their building or level

Revision: 0010, after 0009. All may be null, which means unknown.
"""

from collections.abc import Callable
from typing import Any

import sqlalchemy as sa
from alembic import op

revision = "0010"
down_revision = "0009"
branch_labels = None
depends_on = None

PLACE = {
    "code": sa.Text,
    "code_edition": sa.Integer,
    "occupancy_group": sa.Text,
    "occupant_load": sa.Integer,
    "storeys_served": sa.Integer,
    "sprinkler": sa.Boolean,
    "fire_alarm": sa.Boolean,
    "access_policy": sa.Text,
}
COLUMNS: dict[str, dict[str, Callable[[], Any]]] = {
    "building": PLACE,
    "level": PLACE,
    "opening": {
        "egress_toward": sa.Text,
        "no_exit_confirmed": sa.Boolean,
        "stair_release": sa.Text,
        "frame_face_mm": sa.Float,
        "header_depth_mm": sa.Float,
        "closes_first": sa.Text,
        "smoke_seal": sa.Text,
        "controller_output": sa.Text,
        "connected_by": sa.Text,
        "fire_recall": sa.Boolean,
        **PLACE,
    },
    "leaf": {"self_closes": sa.Boolean, "unused_holes": sa.Text},
    "existing_item": {
        "latch_form": sa.Text,
        "bolt_form": sa.Text,
        "stops": sa.Text,
        "cutout_height_mm": sa.Float,
    },
}


def upgrade() -> None:
    for table, columns in COLUMNS.items():
        for name, kind in columns.items():
            # Both databases know it, and nothing is copied.
            op.add_column(table, sa.Column(name, kind(), nullable=True))
