"""Answers written by hand: plain openings that can be installed, as the program would print them.

The judges are tried on these, and on each with one thing changed, so that what a judge finds does not depend on what
the program does today. Heights and sizes follow from the openings and the plain catalogue of
`fixed_openings` by the sums in the comments.
"""

from dataclasses import dataclass, field
from typing import Any

from tests.verifier import fixed_openings
from tests.verifier.cells import Cells, Opening
from tests.verifier.standing import CircuitFeed


@dataclass
class Answer:
    """One opening, its catalogue, and one lock point as it is shown."""

    opening: Opening
    point: dict[str, Any]
    parts: dict[str, Cells] = field(default_factory=fixed_openings.plain)
    laid: CircuitFeed | None = None

    def shown(self) -> dict[str, Any]:
        """Return it as the program shows an opening."""
        return {"mark": self.opening.mark, "lock_points": [self.point], "findings": []}

    def give(self, role: str, number: str, quantity: float = 1.0) -> None:
        """Add a part in a role, in place of what is there."""
        self.take(role)
        self.point["parts"].append({"role": role, "part": number, "quantity": quantity})

    def take(self, role: str) -> None:
        """Leave the parts of a role out."""
        self.point["parts"] = [each for each in self.point["parts"] if each["role"] != role]

    def number(self, role: str) -> str:
        """Number of the part in a role."""
        return str(next(each["part"] for each in self.point["parts"] if each["role"] == role))

    def part(self, role: str) -> Cells:
        """The catalogue's cells of the part in a role."""
        return self.parts[self.number(role)]

    def move(self, dx: float, dy: float) -> None:
        """Move the unit with its screws and the lead's end; the hole stays."""
        place = self.point["placement"]
        place["x_mm"] += dx
        place["y_mm"] += dy
        for entry in self.point["screws"]:
            entry["places_mm"] = [[x + dx, y + dy, z] for x, y, z in entry["places_mm"]]
        x, y, z = self.point["lead"]["points_mm"][-1]
        self.point["lead"]["points_mm"][-1] = [x + dx, y + dy, z]


def hole(
    name: str,
    start: tuple[float, float, float],
    direction: tuple[float, float, float],
    depth: float | None,
    diameter: float,
    purpose: str = "cable",
    **more: Any,
) -> dict[str, Any]:
    """Return one hole as it is shown."""
    shown = {
        "name": name,
        "purpose": purpose,
        "face": "inside",
        "depth_mm": depth,
        "diameter_mm": diameter,
        "from_depth_mm": 0.0,
        **more,
    }
    return {"hole": shown, "places_mm": [list(start)], "direction": list(direction), "start_mm": list(start)}


def _point(parts: list[tuple[str, str, float]], place: dict[str, Any], **more: Any) -> dict[str, Any]:
    return {
        "status": "fits",
        "parts": [{"role": role, "part": part, "quantity": quantity} for role, part, quantity in parts],
        "placement": place,
        "holes": [],
        "screws": [],
        "lead": None,
        "stack": None,
        "power": "battery",
        "needs": [],
        **more,
    }


def _corners(x: float, y: float, w: float, h: float) -> dict[str, Any]:
    shown = hole("pilots", (x, y, 0.0), (0.0, 0.0, 1.0), 9.525, 2.0, "fixing")
    shown["places_mm"] = [[x + dx, y + dy, 0.0] for dx in (6.0, w - 6.0) for dy in (6.0, h - 6.0)]
    return shown


def mortise() -> Answer:
    """Return a wide unit straight behind a mortise cylinder in wood.

    Leaf 44.45, trim 3.175, collar 3.175: 22.225 + 6.35 = 28.575, shell 1-1/8 in. The hole stands at the window's left
    and bottom: plate at 69.85 - 35 and 1016 - 14.
    """
    x, y = 34.85, 1002.0
    return Answer(
        fixed_openings.mortise("M1"),
        _point(
            [
                ("cylinder", "VM09I", 1),
                ("cam", "VKS", 1),
                ("collar", "VL04", 1),
                ("unit", "VUW", 1),
                ("fastener", "VDW6", 4),
                ("battery", "VPA", 6),
            ],
            {"face": "inside", "pattern": "straight", "x_mm": x, "y_mm": y},
            holes=[hole("access hole for the lead", (69.85, 1016.0, 0.0), (0.0, 0.0, 1.0), 9.525, 12.7)],
            screws=[_corners(x, y, 76.0, 152.0)],
            lead={"points_mm": [[69.85, 1016.0, 22.225], [69.85, 1016.0, 0.0], [x + 35.0, y + 92.0, 0.0]]},
        ),
    )


def supplied() -> Answer:
    """Return the same on a supply, with a raceway from the hinge edge past the case's top (1060.45) to the plate."""
    answer = mortise()
    answer.opening.facts["power_wish"] = "Remote supply"
    answer.point["power"] = "supply"
    answer.take("battery")
    for role, number, quantity in (("supply", "VSA", 1), ("power-transfer", "VQL", 1), ("wire", "VW18", 12.0)):
        answer.give(role, number, quantity)
    raceway = hole("raceway", (914.4, 1100.0, 22.225), (-1.0, 0.0, 0.0), 840.0, 9.525, "raceway", face="hinge-edge")
    answer.point["holes"].append(raceway)
    return answer


