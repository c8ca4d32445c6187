"""Surveyed facts as plain values; field for field what `hwsched.survey` declares. None means unknown."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Opening:
    """Facts of an opening and its frame; see `hwsched.survey.opening` for labels, limits and words.

    Of what it takes from its level or building the value in force stands here, whoever said it.
    """

    id: str
    mark: str
    building: str | None = None
    level: str | None = None
    room_from: str | None = None
    room_to: str | None = None
    form: str | None = None
    hand: str | None = None
    rating: str | None = None
    frame_rating: str | None = None
    stair: bool | None = None
    egress: str | None = None
    egress_toward: str | None = None
    no_exit_confirmed: bool | None = None
    stair_release: str | None = None
    accessible: bool | None = None
    exposure: str | None = None
    temperature_low_c: float | None = None
    operations_per_day: float | None = None
    operations_day_off: float | None = None
    power_wish: str | None = None
    supply_distance_m: float | None = None
    plan_x_m: float | None = None
    plan_y_m: float | None = None
    rise_m: float | None = None
    frame_material: str | None = None
    frame_stop_mm: float | None = None
    wall_build: str | None = None
    reader_aside_mm: float | None = None
    frame_face_mm: float | None = None
    header_depth_mm: float | None = None
    closes_first: str | None = None
    smoke_seal: str | None = None
    controller_output: str | None = None
    connected_by: str | None = None
    fire_recall: bool | None = None
    code: str | None = None
    code_edition: int | None = None
    occupancy_group: str | None = None
    occupant_load: int | None = None
    storeys_served: int | None = None
    sprinkler: bool | None = None
    fire_alarm: bool | None = None
    access_policy: str | None = None
    wave: str | None = None
    priority: int | None = None
    difficulty: float | None = None
    installed_on: str | None = None
    notes: str | None = None


@dataclass(frozen=True, slots=True)
class Leaf:
    """Facts of a leaf."""

    id: str
    position: str | None = None
    width_mm: float | None = None
    height_mm: float | None = None
    thickness_mm: float | None = None
    material: str | None = None
    construction: str | None = None
    stile_mm: float | None = None
    undercut_mm: float | None = None
    self_closes: bool | None = None
    unused_holes: str | None = None
    core: str | None = None
    raceway: bool | None = None


@dataclass(frozen=True, slots=True)
class Item:
    """Facts of an existing item."""

    id: str
    kind: str | None = None
    leaf: str | None = None
    face: str | None = None
    x_mm: float | None = None
    y_mm: float | None = None
    width_mm: float | None = None
    height_mm: float | None = None
    projection_mm: float | None = None
    disposition: str | None = None
    lock_form: str | None = None
    function: str | None = None
    backset_mm: float | None = None
    cylinder_height_mm: float | None = None
    case_height_mm: float | None = None
    case_depth_mm: float | None = None
    case_width_mm: float | None = None
    case_above_mm: float | None = None
    case_offset_mm: float | None = None
    front_height_mm: float | None = None
    front_width_mm: float | None = None
    trim_key_mm: float | None = None
    trim_inside_mm: float | None = None
    thumb_turn: bool | None = None
    cross_bore_mm: float | None = None
    edge_bore_mm: float | None = None
    cam_form: str | None = None
    fail: str | None = None
    latch_form: str | None = None
    bolt_form: str | None = None
    stops: str | None = None
    device_form: str | None = None
    rod_x_mm: float | None = None
    rod_ends: str | None = None
    bolt_inset_mm: float | None = None
    cutout_height_mm: float | None = None
    rated_v: float | None = None
    rated_a: float | None = None
    current_form: str | None = None
    conductors: int | None = None
    loop_ohm: float | None = None
    item_notes: str | None = None
