"""Hand of a leaf as it is seen on a face: where the hinges stand and which way it swings.

Hands are named as seen from the key side (trade convention: hinges left LH and LHR, right RH and RHR; the leaf swings
away from the key side for LH and RH, toward it for LHR and RHR). Which face meets the stop: `hwsched.rules.reading`.
"""

from typing import Final, Literal

Face = Literal["inside", "key"]
FACES: Final[tuple[Face, ...]] = ("inside", "key")
HANDS: Final = ("LH", "RH", "LHR", "RHR")


def lock_edge_left(hand: str, face: Face) -> bool:
    """Tell whether the lock edge is on the left of somebody who looks at a face.

    Parameters
    ----------
    hand : str
        LH, RH, LHR or RHR.
    face : Face
        The face looked at.

    Notes
    -----
    From the key side the lock edge of LH and LHR is on the right; from the other side all is mirrored. Source: trade
    convention as charted in SDI 111 (read in secondary copies).

    Examples
    --------
    >>> lock_edge_left("LH", "key"), lock_edge_left("LH", "inside")
    (False, True)
    """
    hinges_left_from_key = hand in ("LH", "LHR")
    return hinges_left_from_key == (face == "inside")


def swings_toward_viewer(hand: str, face: Face) -> bool:
    """Tell whether the leaf opens toward somebody who looks at a face.

    Examples
    --------
    >>> swings_toward_viewer("LH", "key"), swings_toward_viewer("LHR", "key")
    (False, True)
    """
    return (hand in ("LHR", "RHR")) == (face == "key")