def laid() -> Answer:
    """Return the same on a laid circuit, beside another one like it: 20 m of wire, a battery that ends at 10.5 V."""
    answer = supplied()
    answer.laid = CircuitFeed(answer.part("supply"), answer.part("wire"), 20.0, 10.5, 0.7)
    answer.take("supply")
    # How far a supply of its own would be says nothing of the circuit.
    answer.opening.facts["distance"] = 500.0
    return answer


def patch() -> Answer:
    """Return a unit bonded to glass above a patch lock.

    Glass 12.7, trim 12.7, collar 3.175: 6.35 + 15.875 = 22.225, shell 7/8 in. The case of 25.4 stands 6.35 out of both
    faces, the plates of the patch 12.7. They end at 1016 + 88.9; the plate begins 4.7625 above.
    """
    x, y = 34.85, 1109.6625
    answer = Answer(
        fixed_openings.mortise("G1"),
        _point(
            [
                ("cylinder", "VM07I", 1),
                ("cam", "VKS", 1),
                ("collar", "VL04", 1),
                ("unit", "VUG", 1),
                ("fastener", "VDA", 1),
                ("battery", "VPA", 6),
            ],
            {"face": "inside", "pattern": "above", "x_mm": x, "y_mm": y},
            lead={
                "points_mm": [
                    [69.85, 1016.0, 6.35],
                    [69.85, 1104.9, 6.35],
                    [69.85, 1104.9, 0.0],
                    [69.85, y, 0.0],
                    [x + 35.0, y + 92.0, 0.0],
                ]
            },
        ),
    )
    answer.parts["VDA"] = {"kind": "fastener", "form": "Adhesive pad", "size": "pad", "material": "Glass"}
    answer.part("cylinder")["lead"] = 280.0
    answer.opening.leaves[0] |= {"thick": 12.7, "material": "Glass", "construction": "Frameless glass"}
    answer.opening.lock |= {"trim_key": 12.7, "trim_inside": 12.7, "ix": 69.85, "iy": 1016.0, "iw": 101.6, "ih": 177.8}
    answer.opening.items = []
    return answer


def narrow() -> Answer:
    """Return a narrow unit above a deadlock in a stile.

    The existing hole ends at 1016 + 15.875 = 1031.875: hole 34.925 above it at 1066.8, plate 19.05 above at 1050.925.
    The lead goes round the case's key side (22.225 + 12.7 = 34.925) and over its top (1054.1).
    """
    answer = Answer(fixed_openings.narrow("N1"), {})
    # The stop stands on the inside face, beside the plate, and 3 mm off it: as the leaf opens it comes nearer.
    answer.opening.facts["stop"] = 5.55
    x, y = 8.575, 1050.925
    answer.point = _point(
        [
            ("cylinder", "VM08I", 1),
            ("cam", "VKS", 1),
            ("collar", "VL04", 1),
            ("unit", "VUN", 1),
            ("fastener", "VDA6", 4),
            ("battery", "VPA", 6),
        ],
        {"face": "inside", "pattern": "above", "x_mm": x, "y_mm": y},
        holes=[hole("access hole for the lead", (28.575, 1066.8, 0.0), (0.0, 0.0, 1.0), 6.35, 19.05)],
        screws=[_corners(x, y, 40.0, 232.0)],
        lead={
            "points_mm": [
                [28.575, 1016.0, 37.0],
                [28.575, 1056.0, 37.0],
                [28.575, 1066.8, 0.0],
                [x + 20.0, y + 80.0, 0.0],
            ]
        },
    )
    answer.parts["VUN"] |= {"window_y0": 10.0}
    return answer


def bored() -> Answer:
    """Return a wide unit above a bored lock: one bore at 45 degrees into the cross bore's top at 965.2 + 26.9875."""
    x, y = 34.85, 1010.0
    start = (69.85, 1020.0, 0.0)
    drop = 1020.0 - 992.1875
    return Answer(
        fixed_openings.bored("B1"),
        _point(
            [("lock", "VB70ST", 1), ("unit", "VUW", 1), ("fastener", "VDW6", 4), ("battery", "VPA", 6)],
            {"face": "inside", "pattern": "above", "x_mm": x, "y_mm": y},
            holes=[hole("lead's hole", start, (0.0, -(0.5**0.5), 0.5**0.5), drop * 2**0.5, 9.525)],
            screws=[_corners(x, y, 76.0, 152.0)],
            lead={
                "points_mm": [
                    [69.85, 965.2, 22.225],
                    [69.85, 992.1875, drop],
                    list(start),
                    [x + 35.0, y + 92.0, 0.0],
                ]
            },
        ),
    )


def rim() -> Answer:
    """Return a wide unit above a rim lock on hollow metal.

    Body 25.4 less trim 3.175 in a leaf of 44.45 leaves 22.225; of a tail of 63.5 the last 28.575 (nine notches) come
    off: 34.925 - 22.225 = 12.7 into a case of 25.4. The case ends at 1155.7.
    """
    x, y = 25.325, 1165.0
    return Answer(
        fixed_openings.rim("R1", leaf={"material": "Hollow metal"}),
        _point(
            [("cylinder", "VR64F", 1), ("unit", "VUW", 1), ("fastener", "VDH6", 4), ("battery", "VPA", 6)],
            {"face": "inside", "pattern": "above", "x_mm": x, "y_mm": y},
            stack={"cut_off_mm": 28.575},
            holes=[hole("access hole for the lead", (60.325, 1185.0, 0.0), (0.0, 0.0, 1.0), 6.35, 12.7)],
            screws=[_corners(x, y, 76.0, 152.0)],
            lead={
                "points_mm": [
                    [60.325, 1117.6, 22.225],
                    [60.325, 1185.0, 22.225],
                    [60.325, 1185.0, 0.0],
                    [x + 35.0, y + 92.0, 0.0],
                ]
            },
        ),
    )


def in_edge() -> Answer:
    """Return a unit in the edge above a mortise case: 3/4 in of bridge over 1060.45 is 1079.5."""
    answer = mortise()
    y = 1079.5
    answer.give("unit", "VUE")
    answer.give("fastener", "VDW8", 2)
    answer.point |= {
        "placement": {"face": "edge", "pattern": "in-edge", "x_mm": 13.494, "y_mm": y},
        "holes": [
            hole(
                "pocket for the unit",
                (0.0, y + 174.625, 22.225),
                (1.0, 0.0, 0.0),
                44.45,
                0.0,
                "pocket",
                face="lock-edge",
                width_mm=17.4625,
                height_mm=349.25,
            )
        ],
        "screws": [],
        "lead": {"points_mm": [[69.85, 1016.0, 22.225], [22.225, 1079.5, 22.225], [22.225, 1099.5, 22.225]]},
    }
    return answer


def euro() -> Answer:
    """Return a half cylinder in a leaf of 40 under a trim of 10: 40 / 2 + 10 = 30; the unit straight behind it."""
    answer = mortise()
    answer.opening.lock |= {
        "lock": "Euro profile",
        "case_width": 15.0,
        "trim_key": 10.0,
        "trim_inside": 2.0,
        "cam": "Euro-profile cam",
    }
    answer.opening.leaves[0]["thick"] = 40.0
    for role in ("cam", "collar"):
        answer.take(role)
    answer.give("cylinder", "VE3010")
    answer.point["holes"][0]["hole"]["depth_mm"] = 12.5
    answer.point["lead"]["points_mm"][0][2] = 20.0
    return answer


def gate() -> Answer:
    """Return a lock bolted on a gate of 50.8, the unit above its case (950 + 80)."""
    x, y = 15.8, 1040.0
    answer = Answer(
        fixed_openings.gate("G1"),
        _point(
            [("lock", "VGB", 1), ("unit", "VUX", 1), ("fastener", "VDG8", 4), ("battery", "VPF", 6)],
            {"face": "inside", "pattern": "above", "x_mm": x, "y_mm": y},
            holes=[
                hole(
                    "hole for the lead behind the lock's case",
                    (50.8, 950.0, 50.8),
                    (0.0, 0.0, -1.0),
                    6.35,
                    19.05,
                    face="key",
                ),
                hole("access hole for the lead", (50.8, 1065.0, 0.0), (0.0, 0.0, 1.0), 6.35, 12.7),
            ],
            screws=[_corners(x, y, 76.0, 152.0)],
            lead={
                "points_mm": [
                    [50.8, 950.0, 50.8],
                    [50.8, 950.0, 25.4],
                    [50.8, 1065.0, 25.4],
                    [50.8, 1065.0, 0.0],
                    [x + 35.0, y + 92.0, 0.0],
                ]
            },
        ),
    )
    answer.point["parts"].append({"role": "fastener", "part": "VDM8", "quantity": 4})
    # 25.4 + 115 + 25.4 + 67 of way and 60 of slack are 293 with square corners; the lead has 300.
    answer.parts["VGB"]["lead"] = 300.0
    return answer


def wall() -> Answer:
    """Return a reader and its unit on a wall, held by screws."""
    answer = Answer(
        fixed_openings.wall("W1"),
        _point(
            [
                ("reader", "VF0", 1),
                ("unit", "VUW", 1),
                ("fastener", "VDW6", 4),
                ("supply", "VSA", 1),
                ("wire", "VW18", 12),
            ],
            {"face": "wall", "pattern": "beside", "x_mm": -35.0, "y_mm": 1002.0},
            lead={"points_mm": [[0.0, 1016.0, 0.0], [0.0, 1094.0, 0.0]]},
        ),
    )
    answer.opening.facts["wall"] = answer.parts["VDW6"]["wall"] = "Wood"
    answer.point["power"] = "supply"
    return answer
